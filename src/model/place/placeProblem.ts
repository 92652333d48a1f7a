import type { Vec3 } from '../../engine/geometry/types';
import { centreRange } from '../../engine/place/regions';
import type {
  KeepApart,
  Lead,
  MovablePart,
  Obstacle,
  PlaceBox,
  PlaceOption,
  PlaceProblem,
} from '../../engine/place/types';
import { extentOf, itemExtent, orientedBox } from '../airframe/extent';
import { pieces } from '../airframe/pieces';
import { balanceAt } from '../balance/balance';
import type { Aircraft, Part } from '../document/types';
import { clashesOf } from '../fit/clash';
import { keepApartRules } from '../fit/keepApart';
import { type AircraftCase, aircraftCases } from './loadCases';
import { partBox, placeOptions } from './placeOptions';
import { defaultRule, type PlaceSettings, usualSpots } from './placeSettings';

/** The search's question for an aircraft, or why there is none, in a sentence. */
export type PlaceQuestion = { readonly problem: PlaceProblem } | { readonly fault: string };

/**
 * Reads a placement problem off the document: what may move and where, what is in the way, every load state and fuel state,
 * the band and the lateral tolerance. Everything is seen as a box square to the axes. What is closer than that allows now
 * without being a clash, such as a pack beside a round tank, may stay so close.
 */
export function placeProblem(aircraft: Aircraft, settings: PlaceSettings): PlaceQuestion {
  const { band } = balanceAt(aircraft, { fuelFraction: 1, down: settings.down });
  const limits = settings.band ?? band;
  if (!limits) return { fault: 'State a target band first: there is nothing to aim at.' };
  const cases = aircraftCases(aircraft, settings.down);
  if (cases.length === 0) return { fault: 'The aircraft weighs nothing.' };
  const moving = aircraft.parts.flatMap((part) => movable(aircraft, part, cases, settings));
  const moves = (id: string) => moving.some((part) => part.id === id);
  const obstacles = obstaclesOf(aircraft, moves);
  return {
    problem: {
      cases: cases.map((one) => without(one, moving, aircraft)),
      band: limits,
      lateralMm: aircraft.lateralToleranceMm > 0 ? aircraft.lateralToleranceMm : null,
      parts: moving,
      obstacles,
      spots: settings.spots ?? aircraft.ballastSpots ?? usualSpots(aircraft),
      clearanceMm: settings.clearanceMm ?? 1,
      apart: [
        ...(settings.keepApart === false ? [] : apartRules(aircraft, moves, settings.clearanceMm ?? 1)),
        ...asCloseAsNow(aircraft, moving, obstacles, settings.clearanceMm ?? 1),
      ],
      leads: settings.leads === false ? [] : leadsOf(aircraft, moves),
    },
  };
}

function movable(
  aircraft: Aircraft,
  part: Part,
  cases: readonly AircraftCase[],
  { rules = {}, mayTurn = [] }: PlaceSettings,
): MovablePart[] {
  const mayBeTurned = mayTurn.includes(part.id);
  const { centreMm } = partBox(part);
  const asked = rules[part.id];
  let options = placeOptions(aircraft, part, asked ?? defaultRule(aircraft, part), mayBeTurned);
  let now = optionAt(options, centreMm);
  if (!asked && !part.bayId && !part.locked && options.length > 0 && !now) {
    // Nobody asked for it to go into a bay, and it is in none: it keeps to where it is.
    options = placeOptions(aircraft, part, { by: 'rail', stations: 'hull' }, mayBeTurned);
    now = optionAt(options, centreMm);
  }
  if (options.length === 0) return [];
  return [
    {
      id: part.id,
      name: part.name,
      massesG: cases.map((one) => one.massOf(part.id)),
      options,
      present: { centreMm, optionId: now?.id ?? null },
    },
  ];
}

/** The option that a part stands in as it is, if any. */
const optionAt = (options: readonly PlaceOption[], centreMm: Vec3): PlaceOption | undefined =>
  options.find(
    (option) =>
      option.turnDeg === 0 &&
      ([0, 1, 2] as const).every((axis) => {
        const { lowMm, highMm } = centreRange(option, axis);
        return centreMm[axis] >= lowMm - 1e-6 && centreMm[axis] <= highMm + 1e-6;
      }),
  );

/** A load case less the parts that are to be placed. */
function without(one: AircraftCase, moving: readonly MovablePart[], aircraft: Aircraft) {
  let { massG } = one;
  const momentGmm: [number, number, number] = [...one.momentGmm];
  for (const { id } of moving) {
    const own = one.massOf(id);
    const { centreMm, cgFromCentreMm } = partBox(aircraft.parts.find((part) => part.id === id)!);
    massG -= own;
    for (const axis of [0, 1, 2] as const) momentGmm[axis] -= own * (centreMm[axis] + cgFromCentreMm[axis]);
  }
  return { id: one.id, name: one.name, massG: Math.max(0, massG), momentGmm };
}

