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

/** Of a lead the two items that it joins, of anything else itself. */
function endsOf({ leads = [] }: Aircraft, id: string): readonly string[] {
  const lead = leads.find((lead) => lead.id === id);
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
    case 'keptFree':
      return `${first.name} reaches ${by} into ${other}, where no ballast may be.`;
  }
}

/** Poses looked at for a way in while a search is under way: they find no other ways, but fewer of them. */
const QUICK_POSES = 3000;

/**
 * What had a way in with everything else mounted and has none any more: of what stands in the hulls, and of all that has
 * moved. Ballast that is new goes in before any other part. Tanks, whose ways are the longest to look for, are looked at less
 * long. `quickly` takes ways for open that were found before and have stayed clear, does not look long for others, and
 * asks of what stays only where its way is known already.
 */
export function lostWaysIn(before: Aircraft, after: Aircraft, quickly = false): Refusal[] {
  if ((after.hatches ?? []).length === 0) return [];
  const all: readonly Item[] = [...after.parts, ...after.tanks];
  const moved = new Set(
    all
      .filter((item) => {
        const was = itemById(before, item.id);
        return was === undefined || poseKey(was) !== poseKey(item);
      })
      .map(({ id }) => id),
  );
  if (moved.size === 0) return [];
  const lost = quickly ? lostQuickly : lostWay;
  const ofMoved = all.filter(({ id }) => moved.has(id)).flatMap((item) => lost(before, after, item, moved));
  if (ofMoved.length > 0) return ofMoved;
  return all
    .filter((item) => !moved.has(item.id) && hullsAround(after, itemSolid(item)).length > 0)
    .flatMap((item) => lost(before, after, item, moved));
}

function lostWay(before: Aircraft, after: Aircraft, item: Item, moved: ReadonlySet<string>): Refusal[] {
  if (!itemById(before, item.id)) return unlessFound(wayInFirst(after, item), item, moved);
  const look = 'feeds' in item ? quickWayIn : wayIn;
  const was = look(before, item.id);
  if (!was?.found) return [];
  keepWay(before, was);
  // What has not moved goes in as it did, as long as nothing has come in its way.
  if (!moved.has(item.id) && isStillClear(after, item, was, false)) return [];
  const now = look(after, item.id);
  if (now?.found) keepWay(before, now);
  return unlessFound(now, item, moved);

  function keepWay(of: Aircraft, way: Way): void {
    const ways = waysTo(of, item.id);
    if (!ways.includes(way)) ways.push(way);
  }
}

function lostQuickly(before: Aircraft, after: Aircraft, item: Item, moved: ReadonlySet<string>): Refusal[] {
  const isNew = !itemById(before, item.id);
  const ways = waysTo(before, item.id);
  if (ways.some((way) => isStillClear(after, item, way, isNew))) return [];
  // Ballast at the end of a hull is what others come to stand before.
  const isBallast = 'role' in item && item.role === 'ballast';
  if (!moved.has(item.id) && !isBallast && ways.length === 0) return [];
  const was = isNew ? null : wayIn(before, item.id);
  if (was && !was.found) return [];
  if (was?.found && ways.length === 0) {
    ways.push(was);
    if (isStillClear(after, item, was, isNew)) return [];
  }
  const now = isNew ? wayInFirst(after, item, QUICK_POSES) : quickWayIn(after, item.id);
  if (now?.found) ways.push(now);
  return unlessFound(now, item, moved);
}

function unlessFound(now: Entry | null, item: Item, moved: ReadonlySet<string>): Refusal[] {
  if (!now || now.found) return [];
  const ids = moved.has(item.id) ? [item.id] : now.blockedByIds.filter((id) => moved.has(id));
  return [{ what: 'way in', ids: ids.length > 0 ? ids : [item.id], sentence: now.sentence }];
}

type Way = Extract<Entry, { found: true }>;

/** Ways that were found to places of an item since a search began from an aircraft. */
const waysTo = perObjects((_before: Aircraft, _itemId: string): Way[] => []);

const poseKey = ({ id, positionMm, yawDeg, pitchDeg, rollDeg }: Item): string =>
  [id, ...positionMm, yawDeg, pitchDeg, rollDeg].join(' ');

/** Whether a way to the place where an item stands is open, other parts in place or not yet. */
function isStillClear(after: Aircraft, item: Item, way: Way, isFirst: boolean): boolean {
  const hatch = after.hatches?.find(({ id }) => id === way.hatchId);
  const end = way.poses.at(-1);
  if (!hatch || !end || poseKey({ ...item, ...end }) !== poseKey(item)) return false;
  const test = clearanceTest(after, item, hatch, isFirst ? partsBut(after, item) : new Set());
  return way.poses.every((pose) => test(pose) === null);
}

const partsBut = ({ parts }: Aircraft, item: Item) =>
  new Set(parts.filter((part) => part !== item).map(({ id }) => id));

/** The way in before any other part is mounted. */
const wayInFirst = (aircraft: Aircraft, item: Item, budget?: number) =>
  entryThroughAny(aircraft, item.id, {
    without: partsBut(aircraft, item),
    asFound: true,
    ...(budget === undefined ? {} : { budget }),
  });

/** The way in of one item, searched once for an aircraft. */
const wayIn = perObjects((aircraft: Aircraft, itemId: string) =>
  entryThroughAny(aircraft, itemId, { asFound: true }),
);

const quickWayIn = perObjects((aircraft: Aircraft, itemId: string) =>
  entryThroughAny(aircraft, itemId, { budget: QUICK_POSES, asFound: true }),
);
