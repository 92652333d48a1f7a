import { perObjects } from '../../engine/memory/memory';
import { hullsAround, itemSolid } from '../airframe/solids';
import { type Item, itemById } from '../document/edit';
import type { Aircraft } from '../document/types';
import { clearanceTest } from '../fit/entryPath';
import { type Entry, entryThroughAny } from '../fit/entryThroughAny';
import { type FitProblem, fitRefusals as wholeFitRefusals } from '../fit/wholeFit';

/** Why an aircraft as arranged cannot be built or flown so. */
export interface Refusal {
  readonly what: 'fit' | 'way in' | 'balance';
  /** What it is about, by id in the file: parts, tanks, the two ends of a lead. */
  readonly ids: readonly string[];
  readonly sentence: string;
}

/**
 * What the project's own fit says against an aircraft in any load state and did not say before, or not so badly. Ways in
 * are asked for apart, since they take long.
 */
export const fitRefusals = (before: Aircraft, after: Aircraft): Refusal[] =>
  wholeFitRefusals(before, after).map((problem) => ({
    what: 'fit',
    ids: problem.parties.flatMap(({ id }) => endsOf(after, id)),
    sentence: sentenceOf(problem),
  }));

/** Of a lead the two things that it joins, of anything else itself. */
function endsOf({ leads = [] }: Aircraft, id: string): readonly string[] {
  const lead = leads.find((one) => one.id === id);
  return lead ? [lead.from, lead.to] : [id];
}

function sentenceOf({ kind, parties: [first, second], byMm }: FitProblem): string {
  const by = `${(Math.ceil(byMm * 10) / 10).toFixed(1)} mm`;
  const other = second?.name ?? 'something else';
  switch (kind) {
    case 'overlap':
      return `${first.name} runs ${by} into ${other}.`;
    case 'within':
      return `${first.name} lies inside ${other}.`;
    case 'through':
      return `${first.name} goes ${by} through ${other}.`;
    case 'outside':
      return `${first.name} stands in no hull and no wing.`;
    case 'outOfBay':
      return `${first.name} reaches ${by} out of ${other}.`;
    case 'shortLead':
      return `${first.name} is ${by} short.`;
    case 'tooNear':
      return `${first.name} is ${by} too near ${other}.`;
    case 'thinWall':
      return `${first.name} leaves the wall of ${other} ${by} too thin.`;
  }
}

/**
 * What had a way in with everything else mounted and has none any more: of what stands in the hulls, and of all that has
 * moved. Ballast that is new goes in before any other part.
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
  const ofMoved = all
    .filter(({ id }) => moved.has(id))
    .flatMap((item) => lostWay(before, after, item, moved));
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
  const now = was ? wayIn(after, item.id) : wayInFirst(after, item);
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

/** The way in before any other part is mounted. */
const wayInFirst = (aircraft: Aircraft, item: Item) =>
  entryThroughAny(aircraft, item.id, {
    without: new Set(aircraft.parts.filter((one) => one !== item).map(({ id }) => id)),
  });

/** The way in of one item, searched once for an aircraft. */
const wayIn = perObjects((aircraft: Aircraft, itemId: string) => entryThroughAny(aircraft, itemId));
