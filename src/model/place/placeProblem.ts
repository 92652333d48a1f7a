import { optionAt } from '../../engine/place/optionAt';
import type { MovablePart, PlaceProblem } from '../../engine/place/types';
import { itemExtent } from '../airframe/extent';
import { balanceAt } from '../balance/balance';
import type { Item } from '../document/edit';
import { itemById } from '../document/edit';
import { listed } from '../document/inWords';
import type { Aircraft } from '../document/types';
import { ballastFreeZones, ballastRules, keptFreeNotes } from './ballastFree';
import { emptiedSpots, sizedSpots, usualSpots } from './ballastPlaces';
import { bayExcessWords } from './bayFloor';
import { type AircraftCase, aircraftCases } from './loadCases';
import { apartRules, asCloseAsNow, obstaclesOf } from './obstacles';
import { leadPull, movingLeads } from './placeLeads';
import { bayBox, itsPlace, partBox, placeOptions } from './placeOptions';
import { defaultRule, type PlaceSettings } from './placeSettings';
import { spotRoom } from './spotRoom';

/** The search's question for an aircraft, or why there is none, in a sentence. */
export type PlaceQuestion =
  | {
      readonly problem: PlaceProblem;
      /** What is not as it was asked, in sentences: parts without room to move, bays larger than the hull. */
      readonly notes: readonly string[];
    }
  | { readonly fault: string };

const CLEARANCE_MM = 1;
const CONTRADICTION = 'The limits and the margin cannot both be kept: change one of them.';

/**
 * Reads a placement problem off the document: what may move and where, what is in the way, every load state that flies at
 * every fuel state, the band and the lateral tolerance, leads that hang on what moves. Everything is seen as a box square to
 * the axes. What is closer than that allows now without being a clash may stay so close.
 */
export function placeProblem(aircraft: Aircraft, settings: PlaceSettings): PlaceQuestion {
  const { down, alsoDown = [], clearanceMm = CLEARANCE_MM } = settings;
  const { band } = balanceAt(aircraft, { fuelFraction: 1, down });
  const limits = settings.band ?? band;
  if (!limits) return { fault: 'State a target band first: there is nothing to aim at.' };
  if (!(limits.forwardMm <= limits.aftMm)) return { fault: CONTRADICTION };
  const cases = aircraftCases(aircraft, [down, ...alsoDown]);
  if (cases.length === 0) return { fault: 'The aircraft weighs nothing.' };
  const moving = [...aircraft.parts, ...aircraft.tanks].flatMap((item) =>
    movable(aircraft, item, cases, settings),
  );
  const moves = (id: string) => moving.some((part) => part.id === id);
  const emptied = settings.emptied ?? [];
  // The room of ballast that is emptied is kept for what goes back.
  const obstacles = [
    ...obstaclesOf(aircraft, moves),
    ...emptied.map((part) => ({ id: part.id, name: part.name, ...itemExtent(part) })),
  ];
  const leads = movingLeads(aircraft, moves, cases, settings.leads !== false);
  const room = spotRoom(
    aircraft,
    settings.spots ? [] : sizedSpots(aircraft, aircraft.ballastSpots ?? usualSpots(aircraft, emptied)),
  );
  const free = ballastFreeZones(aircraft);
  const spots = settings.spots ?? [...emptiedSpots(emptied, free), ...room.spots];
  return {
    problem: {
      cases: cases.map((load) =>
        without(
          aircraft,
          load,
          moving,
          leads.map(({ id }) => id),
        ),
      ),
      band: limits,
      lateralMm: aircraft.lateralToleranceMm > 0 ? aircraft.lateralToleranceMm : null,
      parts: moving,
      obstacles,
      spots,
      clearanceMm,
      apart: [
        ...(settings.keepApart === false ? [] : apartRules(aircraft, moves)),
        ...asCloseAsNow(aircraft, moving, obstacles, clearanceMm),
        ...ballastRules(aircraft, spots),
      ],
      leads,
      noBallast: free,
      wantedMarginMm: settings.wantedMarginMm ?? 0,
    },
    notes: [...notesFor(aircraft, settings, moves), ...room.notes, ...keptFreeNotes(spots, free)],
  };
}

