import createManifold, { type Manifold } from 'manifold-3d';
import { beforeAll, describe, expect, test } from 'vitest';
import { pointToAircraft } from '../../src/engine/geometry/rotation';
import type { Pose, Vec3 } from '../../src/engine/geometry/types';
import type { Shape } from '../../src/engine/mass/shapes';
import { tessellate } from '../../src/engine/mass/tessellate';
import { inLoadState } from '../../src/model/airframe/loadSwitches';
import { pieces } from '../../src/model/airframe/pieces';
import { poseOf } from '../../src/model/airframe/poses';
import type { Aircraft } from '../../src/model/document/types';
import { wholeFit } from '../../src/model/fit/wholeFit';
import { type DemoName, demo, NAMES } from './demoAircraft';

let wasm: Awaited<ReturnType<typeof createManifold>>;
beforeAll(async () => {
  wasm = await createManifold();
  wasm.setup();
});

interface Placed {
  readonly shape: Shape;
  readonly pose: Pose;
  /** Mirrored in its own frame before it is posed, or in the aircraft's after. */
  readonly mirror?: 'own' | 'aircraft' | undefined;
}

/** The solid where it stands in the aircraft, in mm. */
function solid({ shape, pose, mirror }: Placed): Manifold {
  const mesh = tessellate(shape);
  const flip = ([x, y, z]: Vec3): Vec3 => [x, -y, z];
  const corners = mesh.verticesMm.map((corner) => {
    const placed = pointToAircraft(pose, mirror === 'own' ? flip(corner) : corner);
    return mirror === 'aircraft' ? flip(placed) : placed;
  });
  const triangles = mesh.triangles.map(([a, b, c]) => (mirror ? [a, c, b] : [a, b, c]));
  return new wasm.Manifold(
    new wasm.Mesh({
      numProp: 3,
      vertProperties: new Float32Array(corners.flat()),
      triVerts: new Uint32Array(triangles.flat()),
    }),
  );
}

const airframe = (aircraft: Aircraft, ...kinds: string[]): Manifold =>
  wasm.Manifold.union(
    pieces(aircraft)
      .filter(({ kind }) => kinds.includes(kind))
      .map(({ shape, pose, mirrored }) => solid({ shape, pose, mirror: mirrored ? 'aircraft' : undefined })),
  );

const itemsOf = ({ parts, tanks }: Aircraft) => [
  ...parts.map((part) => ({ id: part.id, solid: solid({ shape: part.shape, pose: poseOf(part) }) })),
  ...tanks.map((tank) => ({
    id: tank.id,
    solid: solid({ shape: tank.shape, pose: poseOf(tank), mirror: tank.mirrored ? 'own' : undefined }),
  })),
];

/** What is meant to stand in the open: all that is bolted to the firewall, and the end of a tail pipe. */
const IN_THE_OPEN: Record<DemoName, readonly string[]> = {
  sandmartin: ['engine-mount', 'crankcase', 'cylinder', 'silencer', 'propeller', 'spinner'],
  fieldfare: ['tail-pipe'],
  whimbrel: ['motor', 'propeller', 'spinner'],
  corncrake: [],
};

/** Corners of the meshes are on the true surfaces, chords between them a hair inside: mm³. */
const HAIR = 30;

describe.each(NAMES)('%s', { timeout: 60_000 }, (name) => {
  const aircraft = demo(name);

  test('every part and tank lies inside the hull or a flying surface, but for what is meant to show', () => {
    const inside = airframe(aircraft, 'hull', 'panel');
    const showing = itemsOf(aircraft).filter((item) => item.solid.subtract(inside).volume() > HAIR);
    expect(showing.map(({ id }) => id).sort()).toEqual([...IN_THE_OPEN[name]].sort());
  });

  test('fits in every load state: nothing runs into anything, reaches out, is too near or too short', () => {
    expect(wholeFit(aircraft).problems.map(({ key }) => key)).toEqual([]);
  });

  test('says itself what is meant to show', () => {
    const open = [...aircraft.parts, ...aircraft.tanks].filter((item) => item.inTheOpen);
    // A tail pipe needs no such word: it comes out of a hull that is open there.
    expect(IN_THE_OPEN[name].filter((id) => id !== 'tail-pipe')).toEqual(open.map(({ id }) => id));
  });

  test('with the wheels up no part or tank runs into them', () => {
    const up = inLoadState(aircraft, { undercarriage: 'up' });
    const wheels = airframe(up, 'strut', 'wheel');
    const struck = itemsOf(up).filter((item) => item.solid.intersect(wheels).volume() > HAIR);
    expect(struck.map(({ id }) => id)).toEqual([]);
  });

  test('nothing runs through a boom, a spar, a strut or a wheel', () => {
    const tubes = airframe(aircraft, 'boom', 'strut', 'wheel');
    const struck = itemsOf(aircraft).filter((item) => item.solid.intersect(tubes).volume() > HAIR);
    expect(struck.map(({ id }) => id)).toEqual([]);
  });
});

describe.each(['sandmartin', 'fieldfare'] as const)('%s on its three wheels', { timeout: 60_000 }, (name) => {
  const aircraft = demo(name);
  const legs = aircraft.structure.filter((element) => element.kind === 'leg');

  test('all wheels touch one level', () => {
    const groundMm = legs.map(({ axleMm, wheelDiameterMm }) => axleMm[2] - wheelDiameterMm / 2);
    expect(legs).toHaveLength(2);
    expect(groundMm[1]).toBeCloseTo(groundMm[0]!, 9);
  });

  test('nothing but the wheels reaches the ground', () => {
    const groundMm = legs[0]!.axleMm[2] - legs[0]!.wheelDiameterMm / 2;
    const lowest = Math.min(...itemsOf(aircraft).map((item) => item.solid.boundingBox().min[2]));
    expect(lowest).toBeGreaterThan(groundMm + 30);
  });
});

test('sandmartin’s propeller turns clear of the booms and of the ground', () => {
  const { parts, structure } = demo('sandmartin');
  const propeller = parts.find(({ id }) => id === 'propeller')!;
  const boom = structure.find((element) => element.kind === 'boom')!;
  if (propeller.shape.kind !== 'ellipsoid') throw new Error('expected an ellipsoid');
  const radiusMm = propeller.shape.widthMm / 2;
  expect(boom.frontMm[1] - boom.frontDiameterMm / 2 - radiusMm).toBeGreaterThan(20);
});
