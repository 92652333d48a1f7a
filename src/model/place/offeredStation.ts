import type { Stretch } from '../../engine/geometry/types';
import { aircraftExtent } from '../airframe/extent';
import type { Aircraft } from '../document/types';
import type { nearestRoom } from '../fit/roomAt';
import type { ItemZone } from './itemZone';

/** The stations between the ends of the aircraft, mm. */
export interface Aboard {
  readonly noseMm: number;
  readonly tailMm: number;
}

/** Shorter than this is no place to put anything, mm. */
export const LEAST_MM = 0.05;

/** The stretches that are allowed, free and aboard, fore to aft. */
export function freeAboard({ freeStations }: ItemZone, { noseMm, tailMm }: Aboard): Stretch[] {
  return freeStations
    .map(({ fromMm, toMm }) => ({ fromMm: Math.max(fromMm, noseMm), toMm: Math.min(toMm, tailMm) }))
    .filter(({ fromMm, toMm }) => toMm - fromMm >= LEAST_MM);
}

/**
 * The free station with the largest margin, mm, on a whole millimetre where one is free; null when there is none. The
 * least margin is concave along the station axis, so the nearest point of a stretch to the best of all is its own best.
 */
export function bestFreeStation(zone: ItemZone, aboard: Aboard): number | null {
  const { bestMm } = zone.station;
  if (bestMm === null) return null;
  let best: { atMm: number; marginMm: number } | null = null;
  for (const { fromMm, toMm } of freeAboard(zone, aboard)) {
    const there = Math.min(toMm, Math.max(fromMm, bestMm));
    const whole = Math.round(there);
    const inward = whole < fromMm ? whole + 1 : whole > toMm ? whole - 1 : whole;
    const atMm = inward >= fromMm && inward <= toMm ? inward : there;
    const { marginMm } = zone.marginAt(atMm, 0);
    if (!best || marginMm > best.marginMm) best = { atMm, marginMm };
  }
  return best?.atMm ?? null;
}

/** The stations between the ends of an aircraft as it stands, mm. */
export function aboardOf(aircraft: Aircraft): Aboard {
  const { minMm, maxMm } = aircraftExtent(aircraft);
  return { noseMm: minMm[0], tailMm: maxMm[0] };
}

/**
 * The station that an item is offered to be moved to, mm: the nearest to the largest margin of its zone at which it has
 * room in every load state, at its height and buttline. Null when there is none. What looks for room is handed in.
 */
export function offeredStation(
  aircraft: Aircraft,
  itemId: string,
  zone: ItemZone,
  roomNearest: typeof nearestRoom,
): number | null {
  const aboard = aboardOf(aircraft);
  const wanted = bestFreeStation(zone, aboard);
  return wanted === null ? null : roomNearest(aircraft, itemId, freeAboard(zone, aboard), wanted);
}