/** An item that may move, with where it may go; its place now is always among that. Nothing where it has no other. */
function movable(
  aircraft: Aircraft,
  item: Item,
  cases: readonly AircraftCase[],
  { rules = {} }: PlaceSettings,
): MovablePart[] {
  // The search places each item by itself, which would part a mirrored pair.
  if (item.twinId !== undefined) return [];
  const { centreMm } = partBox(item);
  const asked = rules[item.id];
  let options = placeOptions(aircraft, item, asked ?? defaultRule(aircraft, item));
  const isFree =
    !asked && (aircraft.bays ?? []).length > 0 && !('bayId' in item && item.bayId) && !item.locked;
  if (isFree && options.length > 0 && !optionAt(options, centreMm)) {
    // Nobody asked for it to go into a bay, and it is in none: it may also slide from where it is.
    options = [...options, ...placeOptions(aircraft, item, { by: 'rail', stations: 'hull' })];
  }
  if (options.length === 0) return [];
  const now = optionAt(options, centreMm);
  const all = now ? options : [itsPlace(aircraft, item), ...options];
  return [
    {
      id: item.id,
      name: item.name,
      massesG: cases.map((load) => load.massOf(item.id)),
      options: all,
      present: { centreMm, optionId: (now ?? all[0]!).id },
    },
  ];
}

/** A load case less what is to be placed and the leads that hang on it. */
function without(
  aircraft: Aircraft,
  state: AircraftCase,
  moving: readonly MovablePart[],
  leadIds: readonly string[],
) {
  let { massG } = state;
  const momentGmm: [number, number, number] = [...state.momentGmm];
  for (const { id } of moving) {
    const itemG = state.massOf(id);
    const { centreMm, cgFromCentreMm } = partBox(itemById(aircraft, id)!);
    massG -= itemG;
    for (const axis of [0, 1, 2] as const) momentGmm[axis] -= itemG * (centreMm[axis] + cgFromCentreMm[axis]);
  }
  for (const id of leadIds) {
    if (state.massOf(id) === 0) continue;
    const pull = leadPull(aircraft, id);
    massG -= pull.massG;
    for (const axis of [0, 1, 2] as const) momentGmm[axis] -= pull.momentGmm[axis];
  }
  return { id: state.id, name: state.name, massG: Math.max(0, massG), momentGmm };
}

function notesFor(
  aircraft: Aircraft,
  { rules = {} }: PlaceSettings,
  moves: (id: string) => boolean,
): string[] {
  const items: readonly Item[] = [...aircraft.parts, ...aircraft.tanks];
  const stuck = items.filter(
    (item) =>
      item.twinId === undefined &&
      (rules[item.id] ?? defaultRule(aircraft, item)).by !== 'stay' &&
      !moves(item.id),
  );
  const names = stuck.map(({ name }) => name);
  const excess = [
    ...pairNotes(aircraft, items, rules),
    ...(aircraft.bays ?? []).flatMap((bay) => bayExcessWords(aircraft, bay, bayBox(bay)) ?? []),
  ];
  if (names.length === 0) return excess;
  const list = names.length > 1 ? `${names.slice(0, -1).join(', ')} and ${names.at(-1)}` : names[0];
  const stays = names.length > 1 ? 'stay where they are' : 'stays where it is';
  return [
    `${list} ${stays}: no room in a hull is known around ${names.length > 1 ? 'them' : 'it'}.`,
    ...excess,
  ];
}

/** Of mirrored pairs that would else have been moved, or were asked to be: that they are not, and why. */
function pairNotes(
  aircraft: Aircraft,
  items: readonly Item[],
  rules: NonNullable<PlaceSettings['rules']>,
): string[] {
  const names = items.flatMap(({ twinId, ...alone }) => {
    const rule = rules[alone.id] ?? defaultRule(aircraft, alone as Item);
    return twinId !== undefined && rule.by !== 'stay' ? [alone.name] : [];
  });
  return names.length > 0
    ? [
        `${listed(names)} ${names.length > 1 ? 'stay where they are' : 'stays where it is'}: the search places each part by itself and would part a mirrored pair. Move a pair by hand, or break it first.`,
      ]
    : [];
}
