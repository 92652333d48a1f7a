import { pointFromAircraft } from '../../engine/geometry/rotation';
import { sectionBetween } from '../../engine/mass/solids/loft';
import { hulls, type NamedHull } from '../airframe/solids';
import type { Aircraft } from '../document/types';

/** A stretch of a line, mm. */
export interface Span {
  readonly fromMm: number;
  readonly toMm: number;
}

/** A rectangle seen from above that a box of one height may move in, inside a hull: stations and buttlines, mm. */
export interface HullRoom {
  readonly stationMm: Span;
  readonly buttlineMm: Span;
}

/** What the room is asked for: how long, wide and high up the box is, and where its room ends besides, mm. */
export interface RoomAsk {
  readonly lengthMm: number;
  readonly widthMm: number;
  readonly waterlineMm: Span;
  readonly within: HullRoom;
}

/** The hull is looked at every so many mm, and a little air is left to its inner face. */
const STEP_MM = 2;
const AIR_MM = 0.3;
/** Rooms that differ by less are one, mm. */
const ALIKE_MM = 3;

/**
 * Where a box can move along and across in one hull: at most two rectangles, the longest that is just wide enough and the
 * widest, each inside the hull's inner face over the height of the box. Sections are taken as rounded rectangles a skin
 * smaller than the outside.
 */
export function hullRooms(hull: NamedHull, ask: RoomAsk): HullRoom[] {
  const { within, widthMm, lengthMm } = ask;
  const stretch = cut(betweenEnds(hull), within.stationMm);
  if (!stretch) return [];
  const { fromMm, toMm } = stretch;
  const count = Math.max(1, Math.ceil((toMm - fromMm) / STEP_MM));
  const cuts = Array.from({ length: count + 1 }, (_, i) => {
    const x = fromMm + ((toMm - fromMm) * i) / count;
    return { x, across: cut(acrossAt(hull, x, ask.waterlineMm), within.buttlineMm) };
  });
  const widest = Math.max(0, ...cuts.map(({ across }) => (across ? across.toMm - across.fromMm : 0)));
  if (widest < widthMm) return [];
  const rooms: HullRoom[] = [];
  for (const share of [0, 0.95]) {
    const room = longestRun(cuts, widthMm + share * (widest - widthMm), ask);
    if (!room || room.stationMm.toMm - room.stationMm.fromMm < lengthMm) continue;
    if (!rooms.some((other) => alike(other, room))) rooms.push(room);
  }
  return rooms;
}

/** The rooms in every hull of the aircraft. */
export const roomsInHulls = (aircraft: Aircraft, ask: RoomAsk): HullRoom[] =>
  hulls(aircraft).flatMap((hull) => hullRooms(hull, ask));

/** The stations from end to end of a hull, mm. */
export function hullStations({ shape: { sections }, pose }: NamedHull): Span {
  return {
    fromMm: pose.positionMm[0] + (sections[0]?.xMm ?? 0),
    toMm: pose.positionMm[0] + (sections.at(-1)?.xMm ?? 0),
  };
}

/** The same inside the walls that close its ends. */
function betweenEnds(hull: NamedHull): Span {
  const { fromMm, toMm } = hullStations(hull);
  const wallMm = (isOpen: boolean) => (isOpen ? 0 : hull.skinMm + AIR_MM);
  return { fromMm: fromMm + wallMm(hull.open.front), toMm: toMm - wallMm(hull.open.rear) };
}

/** How far across the inner face reaches at a station over a height, aircraft frame; null where the height leaves it. */
export function acrossAt(
  { shape: { sections }, pose, skinMm }: NamedHull,
  stationMm: number,
  height: Span,
): Span | null {
  const [x] = pointFromAircraft(pose, [stationMm, 0, 0]);
  const next = sections.findIndex((section) => section.xMm >= x);
  const [a, b] = [sections[Math.max(0, next - 1)], sections[next]];
  if (next < 0 || !a || !b) return null;
  const section = next === 0 ? a : sectionBetween(a, b, (x - a.xMm) / (b.xMm - a.xMm));
  const wallMm = skinMm + AIR_MM;
  const half = { y: section.widthMm / 2 - wallMm, z: section.heightMm / 2 - wallMm };
  if (half.y <= 0 || half.z <= 0) return null;
  const middleMm = pose.positionMm[1] + section.centreYMm;
  const reach = [height.fromMm, height.toMm].map((z) => {
    const v = Math.abs(z - pose.positionMm[2] - section.centreZMm) / half.z;
    if (v > 1) return -1;
    const over = v - (1 - section.roundness);
    if (over <= 0) return 1;
    return (
      1 - section.roundness + section.roundness * Math.sqrt(Math.max(0, 1 - (over / section.roundness) ** 2))
    );
  });
  const share = Math.min(...reach);
  return share < 0 ? null : { fromMm: middleMm - share * half.y, toMm: middleMm + share * half.y };
}

function longestRun(
  cuts: readonly { readonly x: number; readonly across: Span | null }[],
  wideMm: number,
  { widthMm }: RoomAsk,
): HullRoom | null {
  let best: HullRoom | null = null;
  let run: { x: number; across: Span }[] = [];
  const close = () => {
    const [first, last] = [run[0], run.at(-1)];
    if (first && last) {
      const buttlineMm = {
        fromMm: Math.max(...run.map(({ across }) => across.fromMm)),
        toMm: Math.min(...run.map(({ across }) => across.toMm)),
      };
      const room: HullRoom = { stationMm: { fromMm: first.x, toMm: last.x }, buttlineMm };
      const isWide = buttlineMm.toMm - buttlineMm.fromMm >= widthMm;
      if (isWide && (!best || long(room) > long(best))) best = room;
    }
    run = [];
  };
  for (const { x, across } of cuts) {
    if (across && across.toMm - across.fromMm >= wideMm) run.push({ x, across });
    else close();
  }
  close();
  return best;
}

const long = ({ stationMm }: HullRoom) => stationMm.toMm - stationMm.fromMm;

function cut(a: Span | null, b: Span): Span | null {
  if (!a) return null;
  const [fromMm, toMm] = [Math.max(a.fromMm, b.fromMm), Math.min(a.toMm, b.toMm)];
  return toMm > fromMm ? { fromMm, toMm } : null;
}

const alike = (a: HullRoom, b: HullRoom): boolean =>
  ([a.stationMm, a.buttlineMm] as const).every((span, i) => {
    const other = [b.stationMm, b.buttlineMm][i]!;
    return Math.abs(span.fromMm - other.fromMm) < ALIKE_MM && Math.abs(span.toMm - other.toMm) < ALIKE_MM;
  });
