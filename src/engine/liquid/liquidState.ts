import { poseRotation, turn, turnBack } from '../geometry/rotation';
import type { Vec3 } from '../geometry/types';
import { add, dot, mirrorY } from '../geometry/vec3';
import { massMirror, massTurn } from '../mass/massProperties';
import type { Shape } from '../mass/shapes';
import { tensorScale, zeroTensor } from '../mass/tensor';
import type { MassProperties } from '../mass/types';
import { perObject } from '../memory/memory';
import { liquidInShape, unitDown } from './liquidInShape';
import type { LiquidState, Tank } from './types';
import { vesselOf } from './vesselOf';

export const MM3_PER_ML = 1000;

/** What a tank holds to the brim, ml. Throws when its shape cannot be a tank. */
export const tankVolumeMl = (tank: Tank): number => vesselOf(tank.shape).full.volumeMm3 / MM3_PER_ML;

/**
 * The liquid in a tank that holds `volumeMl`, with down in the aircraft's frame: mass, CG and inertia about the CG, and the
 * free surface, all in the aircraft's frame. Moving the tank without turning it costs next to nothing, for what the liquid
 * does in a shape at one attitude is remembered with the shape.
 * Throws as `liquidInShape` does.
 */
export function liquidState(tank: Tank, volumeMl: number, down: Vec3): LiquidState {
  const settled = settledLiquid(tank, volumeMl, down);
  const massG = volumeMl * tank.densityGPerMl;
  const { body, offsetMm } = settled;
  const at = tank.pose.positionMm;
  const mass: MassProperties =
    body.cgMm === null || massG === 0
      ? { massG: 0, cgMm: null, inertiaAboutCgGmm2: zeroTensor }
      : {
          massG,
          cgMm: add(body.cgMm, at),
          inertiaAboutCgGmm2: tensorScale(body.inertiaAboutCgGmm2, massG / body.massG),
        };
  const surface =
    offsetMm === null ? null : { down: settled.down, offsetMm: offsetMm + dot(settled.down, at) };
  return { tankId: tank.id, volumeMl, mass, surface };
}

/** The liquid in a tank turned as in the aircraft but not yet moved there: unit density, aircraft's axes, tank's origin. */
interface Settled {
  readonly body: MassProperties;
  readonly down: Vec3;
  readonly offsetMm: number | null;
}

interface Remembered {
  readonly key: readonly number[];
  readonly settled: Settled;
}

/** The latest results for one shape, the oldest overwritten first. */
interface Memory {
  readonly entries: Remembered[];
  next: number;
  lastHit: number;
}

/** Enough for eight tanks that share one shape, at 64 fuel states, and some to spare. */
const REMEMBERED_PER_SHAPE = 640;
const memoryOf = perObject((_: Shape): Memory => ({ entries: [], next: 0, lastHit: -1 }));

function settledLiquid(tank: Tank, volumeMl: number, down: Vec3): Settled {
  const { yawDeg, pitchDeg, rollDeg } = tank.pose;
  const key = [volumeMl, down[0], down[1], down[2], yawDeg, pitchDeg, rollDeg, tank.mirrored ? 1 : 0];
  const memory = memoryOf(tank.shape);
  const { entries } = memory;
  // Fuel states are asked for in the same order again and again, so the likely one is after the last.
  for (let step = 1; step <= entries.length; step++) {
    const at = (memory.lastHit + step) % entries.length;
    const entry = entries[at]!;
    if (sameKey(entry.key, key)) {
      memory.lastHit = at;
      return entry.settled;
    }
  }
  const settled = settle(tank, volumeMl, down);
  entries[memory.next] = { key, settled };
  memory.lastHit = memory.next;
  memory.next = (memory.next + 1) % REMEMBERED_PER_SHAPE;
  return settled;
}

function sameKey(a: readonly number[], b: readonly number[]): boolean {
  for (let i = 0; i < a.length; i++) if (a[i] !== b[i]) return false;
  return true;
}

function settle(tank: Tank, volumeMl: number, down: Vec3): Settled {
  const { volumeProperties, surfaceOffsetMm } = liquidInShape(
    tank.shape,
    volumeMl * MM3_PER_ML,
    downInShape(tank, down),
  );
  const inTank: MassProperties = {
    massG: volumeProperties.volumeMm3,
    cgMm: volumeProperties.centroidMm,
    inertiaAboutCgGmm2: volumeProperties.inertiaAboutCentroidMm5,
  };
  return {
    body: massTurn(tank.mirrored ? massMirror(inTank) : inTank, poseRotation(tank.pose)),
    down: unitDown(down),
    offsetMm: surfaceOffsetMm,
  };
}

/** A direction of down in the aircraft's frame, seen in the frame of a tank's shape. */
export function downInShape(tank: Tank, down: Vec3): Vec3 {
  const turned = turnBack(poseRotation(tank.pose), unitDown(down));
  return tank.mirrored ? mirrorY(turned) : turned;
}

/** A point of a tank's shape (its own frame, mm) in the aircraft's frame. */
export function pointFromShape(tank: Tank, pointMm: Vec3): Vec3 {
  const inTank = tank.mirrored ? mirrorY(pointMm) : pointMm;
  return add(turn(poseRotation(tank.pose), inTank), tank.pose.positionMm);
}
