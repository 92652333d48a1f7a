import { useId } from 'react';
import {
  type MeshUnit,
  type MeshWay,
  meshUnits,
  meshWays,
  mmPerUnit,
  waysAcross,
} from '../../engine/mesh/fileFrame';
import type { ReadMesh } from '../../model/airframe/meshReading';
import type { MeshUse } from '../../model/airframe/ownMesh';
import type { MeshInHand } from '../../store/meshStore';
import { useBench, useCommitted, useSteadyList } from '../../store/react';
import { useReadings } from '../readings';

interface MeshWaysProps {
  readonly read: ReadMesh;
  readonly inHand: MeshInHand;
}

const USES: Readonly<Record<MeshUse, string>> = {
  fuselage: 'A new hull',
  part: 'A part',
  tank: 'A tank, its inside',
};

const wayName = (way: MeshWay): string => `the file’s ${way.replace('-', '−')}`;

/** What the file does not say: its unit, which way is forward and up, and what the thing is. */
export function MeshWays({ read, inHand }: MeshWaysProps) {
  const { mesh } = useBench();
  const say = useReadings();
  const hulls = useCommitted(
    useSteadyList(({ structure }) =>
      structure.flatMap(({ kind, id, name }) => (kind === 'fuselage' ? [{ id, name }] : [])),
    ),
  );
  const { unit, nose, up, sizeMm } = read;
  const lengthIn = (other: MeshUnit) => say.length((sizeMm[0] / mmPerUnit[unit]) * mmPerUnit[other]);
  return (
    <section>
      <Chosen
        label="It is"
        value={inHand.hullId ?? `new ${inHand.use}`}
        options={[
          ...(Object.keys(USES) as MeshUse[]).map((use) => [`new ${use}`, USES[use]] as const),
          ...hulls.map(({ id, name }) => [id, `The hull of ${name}`] as const),
        ]}
        onChoose={(value) => {
          const use = (Object.keys(USES) as MeshUse[]).find((each) => value === `new ${each}`);
          mesh.useAs(use ?? 'fuselage', use ? null : value);
        }}
      />
      <Chosen
        label="Drawn in"
        value={unit}
        options={meshUnits.map((each) => [each, `${each}: ${lengthIn(each)} long`] as const)}
        onChoose={(value) => mesh.take({ unit: value as MeshUnit })}
      />
      <Chosen
        label="Nose points"
        value={nose}
        options={meshWays.map((way) => [way, wayName(way)] as const)}
        onChoose={(value) => {
          const way = value as MeshWay;
          const across = waysAcross(way);
          mesh.take({ nose: way, up: across.includes(up) ? up : across.includes('+z') ? '+z' : '+y' });
        }}
      />
      <Chosen
        label="Up is"
        value={up}
        options={waysAcross(nose).map((way) => [way, wayName(way)] as const)}
        onChoose={(value) => mesh.take({ up: value as MeshWay })}
      />
    </section>
  );
}

interface ChosenProps {
  readonly label: string;
  readonly value: string;
  readonly options: readonly (readonly [value: string, label: string])[];
  readonly onChoose: (value: string) => void;
}

function Chosen({ label, value, options, onChoose }: ChosenProps) {
  const id = useId();
  return (
    <div className="field">
      <label htmlFor={id}>{label}</label>
      <span className="entry">
        <select id={id} value={value} onChange={(event) => onChoose(event.target.value)}>
          {options.map(([each, words]) => (
            <option key={each} value={each}>
              {words}
            </option>
          ))}
        </select>
      </span>
    </div>
  );
}
