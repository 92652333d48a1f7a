import type { Size } from './paper';

/** Neighbouring sheets show so much of the same, to be laid on each other, mm. */
export const OVERLAP_MM = 10;

/** One sheet of what is larger than a page: the window that it shows, mm from the top left corner of the whole. */
export interface Tile {
  readonly row: number;
  readonly column: number;
  readonly leftMm: number;
  readonly topMm: number;
  readonly wideMm: number;
  readonly highMm: number;
}

/** Cuts a sheet into tiles that fit a room, with an overlap. One tile where all of it fits. */
export function tilesOf(whole: Size, room: Size): readonly Tile[] {
  const across = stretches(whole.wideMm, room.wideMm);
  const down = stretches(whole.highMm, room.highMm);
  return down.flatMap(([topMm, highMm], row) =>
    across.map(([leftMm, wideMm], column) => ({ row, column, leftMm, topMm, wideMm, highMm })),
  );
}

function stretches(lengthMm: number, roomMm: number): readonly (readonly [from: number, long: number])[] {
  if (!(lengthMm > roomMm)) return [[0, lengthMm]];
  if (!(roomMm > 2 * OVERLAP_MM)) throw new RangeError(`A tile of ${roomMm} mm has no room for its overlap.`);
  const step = roomMm - OVERLAP_MM;
  const count = Math.ceil((lengthMm - OVERLAP_MM) / step - 1e-9);
  return Array.from({ length: count }, (_, at) => [at * step, Math.min(roomMm, lengthMm - at * step)]);
}
