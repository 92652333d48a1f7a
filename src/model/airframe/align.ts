import type { Vec3 } from '../../engine/geometry/types';
import { type Item, itemById, placeItem } from '../document/edit';
import { eachPairOnce, twinOf } from '../document/twins';
import type { Aircraft } from '../document/types';
import { itemExtent } from './extent';

/** What of an item's box a station is measured to, along x: the face that looks forward, its middle, the face that looks aft. */
export const FACES = ['front', 'middle', 'rear'] as const;
export type Face = (typeof FACES)[number];

/** The station of a face of a part or tank as it stands and is turned, mm aft of the datum. */
export function faceStation(item: Item, face: Face): number {
  const { minMm, maxMm } = itemExtent(item);
  switch (face) {
    case 'front':
      return minMm[0];
    case 'middle':
      return (minMm[0] + maxMm[0]) / 2;
    case 'rear':
      return maxMm[0];
  }
}

const along = ([x, y, z]: Vec3, axis: 0 | 1, by: number): Vec3 =>
  axis === 0 ? [x + by, y, z] : [x, y + by, z];

const shifted = (aircraft: Aircraft, item: Item, axis: 0 | 1, by: number): Aircraft =>
  Math.abs(by) < 1e-9 ? aircraft : placeItem(aircraft, item.id, along(item.positionMm, axis, by));

/** Moves a part or tank along x until a face of it is at a station, mm aft of the datum. */
export function placeFace(aircraft: Aircraft, id: string, face: Face, stationMm: number): Aircraft {
  const item = itemById(aircraft, id);
  return item ? shifted(aircraft, item, 0, stationMm - faceStation(item, face)) : aircraft;
}

const itemsOf = (aircraft: Aircraft, ids: readonly string[]): Item[] =>
  ids.flatMap((id) => itemById(aircraft, id) ?? []);

/** Moves parts and tanks so that a face of each is where that of `toId` is. What is locked stays. */
export function alignFaces(aircraft: Aircraft, ids: readonly string[], toId: string, face: Face): Aircraft {
  const to = itemById(aircraft, toId);
  if (!to) return aircraft;
  return itemsOf(aircraft, ids)
    .filter(({ id, locked }) => id !== toId && !locked)
    .reduce((now, { id }) => placeFace(now, id, face, faceStation(to, face)), aircraft);
}

/**
 * Moves parts and tanks sideways until the middle of each lies on the plane of symmetry. What is locked stays. A sentence
 * where both of a mirrored pair would come to stand in one place.
 */
export function alignCentred(aircraft: Aircraft, ids: readonly string[]): Aircraft | string {
  const items = itemsOf(aircraft, ids).filter(({ locked }) => !locked);
  const paired = items.find(({ id }) => twinOf(aircraft, id));
  if (paired) {
    return `“${paired.name}” is one of a mirrored pair: both would stand in one place. Break the pair first.`;
  }
  return items.reduce((now, item) => {
    const { minMm, maxMm } = itemExtent(item);
    return shifted(now, item, 1, -(minMm[1] + maxMm[1]) / 2);
  }, aircraft);
}

/**
 * Moves what stands between the foremost and the rearmost along x until all gaps between neighbours are the same; they
 * overlap by the same where there is no room. A mirrored pair is one of them. A sentence where that cannot be.
 */
export function distribute(aircraft: Aircraft, ids: readonly string[]): Aircraft | string {
  const items = itemsOf(aircraft, eachPairOnce(aircraft, ids)).sort(
    (a, b) => faceStation(a, 'middle') - faceStation(b, 'middle'),
  );
  const [first, last] = [items[0], items.at(-1)];
  if (!first || !last || items.length < 3) {
    const pairs = items.length < ids.length ? '; a mirrored pair counts as one' : '';
    return `Spacing evenly takes three or more parts or tanks${pairs}.`;
  }
  const held = items.slice(1, -1).find(({ locked }) => locked);
  if (held) return `“${held.name}” is locked where it is, between the others.`;
  const lengthMm = (item: Item) => faceStation(item, 'rear') - faceStation(item, 'front');
  const between = items.slice(1, -1);
  const freeMm =
    faceStation(last, 'front') -
    faceStation(first, 'rear') -
    between.reduce((sum, item) => sum + lengthMm(item), 0);
  const gapMm = freeMm / (items.length - 1);
  let atMm = faceStation(first, 'rear') + gapMm;
  let now = aircraft;
  for (const item of between) {
    now = placeFace(now, item.id, 'front', atMm);
    atMm += lengthMm(item) + gapMm;
  }
  return now;
}
