import { ballastRange } from '../engine/balance/ballast';
import type { Vec3 } from '../engine/geometry/types';
import { type Balance, roomFor } from './balance';
import type { Item } from './edit';
import { pieces } from './pieces';
import type { Aircraft } from './types';

/** The least thing that brings every fuel state into the band. */
export type Remedy =
  | { readonly by: 'moving'; readonly item: Item; readonly fromMm: number; readonly toMm: number }
  | { readonly by: 'ballast'; readonly massG: number; readonly stationMm: number };

/** Ballast goes this far inside the end of the hull, mm. */
const INSIDE_END_MM = 30;

/** From the foremost to the aftmost station of the hulls; null without one. */
function hullStations(aircraft: Aircraft): { readonly noseMm: number; readonly tailMm: number } | null {
  let noseMm = Number.POSITIVE_INFINITY;
  let tailMm = Number.NEGATIVE_INFINITY;
  for (const { shape } of pieces(aircraft)) {
    if (shape.kind !== 'loft') continue;
    noseMm = Math.min(noseMm, shape.sections[0]?.xMm ?? noseMm);
    tailMm = Math.max(tailMm, shape.sections.at(-1)?.xMm ?? tailMm);
  }
  return noseMm < tailMm ? { noseMm, tailMm } : null;
}

/** Things made to be moved: useful mass first, then what carries nothing but itself. */
const MOVABLE = new Set(['energy', 'payload', 'radio', 'ballast', 'other']);

/**
 * What would bring the whole travel into the band: the shortest move of one unlocked part within the hull,
 * or, when no move does it, the least ballast at the end that helps. Null when neither does, or nothing is out.
 */
export function remedyFor(aircraft: Aircraft, balance: Balance, down: Vec3): Remedy | null {
  const { fit, band, travel } = balance;
  if (!fit || !band || fit.where === 'inside') return null;
  const hull = hullStations(aircraft);
  let best: { item: Item; toMm: number; byMm: number } | null = null;
  for (const item of aircraft.parts) {
    if (item.locked || !MOVABLE.has(item.role)) continue;
    const allowed = roomFor(aircraft, balance, item.id, down)?.allowed;
    if (!allowed) continue;
    const at = item.positionMm[0];
    const toMm = at < allowed.fromMm ? allowed.fromMm : allowed.toMm;
    if (hull && (toMm < hull.noseMm + INSIDE_END_MM || toMm > hull.tailMm - INSIDE_END_MM)) continue;
    const byMm = Math.abs(toMm - at);
    if (!best || byMm < best.byMm) best = { item, toMm, byMm };
  }
  if (best) return { by: 'moving', item: best.item, fromMm: best.item.positionMm[0], toMm: best.toMm };
  if (!hull) return null;
  const ends = [hull.noseMm + INSIDE_END_MM, hull.tailMm - INSIDE_END_MM];
  const spots = ends.flatMap((stationMm) => {
    const range = ballastRange(travel, band, stationMm);
    return range ? [{ by: 'ballast' as const, massG: range.leastG, stationMm }] : [];
  });
  return spots.sort((a, b) => a.massG - b.massG)[0] ?? null;
}
