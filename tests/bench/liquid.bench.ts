import manifoldModule, { type Manifold } from 'manifold-3d';
import type { Vec3 } from '../../src/engine/geometry/types';
import { liquidInShape } from '../../src/engine/liquid/liquidInShape';
import { meshProperties } from '../../src/engine/mass/mesh';
import type { CylinderShape, PrismShape, Shape } from '../../src/engine/mass/shapes';
import type { Mesh } from '../../src/engine/mass/types';
import { volumeProperties } from '../../src/engine/mass/volumeProperties';
import { balanceAt, LEVEL } from '../../src/model/balance/balance';
import { blankAircraft } from '../../src/model/document/blank';
import { placeItem } from '../../src/model/document/edit';
import type { Aircraft, Part } from '../../src/model/document/types';
import { againstLimit, type BenchRow, compare, medianMs } from './measure';

const LENGTH_MM = 240;
const RADIUS_MM = 50;
const SHARE = 0.37;
/** What single precision is good for; asked of both sides where theirs cannot do better. */
const ACCURACY = 1e-6;
const MOST_PARTS = 2000;
const FRAME_LIMIT_MS = 2;

/** A lying drum as a polyhedron. */
const drum = (sides: number): PrismShape => ({
  kind: 'prism',
  lengthMm: LENGTH_MM,
  outlineMm: Array.from({ length: sides }, (_, i) => {
    const a = (2 * Math.PI * i) / sides;
    return [RADIUS_MM * Math.cos(a), RADIUS_MM * Math.sin(a)] as const;
  }),
});
const cylinder: CylinderShape = { kind: 'cylinder', lengthMm: LENGTH_MM, diameterMm: 2 * RADIUS_MM };
/** Sides with which an inscribed polygon has the circle's area to the accuracy: the share lost is 2π²/3n². */
const ROUND_SIDES = Math.ceil(Math.sqrt((2 * Math.PI ** 2) / 3 / ACCURACY));

/** Ours: the surface for a volume, then volume, centroid and inertia; a new attitude for every call. */
function ourState(shape: Shape): () => number {
  const wanted = SHARE * volumeProperties(shape).volumeMm3;
  let turn = 0;
  return () => {
    turn += 0.0137;
    const { volumeProperties: wet, surfaceOffsetMm } = liquidInShape(shape, wanted, downAt(turn));
    return wet.inertiaAboutCentroidMm5.xx + (surfaceOffsetMm ?? 0);
  };
}

const downAt = (turn: number): Vec3 => {
  const [x, y] = [0.3 * Math.sin(turn), 0.2 * Math.cos(turn)];
  const size = Math.hypot(x, y, 1);
  return [x / size, y / size, -1 / size];
};

/** Theirs: the same, with the surface found by false position (Illinois) and the mesh that is left integrated. */
function theirState(solid: Manifold): () => number {
  const wanted = SHARE * solid.volume();
  let turn = 0;
  const wetAt = (down: Vec3, offsetMm: number) => solid.trimByPlane([down[0], down[1], down[2]], offsetMm);
  const excess = (down: Vec3, offsetMm: number) => {
    const wet = wetAt(down, offsetMm);
    const volume = wet.volume();
    wet.delete();
    return volume - wanted;
  };
  return () => {
    turn += 0.0137;
    const down = downAt(turn);
    let [low, high] = [-LENGTH_MM, LENGTH_MM];
    let [above, below] = [solid.volume() - wanted, -wanted];
    let offset = 0;
    for (let side = 0, round = 0; round < 60; round++) {
      offset = (low * below - high * above) / (below - above);
      const over = excess(down, offset);
      if (Math.abs(over) < ACCURACY * wanted) break;
      if (over > 0) {
        [low, above] = [offset, over];
        if (side === 1) below /= 2;
        side = 1;
      } else {
        [high, below] = [offset, over];
        if (side === -1) above /= 2;
        side = -1;
      }
    }
    const wet = wetAt(down, offset);
    const { inertiaAboutCentroidMm5 } = meshProperties(meshOf(wet));
    wet.delete();
    return inertiaAboutCentroidMm5.xx + offset;
  };
}

