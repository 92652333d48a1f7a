import { leadStates } from '../airframe/leads';
import { perAircraft } from '../airframe/perAircraft';
import { inLoadState } from '../airframe/loadSwitches';
import { hullsAround, itemSolid } from '../airframe/solids';
import { type Item, itemById } from '../document/edit';
import type { Aircraft } from '../document/types';
import { bayFault } from '../fit/bays';
import { clashesIn, clearances } from '../fit/clearances';
import { clearanceTest } from '../fit/entryPath';
import { type Entry, entryThroughAny } from '../fit/entryThroughAny';
import { keepApartFaults } from '../fit/keepApart';
import { flyingPositions } from './loadCases';

/** Why an aircraft as arranged cannot be built or flown so. */
export interface Refusal {
  readonly what: 'clash' | 'hull' | 'apart' | 'lead' | 'bay' | 'way in' | 'balance';
  /** What it is about, by id in the file: parts, tanks, the two ends of a lead. */
  readonly ids: readonly string[];
  readonly sentence: string;
}

/** Worse by less than this is not worse, mm. */
const SAME_MM = 0.01;

interface Measured extends Refusal {
  readonly byMm: number;
}

/**
 * What the project's own fit says against an aircraft in any load state that flies and did not say before, or not so badly:
 * clashes, the hull, distances, leads, bays. Ways in are asked for apart, since they take long.
 */
export function fitRefusals(before: Aircraft, after: Aircraft): Refusal[] {
  const old = faultsIn(before);
  return [...faultsIn(after)]
    .filter(([key, { byMm }]) => byMm > (old.get(key)?.byMm ?? 0) + SAME_MM)
    .map(([, { what, ids, sentence }]) => ({ what, ids, sentence }));
}

const byAircraft = new WeakMap<Aircraft, ReadonlyMap<string, Measured>>();

/** Everything wrong with the fit in any load state that flies, the worst of each. */
function faultsIn(aircraft: Aircraft): ReadonlyMap<string, Measured> {
  const known = byAircraft.get(aircraft);
  if (known) return known;
  const found = new Map<string, Measured>();
  const tell = (key: string, fault: Measured) => {
    if (fault.byMm > (found.get(key)?.byMm ?? 0)) found.set(key, fault);
  };
  for (const positions of flyingPositions(aircraft)) {
    const state = inLoadState(aircraft, positions);
    for (const item of [...state.parts, ...state.tanks]) tellClashes(state, item, tell);
    for (const { aId, bId, shortByMm, sentence } of keepApartFaults(state)) {
      tell(`apart ${[aId, bId].sort().join(' ')}`, {
        what: 'apart',
        ids: [aId, bId],
        byMm: shortByMm,
        sentence,
      });
    }
    for (const { id, slackMm, sentence } of leadStates(state)) {
      const lead = state.leads?.find((one) => one.id === id);
      if (lead) tell(`lead ${id}`, { what: 'lead', ids: [lead.from, lead.to], byMm: -slackMm, sentence });
    }
  }
  byAircraft.set(aircraft, found);
  return found;
}

function tellClashes(state: Aircraft, item: Item, tell: (key: string, fault: Measured) => void): void {
  for (const { what, id, name, distanceMm } of clashesIn(clearances(state, item.id))) {
    if (what === 'hull') {
      const sentence = `${item.name} goes ${(-distanceMm).toFixed(1)} mm through ${name}.`;
      tell(`hull ${item.id}`, { what: 'hull', ids: [item.id], byMm: -distanceMm, sentence });
      continue;
    }
    const sentence = `${item.name} runs into ${name}.`;
    tell(`clash ${[item.id, id].sort().join(' ')}`, {
      what: 'clash',
      ids: [item.id, id],
      byMm: -distanceMm,
      sentence,
    });
  }
  if (!('role' in item)) return;
  const bay = bayFault(state, item);
  if (bay) tell(`bay ${item.id}`, { what: 'bay', ids: [item.id], byMm: bay.overMm, sentence: bay.sentence });
}

/**
 * What had a way in with everything else mounted and has none any more: of what stands in the hulls, and of all that has
 * moved. Ballast that is new must go in like anything else.
 */
export function lostWaysIn(before: Aircraft, after: Aircraft): Refusal[] {
  if ((after.hatches ?? []).length === 0) return [];
  const all: readonly Item[] = [...after.parts, ...after.tanks];
  const stands = (item: Item) => {
    const was = itemById(before, item.id);
    return was?.yawDeg === item.yawDeg && was.positionMm.every((mm, axis) => mm === item.positionMm[axis]);
  };
  const moved = new Set(all.filter((item) => !stands(item)).map(({ id }) => id));
  if (moved.size === 0) return [];
  const ofMoved = all.filter(({ id }) => moved.has(id)).flatMap((item) => lostWay(before, after, item, moved));
  if (ofMoved.length > 0) return ofMoved;
  return all
    .filter((item) => !moved.has(item.id) && hullsAround(after, itemSolid(item)).length > 0)
    .flatMap((item) => lostWay(before, after, item, moved));
}

function lostWay(before: Aircraft, after: Aircraft, item: Item, moved: ReadonlySet<string>): Refusal[] {
  const was = itemById(before, item.id) ? wayIn(before, item.id) : null;
  if (was && !was.found) return [];
  // What has not moved goes in as it did, as long as nothing has come in its way.
  if (was?.found && !moved.has(item.id) && isStillClear(after, item, was)) return [];
  const now = wayIn(after, item.id);
  if (!now || now.found) return [];
  const ids = moved.has(item.id) ? [item.id] : now.blockedByIds.filter((id) => moved.has(id));
  return [{ what: 'way in', ids: ids.length > 0 ? ids : [item.id], sentence: now.sentence }];
}

function isStillClear(after: Aircraft, item: Item, was: Extract<Entry, { found: true }>): boolean {
  const hatch = after.hatches?.find(({ id }) => id === was.hatchId);
  if (!hatch) return false;
  const test = clearanceTest(after, item, hatch);
  return was.poses.every((pose) => test(pose) === null);
}

/** The way in of one item, searched once for an aircraft. */
const wayIn = perAircraft((aircraft, itemId) => entryThroughAny(aircraft, itemId));
