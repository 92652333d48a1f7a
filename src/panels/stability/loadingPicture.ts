import type { StripLoad } from '../../engine/wing/spanLoading';

export interface LoadPoint {
  /** Buttline, mm. */
  readonly outMm: number;
  /** Local lift coefficient, and cl·c over the mean chord. */
  readonly cl: number;
  readonly load: number;
}

/** One surface's right half, root to tip, at an aircraft's lift coefficient of 1 that alpha alone makes. */
export interface LoadCurve {
  readonly surfaceId: string;
  readonly points: readonly LoadPoint[];
}

/** A surface that carries less than this share of the greatest load is a fin: it has no say here. */
const SHOWN_SHARE = 0.05;

/**
 * How the lift that angle of attack adds is spread along the span: every strip's slope over that of the
 * whole aircraft, `clAlphaPerRad`. Twist, incidence and the fuselage are not in it.
 */
export function loadCurves(strips: readonly StripLoad[], clAlphaPerRad: number): readonly LoadCurve[] {
  const bySurface = new Map<string, LoadPoint[]>();
  for (const { surfaceId, buttlineMm, clPerRad, loadPerRad } of strips) {
    const points = bySurface.get(surfaceId) ?? [];
    bySurface.set(surfaceId, points);
    points.push({ outMm: buttlineMm, cl: clPerRad / clAlphaPerRad, load: loadPerRad / clAlphaPerRad });
  }
  const greatest = (points: readonly LoadPoint[]) => Math.max(...points.map(({ load }) => Math.abs(load)));
  const most = Math.max(0, ...[...bySurface.values()].map(greatest));
  return [...bySurface]
    .filter(([, points]) => greatest(points) >= SHOWN_SHARE * most)
    .map(([surfaceId, points]) => ({ surfaceId, points }));
}

/** The strip that stalls first, were all sections alike: the greatest local cl. */
export function greatestCl(
  curves: readonly LoadCurve[],
): (LoadPoint & { readonly surfaceId: string }) | null {
  let greatest: (LoadPoint & { readonly surfaceId: string }) | null = null;
  for (const { surfaceId, points } of curves) {
    for (const point of points) {
      if (!greatest || point.cl > greatest.cl) greatest = { ...point, surfaceId };
    }
  }
  return greatest;
}