function meshOf(solid: Manifold): Mesh {
  const { vertProperties, triVerts, numProp } = solid.getMesh();
  const verticesMm: Vec3[] = [];
  for (let i = 0; i < vertProperties.length; i += numProp)
    verticesMm.push([vertProperties[i]!, vertProperties[i + 1]!, vertProperties[i + 2]!]);
  const triangles: [number, number, number][] = [];
  for (let i = 0; i < triVerts.length; i += 3)
    triangles.push([triVerts[i]!, triVerts[i + 1]!, triVerts[i + 2]!]);
  return { verticesMm, triangles };
}

/** An aircraft of so many boxes and one tank. */
function boxes(count: number): Aircraft {
  const part = (i: number): Part => ({
    id: `part-${i}`,
    name: `Part ${i}`,
    role: 'other',
    shape: { kind: 'box', lengthMm: 20 + (i % 90), widthMm: 10 + (i % 40), heightMm: 8 + (i % 30) },
    massG: 10 + (i % 300),
    positionMm: [(i * 37) % 1500, ((i * 53) % 400) - 200, ((i * 29) % 160) - 80],
    yawDeg: (i * 17) % 90,
    pitchDeg: (i * 7) % 90,
    rollDeg: 0,
  });
  return { ...blankAircraft(), parts: Array.from({ length: count }, (_, i) => part(i)) };
}

/** One frame in which one of the parts is dragged on. */
function dragFrame(count: number): () => unknown {
  const aircraft = boxes(count);
  let step = 0;
  return () => {
    step = (step + 1) % 200;
    return balanceAt(placeItem(aircraft, 'part-7', [step, 0, 0]), { fuelFraction: 1, down: LEVEL }).massG;
  };
}

export default async function rows(): Promise<BenchRow[]> {
  const wasm = await manifoldModule();
  wasm.setup();
  const solidOf = (sides: number) =>
    wasm.CrossSection.ofPolygons([drum(sides).outlineMm.map(([y, z]) => [y, z] as [number, number])])
      .extrude(LENGTH_MM)
      // Their prism stands on z; ours lies along x.
      .transform([0, 1, 0, 0, 0, 0, 1, 0, 1, 0, 0, 0, -LENGTH_MM / 2, 0, 0, 1]);
  const against = 'manifold-3d, surface found to 1e-6 by false position, mesh integrated';

  const polyhedra = [12, 48, 192].map((sides) =>
    compare({
      name: `liquid state of the same ${sides}-sided tank: surface, volume, centroid, inertia`,
      against,
      ours: ourState(drum(sides)),
      theirs: theirState(solidOf(sides)),
      batches: 9,
    }),
  );
  const round = compare({
    name: `liquid state of a round tank to 1e-6: ours exact, theirs with ${ROUND_SIDES} sides`,
    against,
    ours: ourState(cylinder),
    theirs: theirState(solidOf(ROUND_SIDES)),
    batches: 3,
  });

  const perPart = (count: number) => medianMs(dragFrame(count), 9) / count;
  const linear = [200, MOST_PARTS].map((count): BenchRow => {
    const [own, few] = [perPart(count), perPart(50)];
    return {
      name: `drag frame, cost per part: ${count} parts against 50`,
      ours: own,
      theirs: few,
      unit: 'ms per part',
      against: 'the same with 50 parts: 1 or more is linear or better',
      ratio: few / own,
    };
  });
  return [
    ...polyhedra,
    round,
    ...[10, 60, 200, MOST_PARTS].map((count) =>
      againstLimit(`one drag frame with ${count} parts`, dragFrame(count), FRAME_LIMIT_MS),
    ),
    ...linear,
  ];
}
