import { freeId } from '../../model/document/ids';
import type { Aircraft, BallastSpotItem } from '../../model/document/types';
import { usualSpots } from '../../model/place/ballastPlaces';
import { useBench, useCommitted } from '../../store/react';
import { PointFields } from '../card/PointFields';
import { Choice } from '../fields/Choice';
import { Measure } from '../fields/Measure';
import { TextEntry } from '../fields/TextEntry';
import { changedAt, EntryList, withoutAt } from '../fit/EntryList';
import { useReadings } from '../readings';

const metals = [
  { value: 'lead', label: 'Lead' },
  { value: 'brass', label: 'Brass' },
  { value: 'steel', label: 'Steel' },
] as const;

const sizes = [
  { key: 'lengthMm', label: 'Room, length' },
  { key: 'widthMm', label: 'Room, width' },
  { key: 'heightMm', label: 'Room, height' },
] as const;

const spotsOf = (aircraft: Aircraft): readonly BallastSpotItem[] =>
  aircraft.ballastSpots ?? usualSpots(aircraft);

const change =
  (at: number, fields: Partial<BallastSpotItem>) =>
  (aircraft: Aircraft): Aircraft => ({ ...aircraft, ballastSpots: changedAt(spotsOf(aircraft), at, fields) });

/** Where ballast may go, of what and in what steps, and how much of it; the usual spots until any is changed. */
export function Spots() {
  const bench = useBench();
  const say = useReadings();
  const headOf = (aircraft: Aircraft, at: number) => {
    const spot = spotsOf(aircraft)[at];
    return spot ? `${spot.name}, up to ${say.mass(spot.mostG)} of ${spot.metal ?? 'lead'}` : '';
  };
  const withSpot = (aircraft: Aircraft): Aircraft => {
    const spots = spotsOf(aircraft);
    const stationMm = Math.round(bench.balance.get().cgMm?.[0] ?? 0);
    const spot: BallastSpotItem = {
      id: freeId(aircraft, `Spot ${spots.length + 1}`, 'spot'),
      name: `Spot ${spots.length + 1}`,
      positionMm: [stationMm, 0, 0],
      stepG: spots.at(-1)?.stepG ?? 1,
      mostG: spots.at(-1)?.mostG ?? 500,
    };
    return { ...aircraft, ballastSpots: [...spots, spot] };
  };
  return (
    <EntryList
      level={3}
      title="Ballast spots"
      noun="spot"
      count={(aircraft) => spotsOf(aircraft).length}
      headOf={headOf}
      add={withSpot}
      remove={(aircraft, at) => ({ ...aircraft, ballastSpots: withoutAt(spotsOf(aircraft), at) })}
    >
      {(at) => <SpotFields at={at} />}
    </EntryList>
  );
}

function SpotFields({ at }: { readonly at: number }) {
  const name = useCommitted((aircraft) => spotsOf(aircraft)[at]?.name ?? '');
  return (
    <>
      <TextEntry
        label="Name"
        step={`Rename ${name}`}
        read={(aircraft) => spotsOf(aircraft)[at]?.name}
        write={(aircraft, text) => change(at, { name: text })(aircraft)}
      />
      <Choice
        label="Metal"
        step={`Change the metal of ${name}`}
        options={metals}
        read={(aircraft) => spotsOf(aircraft)[at]?.metal ?? 'lead'}
        write={(aircraft, value) => {
          const metal = metals.find((each) => each.value === value)?.value;
          return metal ? change(at, { metal })(aircraft) : aircraft;
        }}
      />
      <Measure
        label="In steps of"
        quantity="mass"
        step={`Change the step of ${name}`}
        read={(aircraft) => spotsOf(aircraft)[at]?.stepG}
        write={(aircraft, stepG) => change(at, { stepG })(aircraft)}
      />
      <Measure
        label="At most"
        quantity="mass"
        step={`Change how much ${name} takes`}
        read={(aircraft) => spotsOf(aircraft)[at]?.mostG}
        write={(aircraft, mostG) => change(at, { mostG })(aircraft)}
      />
      <PointFields
        title="Its middle"
        step={`Move ${name}`}
        read={(aircraft) => spotsOf(aircraft)[at]?.positionMm}
        write={(aircraft, positionMm) => change(at, { positionMm })(aircraft)}
      />
      {sizes.map(({ key, label }) => (
        <Measure
          key={key}
          label={label}
          quantity="length"
          step={`Change the room of ${name}`}
          read={(aircraft) => spotsOf(aircraft)[at]?.[key]}
          write={(aircraft, mm) => change(at, { [key]: mm })(aircraft)}
          empty={{ means: 'as there is', write: (aircraft) => withoutSize(aircraft, at, key) }}
        />
      ))}
    </>
  );
}

/** A spot that takes the room that the hull leaves again. */
function withoutSize(aircraft: Aircraft, at: number, key: (typeof sizes)[number]['key']): Aircraft {
  const ballastSpots = spotsOf(aircraft).map((spot, index) => {
    if (index !== at) return spot;
    const { [key]: _size, ...rest } = spot;
    return rest;
  });
  return { ...aircraft, ballastSpots };
}
