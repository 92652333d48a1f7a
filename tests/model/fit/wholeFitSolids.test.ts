import createManifold, { type Manifold } from 'manifold-3d';
import { beforeAll, expect, test } from 'vitest';
import { pointToAircraft } from '../../../src/engine/geometry/rotation';
import type { Pose, Vec3 } from '../../../src/engine/geometry/types';
import type { Shape } from '../../../src/engine/mass/shapes';
import { tessellate } from '../../../src/engine/mass/tessellate';
import { inLoadState, type Positions, UNDERCARRIAGE_ID } from '../../../src/model/airframe/loadSwitches';
import { pieces } from '../../../src/model/airframe/pieces';
import { poseOf } from '../../../src/model/airframe/poses';
import type { Aircraft, Leg, Part } from '../../../src/model/document/types';
import { problemsIn, wholeFit } from '../../../src/model/fit/wholeFit';
import { randomFrom } from '../../randomFrom';
import { benchOf, blockAt, box, partAt, slabWing, squareHull } from './fitAircraft';

/** The second route: solids cut with each other by an outside library, in every load state one by one. */
let wasm: Awaited<ReturnType<typeof createManifold>>;
beforeAll(async () => {
  wasm = await createManifold();
  wasm.setup();
});

function solid(shape: Shape, pose: Pose, mirrored = false): Manifold {
  const mesh = tessellate(shape, { segments: 96 });
  const corners = mesh.verticesMm.map((corner): Vec3 => {
    const [x, y, z] = pointToAircraft(pose, corner);
    return [x, mirrored ? -y : y, z];
  });
  const triangles = mesh.triangles.map(([a, b, c]) => (mirrored ? [a, c, b] : [a, b, c]));
  return new wasm.Manifold(
    new wasm.Mesh({
      numProp: 3,
      vertProperties: new Float32Array(corners.flat()),
      triVerts: new Uint32Array(triangles.flat()),
    }),
  );
}

const leg: Leg = {
  id: 'leg',
  kind: 'leg',
  name: 'Leg',
  sides: 'centre',
  topMm: [250, 0, -30],
  axleMm: [250, 0, -170],
  strutDiameterMm: 8,
  strutMassG: 50,
  wheelDiameterMm: 50,
  wheelWidthMm: 18,
  wheelMassG: 30,
  retract: { axis: [0, -1, 0], angleDeg: 85 },
};
const former = blockAt('former', box(6, 110, 60), [480, 0, 20]);
const wing = { ...slabWing, openToHull: true };

const shapes = (random: () => number): Part['shape'] => {
  const size = () => 12 + 40 * random();
  return random() < 0.5
    ? box(size(), size(), size())
    : { kind: 'cylinder', lengthMm: size(), diameterMm: size() };
};

function randomAircraft(random: () => number): Aircraft {
  const parts = Array.from({ length: 9 }, (_, i) => {
    const inWing = i > 6;
    const at: Vec3 = inWing
      ? [150 + 260 * random(), (random() < 0.5 ? -1 : 1) * (90 + 380 * random()), 12 * (random() - 0.5)]
      : [150 + 400 * random(), 120 * (random() - 0.5), 120 * (random() - 0.5)];
    const over = { yawDeg: 360 * random(), pitchDeg: 40 * random(), rollDeg: 90 * random() };
    return partAt(`part-${i}`, shapes(random), at, over);
  });
  const camera = {
    id: 'camera',
    name: 'Camera',
    positions: [
      { id: 'on', name: 'on' },
      { id: 'off', name: 'off', without: ['part-0', 'part-3'] },
    ],
  };
  return benchOf([squareHull, wing, leg, former], parts, { switches: [camera], keepApart: [] });
}

/** More than chords of round things can make, and less than a clash that matters, mm³. */
const hairMm3 = 2;
const seed = 7;

test(`clashes and what stands outside, in each load state, as cut solids have it (seed ${seed})`, {
  timeout: 60_000,
}, () => {
  const random = randomFrom(seed);
  let clashes = 0;
  let outside = 0;
  for (let run = 0; run < 8; run += 1) {
    const aircraft = randomAircraft(random);
    const { problems } = wholeFit(aircraft);
    const bodies = aircraft.parts.map((part) => ({ id: part.id, body: solid(part.shape, poseOf(part)) }));
    const holders = wasm.Manifold.union(
      pieces(aircraft)
        .filter(({ kind }) => kind === 'hull' || kind === 'panel')
        .map((piece) => solid(piece.shape, piece.pose, piece.mirrored)),
    );
    for (const legs of ['down', 'up']) {
      for (const camera of ['on', 'off']) {
        const positions: Positions = { [UNDERCARRIAGE_ID]: legs, camera };
        const loaded = inLoadState(aircraft, positions);
        const here = problemsIn(problems, aircraft, positions);
        const saidOf = (kinds: readonly string[], ...ids: string[]) =>
          here.some(
            (one) =>
              kinds.includes(one.kind) && ids.every((id) => one.parties.some((party) => party.id === id)),
          );
        const all = pieces(loaded);
        const items = bodies.filter(({ id }) => loaded.parts.some((part) => part.id === id));
        const builtOf = (id: string) => {
          const own = all.filter(({ sourceId }) => sourceId === id);
          const body = wasm.Manifold.union(
            own.map((piece) => solid(piece.shape, piece.pose, piece.mirrored)),
          );
          return { id, body };
        };
        const built = ['leg', 'former'].map(builtOf);
        items.forEach((a, i) => {
          for (const b of [...items.slice(i + 1), ...built]) {
            const shared = a.body.intersect(b.body).volume();
            if (shared > hairMm3) {
              clashes += 1;
              expect(
                saidOf(['overlap', 'within'], a.id, b.id),
                `${run} ${legs} ${camera}: ${a.id} and ${b.id}`,
              ).toBe(true);
            } else if (shared === 0) {
              // Chords lie within the circle by less than a fiftieth of a millimetre.
              const said = here.filter(
                ({ kind, byMm }) => (kind === 'overlap' || kind === 'within') && byMm > 0.02,
              );
              const both = said.some(({ parties }) =>
                [a.id, b.id].every((id) => parties.some((one) => one.id === id)),
              );
              expect(both, `${run} ${legs} ${camera}: ${a.id} clear of ${b.id}`).toBe(false);
            }
          }
          const showing = a.body.subtract(holders).volume();
          if (showing > hairMm3) {
            outside += 1;
            expect(saidOf(['through', 'outside'], a.id), `${run}: ${a.id} stands out`).toBe(true);
          }
        });
      }
    }
  }
  expect(clashes).toBeGreaterThan(20);
  expect(outside).toBeGreaterThan(10);
});
