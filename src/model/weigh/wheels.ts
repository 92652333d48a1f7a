import type { Vec3 } from '../../engine/geometry/types';
import type { Aircraft } from '../document/types';

export interface Wheel {
  readonly name: string;
  readonly axleMm: Vec3;
  readonly radiusMm: number;
}

/** Every wheel of the aircraft as it stands on the ground, legs down, from the nose aft. */
export function wheelsOf({ structure }: Aircraft): readonly Wheel[] {
  return structure
    .flatMap((piece): readonly Wheel[] => {
      if (piece.kind !== 'leg') return [];
      const { name, axleMm, sides, wheelDiameterMm } = piece;
      const radiusMm = wheelDiameterMm / 2;
      const [x, y, z] = axleMm;
      if (sides !== 'both') return [{ name, axleMm, radiusMm }];
      return [
        { name: `${name}, left`, axleMm: [x, -y, z], radiusMm },
        { name: `${name}, right`, axleMm, radiusMm },
      ];
    })
    .sort((a, b) => a.axleMm[0] - b.axleMm[0]);
}

/**
 * The main axle, which carries a pair of wheels or else the largest one, and the nose or tail wheel; null where the aircraft does not
 * stand on such.
 */
export function axlesOf(aircraft: Aircraft): { readonly mainMm: Vec3; readonly otherMm: Vec3 } | null {
  const wheels = wheelsOf(aircraft);
  const [largest] = [...wheels].sort((a, b) => b.radiusMm - a.radiusMm);
  const main = wheels.find((wheel) => isOneOfAPair(wheel, wheels)) ?? largest;
  const other = main && wheels.find(({ axleMm: [x] }) => Math.abs(x - main.axleMm[0]) > 1);
  if (!main || !other) return null;
  return { mainMm: [main.axleMm[0], 0, main.axleMm[2]], otherMm: other.axleMm };
}

const isOneOfAPair = ({ axleMm: [x, y] }: Wheel, wheels: readonly Wheel[]): boolean =>
  y !== 0 && wheels.some(({ axleMm }) => axleMm[0] === x && axleMm[1] === -y);

/** Farther from every axle than this a place is that of no wheel, mm. */
const AT_AXLE_MM = 40;

/** How far below an axle its wheel stands, mm; 0 where there is no wheel. */
export function radiusAt(aircraft: Aircraft, [x, , z]: Vec3): number {
  const wheel = wheelsOf(aircraft).find(
    ({ axleMm }) => Math.hypot(axleMm[0] - x, axleMm[2] - z) < AT_AXLE_MM,
  );
  return wheel?.radiusMm ?? 0;
}
