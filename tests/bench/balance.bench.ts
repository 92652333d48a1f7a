import { readFileSync } from 'node:fs';
import RAPIER from '@dimforge/rapier3d-compat';
import manifoldModule from 'manifold-3d';
import { liquidInShape } from '../../src/engine/liquid/liquidInShape';
import { massSum } from '../../src/engine/mass/massProperties';
import type { PrismShape } from '../../src/engine/mass/shapes';
import { bodies } from '../../src/model/airframe/bodies';
import { balanceAt, LEVEL } from '../../src/model/balance/balance';
import { placeItem } from '../../src/model/document/edit';
import type { Aircraft } from '../../src/model/document/types';
import { againstLimit, type BenchRow, compare } from './measure';

/** Repeatable figures from 0 to 1 (mulberry32, a public-domain generator). */
function random(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let t = Math.imul(state ^ (state >>> 15), state | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}

const PARTS = 60;
const STATES = 64;
const SIDES = 48;

/** A 48-sided lying drum as a polyhedron, the same solid for both engines. */
const drum: PrismShape = {
  kind: 'prism',
  lengthMm: 240,
  outlineMm: Array.from({ length: SIDES }, (_, i) => {
    const a = (2 * Math.PI * i) / SIDES;
    return [50 * Math.cos(a), 50 * Math.sin(a)] as const;
  }),
};

function loaded(): Aircraft {
  const next = random(20260901);
  const between = (low: number, high: number) => low + (high - low) * next();
  const demo: Aircraft = JSON.parse(
    readFileSync(new URL('../../demo-data/sandmartin.json', import.meta.url), 'utf8'),
  );
  const tank = demo.tanks[0]!;
  return {
    ...demo,
    structure: [],
    bareAirframe: null,
    parts: Array.from({ length: PARTS }, (_, i) => ({
      id: `part-${i}`,
      name: `Part ${i}`,
      role: 'other' as const,
      shape: {
        kind: 'box' as const,
        lengthMm: between(20, 120),
        widthMm: between(10, 60),
        heightMm: between(8, 40),
      },
      massG: between(10, 500),
      positionMm: [between(0, 1500), between(-200, 200), between(-80, 80)] as const,
      yawDeg: between(-90, 90),
      pitchDeg: between(-90, 90),
      rollDeg: between(-90, 90),
    })),
    tanks: [0, 1, 2].map((i) => ({
      ...tank,
      id: `tank-${i}`,
      name: `Tank ${i}`,
      shape: drum,
      positionMm: [400 + 120 * i, 60 * (i - 1), 0] as const,
      yawDeg: 0,
      pitchDeg: 3 * i,
      rollDeg: 0,
      startMl: null,
      unusableMl: 10,
      feeds: 'outlet',
      rank: i,
    })),
  };
}

export default async function rows(): Promise<BenchRow[]> {
  await RAPIER.init();
  const wasm = await manifoldModule();
  wasm.setup();
  const aircraft = loaded();

  const world = new RAPIER.World({ x: 0, y: 0, z: 0 });
  const body = world.createRigidBody(RAPIER.RigidBodyDesc.dynamic());
  const colliders = aircraft.parts.map((part) => {
    if (part.shape.kind !== 'box') throw new Error('expected a box');
    const { lengthMm, widthMm, heightMm } = part.shape;
    const [x, y, z] = part.positionMm;
    return world.createCollider(
      RAPIER.ColliderDesc.cuboid(lengthMm / 2, widthMm / 2, heightMm / 2)
        .setMass(part.massG)
        .setTranslation(x, y, z),
      body,
    );
  });
  let flip = 0;
  const theirRollUp = () => {
    flip = 1 - flip;
    const [x, y, z] = aircraft.parts[7]!.positionMm;
    colliders[7]!.setTranslationWrtParent({ x: x + flip, y, z });
    body.recomputeMassPropertiesFromColliders();
    return body.mass() + body.localCom().x + body.principalInertia().x;
  };

  const outline = drum.outlineMm.map(([y, z]) => [y, z] as [number, number]);
  const theirDrum = wasm.CrossSection.ofPolygons([outline]).extrude(drum.lengthMm);
  const theirState = (share: number, tilt: number) => {
    const wet = theirDrum.trimByPlane([0, -Math.cos(tilt), -Math.sin(tilt)], 100 * share - 50);
    const volume = wet.volume();
    wet.delete();
    return volume;
  };

  const masses = bodies(aircraft).map((one) => one.mass);
  const [px, py, pz] = aircraft.parts[7]!.positionMm;
  let step = 0;
  const dragPart = () => {
    step = (step + 1) % 200;
    const moved = placeItem(aircraft, 'part-7', [px + step, py, pz]);
    return balanceAt(moved, { fuelFraction: 0.4, down: LEVEL }).travel;
  };
  const [tx, ty, tz] = aircraft.tanks[1]!.positionMm;
  const dragTank = () => {
    step = (step + 1) % 200;
    const moved = placeItem(aircraft, 'tank-1', [tx + step, ty, tz]);
    return balanceAt(moved, { fuelFraction: 0.4, down: LEVEL }).travel;
  };
  const theirFrame = () => {
    let sum = theirRollUp();
    for (let tank = 0; tank < 3; tank++) {
      for (let i = 0; i < STATES; i++) sum += theirState((i + 0.5) / STATES, (tank * 3 * Math.PI) / 180);
    }
    return sum;
  };

  const full = Math.PI * 50 ** 2 * drum.lengthMm * 0.99;
  let tilt = 0;
  const ourState = () => {
    // A new attitude for every call, so that nothing is remembered.
    tilt += 0.0137;
    return liquidInShape(drum, full * 0.37, [Math.sin(tilt) * 0.3, Math.cos(tilt) * 0.2, -1]).surfaceOffsetMm;
  };
  const ourBurnState = () => {
    // A new volume for every call at one attitude, as a burn asks for them.
    tilt += 0.0137;
    return liquidInShape(drum, full * (0.5 + 0.4 * Math.sin(tilt)), LEVEL).surfaceOffsetMm;
  };
  const theirTilted = () => {
    tilt += 0.0137;
    return theirState(0.41, tilt);
  };

  return [
    compare({
      name: `roll-up of ${PARTS} parts: mass, CG, full inertia`,
      against: 'rapier3d-compat, one compound body recomputed',
      ours: () => massSum(masses).massG,
      theirs: theirRollUp,
    }),
    compare({
      name: `one drag frame, a part: ${PARTS} parts, 3 tanks, ${STATES} fuel states`,
      against: 'rapier3d-compat and manifold-3d (volumes only)',
      ours: dragPart,
      theirs: theirFrame,
      batches: 9,
    }),
    compare({
      name: `one drag frame, a tank: ${PARTS} parts, 3 tanks, ${STATES} fuel states`,
      against: 'rapier3d-compat and manifold-3d (volumes only)',
      ours: dragTank,
      theirs: theirFrame,
      batches: 9,
    }),
    againstLimit('one drag frame, a part, against the aim of 0.5 ms', dragPart, 0.5),
    compare({
      name: `liquid state of a ${SIDES}-sided tank along the burn: surface found, volume, centroid, inertia`,
      against: 'manifold-3d trimByPlane (surface given, volume only)',
      ours: ourBurnState,
      theirs: theirTilted,
    }),
    compare({
      name: `liquid state of a ${SIDES}-sided tank at a new attitude: surface found, volume, centroid, inertia`,
      against: 'manifold-3d trimByPlane (surface given, volume only)',
      ours: ourState,
      theirs: theirTilted,
    }),
  ];
}
