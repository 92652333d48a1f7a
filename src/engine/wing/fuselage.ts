/** A section of the fuselage. Only the width enters its pitching moment. */
export interface FuselageStation {
  readonly stationMm: number;
  readonly widthMm: number;
  /** Height of the section; as tall as wide if left out. */
  readonly heightMm?: number;
  /** Of the section's middle; 0 if left out. */
  readonly waterlineMm?: number;
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
