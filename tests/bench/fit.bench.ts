import { readFileSync } from 'node:fs';
import RAPIER from '@dimforge/rapier3d-compat';
import { poseRotation } from '../../src/engine/geometry/rotation';
import type { Mat3 } from '../../src/engine/geometry/types';
import { placeItem } from '../../src/model/edit';
import { clearances } from '../../src/model/fit/clearances';
import { poseOf } from '../../src/model/poses';
import type { Aircraft } from '../../src/model/types';
import { againstLimit, type BenchRow, compare } from './measure';

const PARTS = 60;

/** Sandmartin's airframe with 60 boxes and drums in it, three deep and four abreast along the pod. */
function loaded(): Aircraft {
  const demo: Aircraft = JSON.parse(
    readFileSync(new URL('../../demo-data/sandmartin.json', import.meta.url), 'utf8'),
  );
  return {
    ...demo,
    tanks: [],
    leads: [],
    parts: Array.from({ length: PARTS }, (_, i) => ({
      id: `part-${i}`,
      name: `Part ${i}`,
      role: 'other' as const,
      shape:
        i % 3 === 0
          ? { kind: 'cylinder' as const, lengthMm: 40, diameterMm: 22 }
          : { kind: 'box' as const, lengthMm: 60, widthMm: 24, heightMm: 22 },
      massG: 20,
      positionMm: [
        220 + 140 * Math.floor(i / 12),
        -48 + 32 * (i % 4),
        -40 + 35 * (Math.floor(i / 4) % 3),
      ] as const,
      yawDeg: 7 * (i % 5),
      pitchDeg: 3 * (i % 4),
      rollDeg: 11 * (i % 3),
    })),
  };
}

/** Unit quaternion of a rotation of less than half a turn, from its trace. */
function quaternion([xx, xy, xz, yx, yy, yz, zx, zy, zz]: Mat3) {
  const w = Math.sqrt(1 + xx + yy + zz) / 2;
  return { w, x: (zy - yz) / (4 * w), y: (xz - zx) / (4 * w), z: (yx - xy) / (4 * w) };
}

export default async function rows(): Promise<BenchRow[]> {
  await RAPIER.init();
  const aircraft = loaded();
  const dragged = aircraft.parts[31]!;
  const [x, y, z] = dragged.positionMm;
  let step = 0;
  const next = () => {
    step = (step + 1) % 80;
    return x - 40 + step;
  };
  const frame = () => clearances(placeItem(aircraft, dragged.id, [next(), y, z]), dragged.id).length;

  const theirs = aircraft.parts.map((part) => {
    const { shape } = part;
    const [px, py, pz] = part.positionMm;
    return {
      shape:
        shape.kind === 'cylinder'
          ? new RAPIER.Cylinder(shape.lengthMm / 2, shape.diameterMm / 2)
          : new RAPIER.Cuboid(30, 12, 11),
      position: { x: px, y: py, z: pz },
      rotation: quaternion(poseRotation(poseOf(part))),
    };
  });
  const own = theirs[31]!;
  const theirFrame = () => {
    const at = { x: next(), y, z };
    let sum = 0;
    for (const one of theirs) {
      if (one === own) continue;
      sum +=
        own.shape.contactShape(at, own.rotation, one.shape, one.position, one.rotation, 5000)?.distance ?? 0;
    }
    return sum;
  };
  const ids = aircraft.parts.map(({ id }) => id);
  const all = () =>
    ids.reduce((sum, id) => sum + clearances(placeItem(aircraft, dragged.id, [next(), y, z]), id).length, 0);

  return [
    againstLimit(
      `one drag frame, clearances of the part to ${PARTS - 1} parts, the structure and the hull`,
      frame,
      4,
    ),
    compare({
      name: `one drag frame, distances of a part: ours to ${PARTS - 1} parts, the structure and the hull's wall; theirs to the parts`,
      against: 'rapier3d-compat, contactShape with each part',
      ours: frame,
      theirs: theirFrame,
    }),
    againstLimit(`one drag frame, clearances of all ${PARTS} parts, each with every other`, all, 4),
  ];
}
