import type { Vec3 } from '../geometry/types';
import { dot } from '../geometry/vec3';
import { unitDown } from './liquidInShape';
import { downInShape, MM3_PER_ML } from './liquidState';
import { surfaceLevel } from './surfaceLevel';
import type { Tank } from './types';
import type { TiltedVessel } from './vessel';
import { vesselOf } from './vesselOf';

/** A tank held at the aircraft's attitude, with what it starts with and what stays in it, mm³. */
interface Held {
  readonly vessel: TiltedVessel;
  /** Down · the tank's origin, from the shape's offsets to the aircraft's, mm. */
  readonly shiftMm: number;
  readonly startMm3: number;
  readonly floorMm3: number;
}

function hold(tank: Tank, down: Vec3): Held {
  const startMm3 = tank.startMl * MM3_PER_ML;
  return {
    vessel: vesselOf(tank.shape).tilt(downInShape(tank, down)),
    shiftMm: dot(down, tank.pose.positionMm),
    startMm3,
    floorMm3: Math.min(startMm3, tank.unusableMl * MM3_PER_ML),
  };
}

/**
 * Tanks that drain into one place with their surfaces level: what each holds, ml, once `drawnMl` has been drawn from them
 * together (more than 0, at most what is usable). The higher surface falls first until it meets the next; a tank stops at
 * its unusable liquid. No liquid runs from one tank into another. Level means the same down · p in the aircraft's frame.
 */
export function levelVolumes(tanks: readonly Tank[], drawnMl: number, down: Vec3): number[] {
  const unit = unitDown(down);
  const held = tanks.map((tank) => hold(tank, unit));
  const capsMm3 = held.map(({ startMm3, floorMm3 }) => startMm3 - floorMm3);
  const usableMm3 = sum(capsMm3);
  const goalMm3 = usableMm3 - drawnMl * MM3_PER_ML;
  if (goalMm3 <= 0) return held.map(({ floorMm3 }) => floorMm3 / MM3_PER_ML);
  const level = surfaceLevel(joined(held), usableMm3, goalMm3);
  const belowMm3 = held.map((tank) => usableBelow(tank, level).volumeMm3);
  return sharedOut(belowMm3, capsMm3, goalMm3).map((restMm3, k) => {
    const { startMm3, floorMm3 } = held[k]!;
    return Math.min(startMm3, floorMm3 + restMm3) / MM3_PER_ML;
  });
}

/**
 * What tanks still give, mm³, met in all to the last digit: the solver's rounding is spread over those that have some, each
 * in proportion and none beyond its cap. Beside a large tank it can be more than a small one has room for. With less left
 * than the level can resolve it lies wherever there was some.
 */
function sharedOut(belowMm3: readonly number[], capsMm3: readonly number[], goalMm3: number): number[] {
  const found = sum(belowMm3);
  if (found <= 0) {
    const usable = sum(capsMm3);
    return capsMm3.map((cap) => (cap / usable) * goalMm3);
  }
  const scaled = belowMm3.map((below, k) => Math.min(capsMm3[k]!, (below / found) * goalMm3));
  const overMm3 = goalMm3 - sum(scaled);
  const room = scaled.map((mm3, k) => (belowMm3[k]! > 0 ? capsMm3[k]! - mm3 : 0));
  const roomMm3 = sum(room);
  if (overMm3 <= 0 || roomMm3 <= 0) return scaled;
  const share = Math.min(1, overMm3 / roomMm3);
  return scaled.map((mm3, k) => mm3 + share * room[k]!);
}

const sum = (list: readonly number[]): number => list.reduce((total, value) => total + value, 0);

/** What a tank still gives when its surface is at an offset in the aircraft's frame. */
function usableBelow({ vessel, shiftMm, startMm3, floorMm3 }: Held, offsetMm: number) {
  const wet = vessel.cut(offsetMm - shiftMm);
  if (wet.volumeMm3 >= startMm3) return { volumeMm3: startMm3 - floorMm3, surfaceAreaMm2: 0 };
  if (wet.volumeMm3 <= floorMm3) return { volumeMm3: 0, surfaceAreaMm2: 0 };
  return { volumeMm3: wet.volumeMm3 - floorMm3, surfaceAreaMm2: wet.surfaceAreaMm2 };
}

/** The usable liquid of several tanks as that of one vessel. */
function joined(held: readonly Held[]): Pick<TiltedVessel, 'topMm' | 'bottomMm' | 'cut'> {
  return {
    topMm: Math.min(...held.map(({ vessel, shiftMm }) => vessel.topMm + shiftMm)),
    bottomMm: Math.max(...held.map(({ vessel, shiftMm }) => vessel.bottomMm + shiftMm)),
    cut(offsetMm) {
      let volumeMm3 = 0;
      let surfaceAreaMm2 = 0;
      for (const tank of held) {
        const part = usableBelow(tank, offsetMm);
        volumeMm3 += part.volumeMm3;
        surfaceAreaMm2 += part.surfaceAreaMm2;
      }
      return { volumeMm3, surfaceAreaMm2 };
    },
  };
}

/**
 * The amounts drawn from the group, ml, at which a tank of it begins to fall or stops giving; between them each tank's
 * content is a smooth function of what is drawn.
 */
export function levelBreaks(tanks: readonly Tank[], down: Vec3): number[] {
  const unit = unitDown(down);
  const held = tanks.map((tank) => hold(tank, unit));
  const usableMm3 = held.reduce((sum, { startMm3, floorMm3 }) => sum + startMm3 - floorMm3, 0);
  const group = joined(held);
  return held.flatMap(({ vessel, shiftMm, startMm3, floorMm3 }, k) =>
    [startMm3, floorMm3].map((volumeMm3) => {
      const fullMm3 = vesselOf(tanks[k]!.shape).full.volumeMm3;
      const inside = volumeMm3 > 0 && volumeMm3 < fullMm3;
      const end = volumeMm3 > 0 ? vessel.topMm : vessel.bottomMm;
      const offset = inside ? surfaceLevel(vessel, fullMm3, volumeMm3) : end;
      return (usableMm3 - group.cut(offset + shiftMm).volumeMm3) / MM3_PER_ML;
    }),
  );
}
