import { ballastRange } from '../../engine/balance/ballast';
import { allowedStations, type Band } from '../../engine/balance/band';
import type { Vec3 } from '../../engine/geometry/types';
import { itemExtent } from '../airframe/extent';
import { pieces } from '../airframe/pieces';
import { type Balance, movableAs } from '../balance/balance';
import { type Item, placeItem } from '../document/edit';
import type { Aircraft } from '../document/types';
import { clashesOf } from '../fit/clash';

/** The least thing that brings every fuel state into the band. */
export type Remedy =
  | { readonly by: 'moving'; readonly item: Item; readonly fromMm: number; readonly toMm: number }
  | { readonly by: 'ballast'; readonly massG: number; readonly stationMm: number };

/** Ballast goes this far inside the end of the hull, mm. */
const INSIDE_END_MM = 30;

/** A move longer than this share of the hull is a new layout, not a remedy. */
const LONGEST_MOVE = 0.25;

interface HullStations {
  readonly noseMm: number;
  readonly tailMm: number;
}

/** From the foremost to the aftmost station of the hulls; null without one. */
function hullStations(aircraft: Aircraft): HullStations | null {
  let noseMm = Number.POSITIVE_INFINITY;
  let tailMm = Number.NEGATIVE_INFINITY;
  for (const { kind, shape } of pieces(aircraft)) {
    if (kind !== 'hull' || shape.kind !== 'loft') continue;
    noseMm = Math.min(noseMm, shape.sections[0]?.xMm ?? noseMm);
    tailMm = Math.max(tailMm, shape.sections.at(-1)?.xMm ?? tailMm);
  }
  return noseMm < tailMm ? { noseMm, tailMm } : null;
}

/** Things made to be moved: useful mass first, then what carries nothing but itself. */
const MOVABLE = new Set(['energy', 'payload', 'radio', 'ballast', 'other']);

interface Move {
  readonly item: Item;
  readonly toMm: number;
}

const byMm = ({ item, toMm }: Move) => Math.abs(toMm - item.positionMm[0]);

/** Every move of one unlocked part that would just do, the shortest first, whatever may stand in its way. */
function moves(aircraft: Aircraft, balance: Balance, band: Band): Move[] {
  const found: Move[] = [];
  for (const item of aircraft.parts) {
    if (item.locked || !MOVABLE.has(item.role)) continue;
    const movable = movableAs(aircraft, balance, item.id);
    const allowed = movable && allowedStations(balance.travel, movable, band);
    if (!allowed) continue;
    found.push({ item, toMm: item.positionMm[0] < allowed.fromMm ? allowed.fromMm : allowed.toMm });
  }
  return found.sort((a, b) => byMm(a) - byMm(b));
}

/** Whether the part would stand clear of every other part and tank there, and not reach past the hull's ends. */
function fits(aircraft: Aircraft, { item, toMm }: Move, hull: HullStations | null): boolean {
  const [, buttlineMm, waterlineMm] = item.positionMm;
  const positionMm: Vec3 = [toMm, buttlineMm, waterlineMm];
  const { minMm, maxMm } = itemExtent({ ...item, positionMm });
  if (hull && (minMm[0] < hull.noseMm || maxMm[0] > hull.tailMm)) return false;
  if (hull && Math.abs(toMm - item.positionMm[0]) > LONGEST_MOVE * (hull.tailMm - hull.noseMm)) return false;
  return clashesOf(placeItem(aircraft, item.id, positionMm), item.id).length === 0;
}

/**
 * What would bring the whole travel into the band: the shortest move of one unlocked part to a place that is
 * free, within the hull and no more than a quarter of its length away, or, when no move does it, the least ballast at the end that helps. Null
 * when neither does, or nothing is out. A place counts as taken by bounding boxes, so rather too often.
 */
export function remedyFor(aircraft: Aircraft, balance: Balance): Remedy | null {
  const { fit, band, travel } = balance;
  if (!fit || !band || fit.where === 'inside') return null;
  const hull = hullStations(aircraft);
  const move = moves(aircraft, balance, band).find((each) => fits(aircraft, each, hull));
  if (move) return { by: 'moving', item: move.item, fromMm: move.item.positionMm[0], toMm: move.toMm };
  if (!hull) return null;
  const ends = [hull.noseMm + INSIDE_END_MM, hull.tailMm - INSIDE_END_MM];
  const spots = ends.flatMap((stationMm) => {
    const range = ballastRange(travel, band, stationMm);
    return range ? [{ by: 'ballast' as const, massG: range.leastG, stationMm }] : [];
  });
  return spots.sort((a, b) => a.massG - b.massG)[0] ?? null;
}
