import type { Vec3 } from '../../engine/geometry/types';
import { dot, normalise } from '../../engine/geometry/vec3';
import { aircraftExtent } from '../../model/airframe/extent';
import type { Aircraft, Hatch } from '../../model/document/types';
import { useBench, useCommitted } from '../../store/react';
import { PointFields } from '../card/PointFields';
import { Choice } from '../fields/Choice';
import { Measure } from '../fields/Measure';
import { TextEntry } from '../fields/TextEntry';
import { changedAt, EntryList, withoutAt } from './EntryList';
import { withHatch } from './roomEdits';

const sides: readonly { readonly value: string; readonly label: string; readonly normal: Vec3 }[] = [
  { value: 'top', label: 'Up', normal: [0, 0, 1] },
  { value: 'bottom', label: 'Down', normal: [0, 0, -1] },
  { value: 'left', label: 'To the left', normal: [0, -1, 0] },
  { value: 'right', label: 'To the right', normal: [0, 1, 0] },
  { value: 'nose', label: 'Forward', normal: [-1, 0, 0] },
  { value: 'tail', label: 'Aft', normal: [1, 0, 0] },
];
const askew = { value: 'askew', label: 'Askew, as in the file' };

function sideOf(hatch: Hatch | undefined): string {
  const out = hatch && normalise(hatch.normal);
  return (out && sides.find(({ normal }) => dot(normal, out) > 0.99999)?.value) || askew.value;
}

const change =
  (at: number, fields: Partial<Hatch>) =>
  (aircraft: Aircraft): Aircraft => ({
    ...aircraft,
    hatches: changedAt(aircraft.hatches, at, fields),
  });

/** Openings in the hull. */
export function HatchEntries() {
  const bench = useBench();
  return (
    <EntryList
      title="Hatches"
      noun="hatch"
      count={({ hatches }) => hatches?.length ?? 0}
      headOf={({ hatches }, at) => hatches?.[at]?.name ?? ''}
      add={(aircraft) =>
        withHatch(
          aircraft,
          Math.round(bench.balance.get().cgMm?.[0] ?? 0),
          Math.round(aircraftExtent(aircraft).maxMm[2]),
        )
      }
      remove={(aircraft, at) => ({ ...aircraft, hatches: withoutAt(aircraft.hatches, at) })}
    >
      {(at) => <HatchFields at={at} />}
    </EntryList>
  );
}

function HatchFields({ at }: { readonly at: number }) {
  const name = useCommitted(({ hatches }) => hatches?.[at]?.name ?? '');
  const side = useCommitted(({ hatches }) => sideOf(hatches?.[at]));
  return (
    <>
      <TextEntry
        label="Name"
        step={`Rename ${name}`}
        read={({ hatches }) => hatches?.[at]?.name}
        write={(aircraft, text) => change(at, { name: text })(aircraft)}
      />
      <PointFields
        title="Middle of the opening, on the hull"
        step={`Move ${name}`}
        read={({ hatches }) => hatches?.[at]?.centreMm}
        write={(aircraft, centreMm) => change(at, { centreMm })(aircraft)}
      />
      <Measure
        label="Length"
        quantity="length"
        step={`Change the length of ${name}`}
        read={({ hatches }) => hatches?.[at]?.lengthMm}
        write={(aircraft, lengthMm) => change(at, { lengthMm })(aircraft)}
      />
      <Measure
        label="Width"
        quantity="length"
        step={`Change the width of ${name}`}
        read={({ hatches }) => hatches?.[at]?.widthMm}
        write={(aircraft, widthMm) => change(at, { widthMm })(aircraft)}
      />
      <Choice
        label="Opens"
        step={`Change which way ${name} opens`}
        options={side === askew.value ? [...sides, askew] : sides}
        read={({ hatches }) => sideOf(hatches?.[at])}
        write={(aircraft, value) => {
          const normal = sides.find((side) => side.value === value)?.normal;
          return normal ? change(at, { normal })(aircraft) : aircraft;
        }}
      />
    </>
  );
}
