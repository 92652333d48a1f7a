import type { Item } from '../document/edit';
import type { Aircraft } from '../document/types';
import type { FitProblem } from './fitProblem';
import { fitThings, itemThing } from './fitThings';
import { keptFreeProblems } from './keptFree';
import { itemOverlaps, overlapProblems } from './pairProblems';
import { itemPlaceProblems, placeProblems } from './placeProblems';
import { itemRuleProblems, leadProblems, ruleProblems, wallProblems } from './ruleProblems';
import { itemTightProblems, tightProblems } from './tightProblems';

/** Everything found wrong with one aircraft, before the same trouble of several solids is reported once. */
export interface Judged {
  readonly aircraft: Aircraft;
  readonly clearanceMm: number;
  readonly found: readonly FitProblem[];
}

/** Judges all of it. */
export const judgeAll = (aircraft: Aircraft, clearanceMm: number): Judged => ({
  aircraft,
  clearanceMm,
  found: [
    ...overlapProblems(aircraft),
    ...placeProblems(aircraft),
    ...leadProblems(aircraft, null),
    ...ruleProblems(aircraft),
    ...wallProblems(aircraft, null),
    ...keptFreeProblems(aircraft, null),
    ...tightProblems(aircraft, clearanceMm),
  ],
});

/** With more than so many changed, everything is judged again. */
const fewChanged = 6;

/**
 * Judges what differs from an aircraft judged before: a few parts or tanks that were changed or moved. Null where
 * more than that is different.
 */
export function judgeChanges(before: Judged, aircraft: Aircraft): Judged | null {
  const changed = changedItems(before.aircraft, aircraft);
  if (!changed) return null;
  const { clearanceMm } = before;
  const ids = new Set(changed.map(({ id }) => id));
  const stays = before.found.filter(({ parties }) => !parties.some(({ id }) => ids.has(id)));
  const things = fitThings(aircraft);
  const seen = new Set<string>();
  const fresh = changed.flatMap((item) => {
    const thing = itemThing('role' in item ? 'part' : 'tank', item);
    // A pair of two that changed is found from the first of them.
    const others = things.filter((other) => other !== thing && !seen.has(other.id));
    seen.add(item.id);
    return [
      ...itemOverlaps(aircraft, thing, others),
      ...itemPlaceProblems(aircraft, thing),
      ...itemRuleProblems(aircraft, thing, seen),
      ...itemTightProblems(aircraft, thing, others, clearanceMm),
    ];
  });
  const found = [
    ...stays,
    ...fresh,
    ...leadProblems(aircraft, ids),
    ...wallProblems(aircraft, ids),
    ...keptFreeProblems(aircraft, ids),
  ];
  return { aircraft, clearanceMm, found };
}

/** Whether no more differs than `judgeChanges` takes. */
export const differsLittle = (before: Judged, aircraft: Aircraft): boolean =>
  changedItems(before.aircraft, aircraft) !== null;

const sameKeys = ['structure', 'switches', 'leads', 'keepApart', 'bays', 'ballastFree'] as const;

/** The items that are not the same objects; null where more than some items is different. */
function changedItems(before: Aircraft, after: Aircraft): readonly Item[] | null {
  if (sameKeys.some((key) => before[key] !== after[key])) return null;
  const changed: Item[] = [];
  for (const [old, now] of [
    [before.parts, after.parts],
    [before.tanks, after.tanks],
  ] as const) {
    if (old === now) continue;
    if (old.length !== now.length) return null;
    for (let i = 0; i < now.length; i += 1) {
      const [was, is] = [old[i]!, now[i]!];
      if (was === is) continue;
      if (was.id !== is.id || roleOf(was) !== roleOf(is) || changed.length >= fewChanged) return null;
      changed.push(is);
    }
  }
  return changed;
}

const roleOf = (item: Item): string | null => ('role' in item ? item.role : null);
