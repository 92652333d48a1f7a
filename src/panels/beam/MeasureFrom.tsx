import { useBench, useCommitted, useView } from '../../store/react';
import { DATUM, datumName } from '../measureFrom';

/** At the ruler's left end: what its figures, and every station on the bench, are counted from. */
export function MeasureFrom({ topPx }: { readonly topPx: number }) {
  const bench = useBench();
  const fromId = useView((view) => view.measureFromId);
  const points = useCommitted((aircraft) => aircraft.referencePoints);
  const datum = useCommitted(datumName);
  const chosen = points.find(({ id }) => id === fromId);
  return (
    <label className="measure-from" style={{ top: topPx }}>
      <span className="unseen">Stations from</span>
      <span aria-hidden="true">{chosen ? chosen.name : DATUM}</span>
      <select
        value={chosen?.id ?? ''}
        title={`Stations are counted from: ${chosen?.name ?? datum}`}
        onChange={(event) => bench.view.setState({ measureFromId: event.target.value || null })}
      >
        <option value="">{datum}</option>
        {points.map(({ id, name }) => (
          <option key={id} value={id}>
            {name}
          </option>
        ))}
      </select>
    </label>
  );
}
