import { freeId } from '../../model/document/ids';
import type { Aircraft, BallastFreeZone } from '../../model/document/types';
import { hotZones } from '../../model/place/ballastFree';
import { useBench, useCommitted } from '../../store/react';
import { PointFields } from '../card/PointFields';
import { SizeFields } from '../fields/SizeFields';
import { TextEntry } from '../fields/TextEntry';
import { changedAt, EntryList, withoutAt } from '../fit/EntryList';

const change =
  (at: number, fields: Partial<BallastFreeZone>) =>
  (aircraft: Aircraft): Aircraft => ({
    ...aircraft,
    ballastFree: changedAt(aircraft.ballastFree, at, fields),
  });

/** Boxes that ballast is kept out of, and what is kept free of it without being asked. */
export function FreeZones() {
  const bench = useBench();
  const hot = useCommitted((aircraft) => hotZones(aircraft).length > 0);
  const withZone = (aircraft: Aircraft): Aircraft => {
    const zones = aircraft.ballastFree ?? [];
    const name = `Zone ${zones.length + 1}`;
    const [x = 0, y = 0, z = 0] = bench.balance.get().cgMm ?? [];
    const zone: BallastFreeZone = {
      id: freeId(aircraft, name, 'zone'),
      name,
      positionMm: [Math.round(x), Math.round(y), Math.round(z)],
      lengthMm: 100,
      widthMm: 60,
      heightMm: 60,
    };
    return { ...aircraft, ballastFree: [...zones, zone] };
  };
  return (
    <>
      <EntryList
        level={3}
        title="Kept free of ballast"
        noun="zone"
        count={({ ballastFree }) => ballastFree?.length ?? 0}
        headOf={({ ballastFree }, at) => ballastFree?.[at]?.name ?? ''}
        add={withZone}
        remove={(aircraft, at) => ({ ...aircraft, ballastFree: withoutAt(aircraft.ballastFree, at) })}
      >
        {(at) => <ZoneFields at={at} />}
      </EntryList>
      <p className="hint">
        {hot ? 'Ballast also stays 15 mm off the engine’s hot parts, and' : 'Ballast also stays'} 3 mm off
        every pack. Draw a zone beside a hot tail pipe.
      </p>
    </>
  );
}

function ZoneFields({ at }: { readonly at: number }) {
  const name = useCommitted(({ ballastFree }) => ballastFree?.[at]?.name ?? '');
  return (
    <>
      <TextEntry
        label="Name"
        step={`Rename ${name}`}
        read={({ ballastFree }) => ballastFree?.[at]?.name}
        write={(aircraft, text) => change(at, { name: text })(aircraft)}
      />
      <PointFields
        title="Its middle"
        step={`Move ${name}`}
        read={({ ballastFree }) => ballastFree?.[at]?.positionMm}
        write={(aircraft, positionMm) => change(at, { positionMm })(aircraft)}
      />
      <SizeFields
        name={name}
        read={({ ballastFree }) => ballastFree?.[at]}
        write={(aircraft, size) => change(at, size)(aircraft)}
      />
    </>
  );
}
