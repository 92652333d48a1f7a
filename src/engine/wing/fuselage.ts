/** Where and how wide the fuselage is. Only the width enters the pitching moment. */
export interface FuselageStation {
  readonly stationMm: number;
  readonly widthMm: number;
}

/** A stretch over which the local angle of flow per unit alpha (dβ/dα) runs linearly. Stations in mm. */
export interface FlowStretch {
  readonly fromMm: number;
  readonly toMm: number;
  readonly fromFactor: number;
  readonly toFactor: number;
}

/** A body on its own: the flow meets it at alpha all along. */
export const FREE_FLOW: readonly FlowStretch[] = [
  { fromMm: Number.NEGATIVE_INFINITY, toMm: Number.POSITIVE_INFINITY, fromFactor: 1, toFactor: 1 },
];

/** What the wing does to the flow along the fuselage. */
export interface WingOnBody {
  /** Root chord of the wing, stations. */
  readonly leadingEdgeMm: number;
  readonly trailingEdgeMm: number;
  /** Rear end of the body and the downwash slope dε/dα there. */
  readonly rearMm: number;
  readonly downwashSlope: number;
}

/**
 * Simplified flow along a fuselage with a wing: freestream ahead of the root chord (the upwash just ahead
 * of it is left out), none along the chord, which the wing keeps parallel to itself, then rising linearly
 * to 1 − dε/dα at the rear end. After Multhopp, NACA TM 1036, 1942 (from memory), without his upwash curves.
 */
export function wingedFlow({
  leadingEdgeMm,
  trailingEdgeMm,
  rearMm,
  downwashSlope,
}: WingOnBody): FlowStretch[] {
  const ahead = { fromMm: Number.NEGATIVE_INFINITY, toMm: leadingEdgeMm, fromFactor: 1, toFactor: 1 };
  if (rearMm <= trailingEdgeMm) return [ahead];
  return [ahead, { fromMm: trailingEdgeMm, toMm: rearMm, fromFactor: 0, toFactor: 1 - downwashSlope }];
}

/**
 * Pitching moment of the fuselage per radian of alpha over dynamic pressure, mm³, nose up +: destabilising.
 * Slender-body theory as strips, (π/2)·∫w²·(dβ/dα) dx, exact for width linear between stations. For a
 * closed body alone it is Munk's 2·Volume, whatever the reference point; a lift of its own is left out.
 * Elliptic sections: the crossflow sees the width only. The (k₂ − k₁) factor of thick bodies, which would
 * lower it by some 6 % (fineness 10) to 22 % (fineness 4), is left out: this errs to the safe side.
 * Source: Munk, NACA Report 184, 1924; strip form Multhopp, NACA TM 1036, 1942 (both from memory).
 * Throws if the stations do not run aft or a width is negative.
 */
export function fuselageMomentMm3PerRad(
  stations: readonly FuselageStation[],
  flow: readonly FlowStretch[] = FREE_FLOW,
): number {
  let sum = 0;
  stations.forEach((rear, k) => {
    if (!(rear.widthMm >= 0))
      throw new Error(`fuselage station ${k + 1}: width must not be negative, got ${rear.widthMm}`);
    const front = stations[k - 1];
    if (front === undefined) return;
    if (!(rear.stationMm >= front.stationMm)) {
      throw new Error(`fuselage station ${k + 1}: expected aft of ${front.stationMm}, got ${rear.stationMm}`);
    }
    for (const stretch of flow) sum += bayIntegral(front, rear, stretch);
  });
  return (Math.PI / 2) * sum;
}

/** ∫w²·factor dx over the part of a bay inside a stretch; Simpson's rule is exact for the cubic. */
function bayIntegral(front: FuselageStation, rear: FuselageStation, stretch: FlowStretch): number {
  const from = Math.max(front.stationMm, stretch.fromMm);
  const to = Math.min(rear.stationMm, stretch.toMm);
  if (!(to > from)) return 0;
  const at = (x: number): number => {
    const t = (x - front.stationMm) / (rear.stationMm - front.stationMm);
    const width = front.widthMm + (rear.widthMm - front.widthMm) * t;
    return width * width * factorAt(stretch, x);
  };
  return ((to - from) / 6) * (at(from) + 4 * at((from + to) / 2) + at(to));
}

function factorAt({ fromMm, toMm, fromFactor, toFactor }: FlowStretch, x: number): number {
  if (fromFactor === toFactor) return fromFactor;
  return fromFactor + ((toFactor - fromFactor) * (x - fromMm)) / (toMm - fromMm);
}
