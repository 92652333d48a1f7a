import { defaultLoadFactors } from '../../model/fit/restraint';
import { useCommitted } from '../../store/react';
import { Measure } from '../fields/Measure';
import { Term } from '../Term';

const ways = [
  { key: 'ahead', label: 'Ahead' },
  { key: 'up', label: 'Up' },
  { key: 'side', label: 'Sideways' },
] as const;

/** What the fixings are held to. */
export function LoadFactorFields() {
  const stated = useCommitted(({ loadFactors }) => loadFactors !== undefined);
  return (
    <div className="fit-list">
      <h4>
        <Term of="load-factor">Load factors</Term> of the fixings
      </h4>
      {ways.map(({ key, label }) => (
        <Measure
          key={key}
          label={label}
          quantity="number"
          suffix="g"
          step="Change the load factors"
          read={({ loadFactors = defaultLoadFactors }) => loadFactors[key]}
          write={(aircraft, value) => ({
            ...aircraft,
            loadFactors: { ...(aircraft.loadFactors ?? defaultLoadFactors), [key]: value },
          })}
        />
      ))}
      {!stated && <p className="hint">Common practice, no source.</p>}
    </div>
  );
}
