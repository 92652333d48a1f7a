import { readFileSync } from 'node:fs';
import RAPIER from '@dimforge/rapier3d-compat';
import { poseRotation } from '../../src/engine/geometry/rotation';
import type { Mat3 } from '../../src/engine/geometry/types';
import { cutOuts } from '../../src/model/airframe/cutOuts';
import { leadStates } from '../../src/model/airframe/leads';
import { poseOf } from '../../src/model/airframe/poses';
import { placeItem } from '../../src/model/document/edit';
import type { Aircraft } from '../../src/model/document/types';
import { clearances } from '../../src/model/fit/clearances';
import { keepApartFaultsOf } from '../../src/model/fit/keepApart';
import { againstLimit, type BenchRow, compare } from './measure';

const PARTS = 60;
const LEADS = 20;

/** Sandmartin's airframe with 60 boxes and drums in it, three deep and four abreast along the pod. */
function loaded(): Aircraft {
  const demo: Aircraft = JSON.parse(
    readFileSync(new URL('../../demo-data/sandmartin.json', import.meta.url), 'utf8'),
  );
  return {
    ...demo,
    tanks: [],
    keepApart: [{ between: 'part-31', and: 'other', atLeastMm: 60, why: 'for the bench' }],
    leads: Array.from({ length: LEADS }, (_, i) => ({
      id: `lead-${i}`,
      name: `Lead ${i}`,
      from: 'part-31',
      to: `part-${i}`,
      lengthMm: 400,
      massGPerM: 20,
      waypointsMm: [[300, 0, 0]] as const,
    })),
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
  // What the stage and the card ask for while a part is dragged.
  const wholeFrame = () => {
    const moved = placeItem(aircraft, dragged.id, [next(), y, z]);
    const { length } = clearances(moved, dragged.id);
    return (
      length + keepApartFaultsOf(moved, dragged.id).length + leadStates(moved).length + cutOuts(moved).length
    );
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
  const theirDistances = (from: (typeof theirs)[number], at: typeof own.position) => {
    let sum = 0;
    for (const one of theirs) {
      if (one === from) continue;
      sum +=
        from.shape.contactShape(at, from.rotation, one.shape, one.position, one.rotation, 5000)?.distance ??
        0;
    }
    return sum;
  };
  const theirFrame = () => theirDistances(own, { x: next(), y, z });
  const theirAll = () => theirs.reduce((sum, one) => sum + theirDistances(one, one.position), 0);
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
    againstLimit(
      `one drag frame, all that it asks of fit: the part's clearances, its rules of distance, ${LEADS} leads, cut-outs`,
      wholeFrame,
      4,
    ),
    compare({
      name: `clearances of all ${PARTS} parts with one another after one has moved (more than a frame asks for): ours with the structure and the hull, and what stood still remembered; theirs every pair afresh`,
      against: 'rapier3d-compat, contactShape with each pair',
      ours: all,
      theirs: theirAll,
    }),
  ];
}