/** Parts and tanks that stay, and blocks of the structure: formers, mounts. Hulls and wings are round what is inside. */
function obstaclesOf(aircraft: Aircraft, moves: (id: string) => boolean): Obstacle[] {
  const items = [...aircraft.parts.filter(({ id }) => !moves(id)), ...aircraft.tanks];
  const blocks = pieces(aircraft).filter(({ kind }) => kind === 'block');
  return [
    ...items.map((item) => ({ id: item.id, name: item.name, ...itemExtent(item) })),
    ...blocks.map(({ id, sourceId, pose, shape, mirrored }) => {
      const { minMm, maxMm } = extentOf(orientedBox({ ...pose, shape }));
      const box: PlaceBox = mirrored
        ? { minMm: [minMm[0], -maxMm[1], minMm[2]], maxMm: [maxMm[0], -minMm[1], maxMm[2]] }
        : { minMm, maxMm };
      return {
        id: `structure ${id}`,
        name: aircraft.structure.find((one) => one.id === sourceId)?.name ?? id,
        ...box,
      };
    }),
  ];
}

/**
 * Leave for pairs to be as close as they are: two parts down to touching, a part and a thing that stays even so far that
 * their boxes overlap, as long as they themselves do not clash.
 */
function asCloseAsNow(
  aircraft: Aircraft,
  moving: readonly MovablePart[],
  obstacles: readonly Obstacle[],
  gapMm: number,
): KeepApart[] {
  const boxes = moving.map(({ id }) => ({ id, ...partBox(aircraft.parts.find((part) => part.id === id)!) }));
  return boxes.flatMap((own, i) => {
    const others = [...boxes.slice(0, i), ...obstacles]
      .map((other) => ({ id: other.id, nowMm: distanceMm(own, other), touching: 'sizeMm' in other }))
      .filter(({ nowMm }) => nowMm < gapMm);
    if (others.length === 0) return [];
    const clashing = new Set(clashesOf(aircraft, own.id).map(({ otherId }) => otherId));
    return others
      .filter(({ id }) => !clashing.has(id.replace(/^structure /, '')))
      .map(({ id, nowMm, touching }) => ({
        id: `as close as ${own.id} and ${id}`,
        a: own.id,
        b: id,
        gapMm: touching ? Math.max(0, nowMm) : nowMm,
      }));
  });
}

/** How far two boxes are apart along the axis where they are farthest apart, mm; negative where they overlap. */
const distanceMm = (a: PlaceBox, b: PlaceBox): number =>
  Math.max(
    ...([0, 1, 2] as const).map((axis) =>
      Math.max(a.minMm[axis] - b.maxMm[axis], b.minMm[axis] - a.maxMm[axis]),
    ),
  );

/** The document's rules between roles or items, spelled out for pairs of which one at least may move. */
function apartRules(aircraft: Aircraft, moves: (id: string) => boolean, clearanceMm: number): KeepApart[] {
  const items = [...aircraft.parts, ...aircraft.tanks];
  const meant = (word: string) =>
    items.some(({ id }) => id === word)
      ? items.filter(({ id }) => id === word)
      : items.filter((item) => 'role' in item && item.role === word);
  return keepApartRules(aircraft).flatMap(({ between, and, atLeastMm }, index) =>
    meant(between).flatMap((a) =>
      meant(and).flatMap((b) =>
        a.id !== b.id && (moves(a.id) || moves(b.id))
          ? [{ id: `rule ${index}`, a: a.id, b: b.id, gapMm: Math.max(atLeastMm, clearanceMm) }]
          : [],
      ),
    ),
  );
}

/** Leads with a stated length, measured along the axes; one that reaches now by a shorter way is not called too short. */
function leadsOf(aircraft: Aircraft, moves: (id: string) => boolean): Lead[] {
  const items = [...aircraft.parts, ...aircraft.tanks];
  return (aircraft.leads ?? []).flatMap(({ id, name, from, to, lengthMm, waypointsMm }) => {
    const [a, b] = [from, to].map((end) => items.find((item) => item.id === end));
    if (!a || !b || lengthMm === undefined || waypointsMm.length > 0 || !(moves(from) || moves(to)))
      return [];
    const middle = (item: typeof a) => {
      const { minMm, maxMm } = itemExtent(item);
      return [0, 1, 2].map((axis) => (minMm[axis]! + maxMm[axis]!) / 2);
    };
    const [p, q] = [middle(a), middle(b)];
    const nowMm = p.reduce((sum, mm, axis) => sum + Math.abs(mm - q[axis]!), 0);
    const straightMm = Math.hypot(...p.map((mm, axis) => mm - q[axis]!));
    return [{ id, name, from, to, lengthMm: straightMm <= lengthMm ? Math.max(lengthMm, nowMm) : lengthMm }];
  });
}
