import type { Loaded } from './bestLoad';

/** The least and greatest coordinate along a heading that the liquid of a tank can have, mm. */
export type Reach = readonly [leastMm: number, mostMm: number];

/** How far a mass stands out beyond λ along the heading, N − λ·M, g·mm. */
export const beyond = ({ massG, momentGmm }: Loaded, lambdaMm: number): number =>
  momentGmm - lambdaMm * massG;

/**
 * The most that N − λ·M of all liquid can be at any moment between two of a burn, g·mm. What a tank gives between them is
 * a body somewhere within its reach, so its N − λ·M is held below two lines in the amount drawn, one from either end; the
 * tanks' tops are added as if they came together. `fuller` and `emptier` hold the same tanks as `reaches`.
 */
export function mostBetween(
  fuller: readonly Loaded[],
  emptier: readonly Loaded[],
  reaches: readonly Reach[],
  lambdaMm: number,
): number {
  let most = 0;
  for (let k = 0; k < reaches.length; k += 1) {
    const [full, empty, [leastMm, mostMm]] = [fuller[k]!, emptier[k]!, reaches[k]!];
    most += tankTop(
      beyond(full, lambdaMm),
      beyond(empty, lambdaMm),
      full.massG - empty.massG,
      mostMm - lambdaMm,
      lambdaMm - leastMm,
    );
  }
  return most;
}

/**
 * The most that one tank's N − λ·M can be between two moments, g·mm.
 * @param high N − λ·M at the fuller moment, g·mm
 * @param low the same at the emptier one
 * @param drawnG what it gives in between
 * @param rise how far its reach goes beyond λ, mm
 * @param fall how far its reach goes the other way, mm
 */
export function tankTop(high: number, low: number, drawnG: number, rise: number, fall: number): number {
  if (!(drawnG > 0) || rise <= 0) return Math.max(high, low);
  // With all its reach beyond λ a tank only loses as it gives; else the two lines meet where so much is left of the draw.
  const leftG = fall <= 0 ? 0 : Math.min(drawnG, Math.max(0, (high - low + fall * drawnG) / (rise + fall)));
  return Math.max(high, low + rise * leftG);
}
