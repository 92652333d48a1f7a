import { boxGap } from '../../engine/fit/solid';
import { lastPerObject } from '../../engine/memory/memory';
import { bothStates } from '../airframe/aboard';
import { cutOuts } from '../airframe/cutOuts';
import { type LeadState, leadState } from '../airframe/leads';
import type { Item } from '../document/edit';
import type { Aircraft, Lead } from '../document/types';
import { type FitParty, type FitProblem, partiesKey } from './fitProblem';
import { type FitThing, itemThing, statesOf } from './fitThings';
import { ruleSides } from './keepApart';
import { solidDistance } from './overlaps';
import { partyOf } from './pairProblems';

/** Pairs nearer to each other than a rule of the file, or the usual ones, allow; of one pair each rule's worst. */
export const ruleProblems = (aircraft: Aircraft): FitProblem[] =>
  ruleSides(aircraft).flatMap(({ rule, between, and }) => {
    const seen = new Set<string>();
    return between.flatMap((a) =>
      and.flatMap((b) => {
        // Where both words mean both, a pair comes twice.
        if (a === b || seen.has(`${b.id} ${a.id}`)) return [];
        const problem = tooNear(aircraft, thingOf(a), thingOf(b), rule);
        if (problem) seen.add(`${a.id} ${b.id}`);
        return problem ?? [];
      }),
    );
  });

/** The same of one item, but for pairs with the items named. */
export const itemRuleProblems = (
  aircraft: Aircraft,
  thing: FitThing,
  without: ReadonlySet<string>,
): FitProblem[] =>
  ruleSides(aircraft).flatMap(({ rule, between, and }) => {
    const others = new Set<Item>();
    if (between.some(({ id }) => id === thing.id)) for (const other of and) others.add(other);
    if (and.some(({ id }) => id === thing.id)) for (const other of between) others.add(other);
    return [...others].flatMap((other) =>
      without.has(other.id) ? [] : (tooNear(aircraft, thing, thingOf(other), rule) ?? []),
    );
  });

const thingOf = (item: Item): FitThing => itemThing('role' in item ? 'part' : 'tank', item);

interface Apart {
  readonly atLeastMm: number;
  readonly why: string;
  readonly commonPractice?: boolean | undefined;
}

/** Two items nearer to each other than they should be; null when they are not. */
export function tooNear(aircraft: Aircraft, a: FitThing, b: FitThing, rule: Apart): FitProblem | null {
  const { atLeastMm, why, commonPractice = false } = rule;
  if (boxGap(a.solid, b.solid) >= atLeastMm) return null;
  const [first, second] = a.pieceId < b.pieceId ? [a, b] : [b, a];
  const { distanceMm, pointsMm } = solidDistance(first.solid, second.solid);
  const byMm = atLeastMm - distanceMm;
  const [statesA, statesB] = [statesOf(aircraft, first), statesOf(aircraft, second)];
  const states = statesA && statesB && bothStates(statesA, statesB);
  if (byMm <= toleranceMm || !states) return null;
  return {
    key: partiesKey('tooNear', [a.id, b.id], why),
    kind: 'tooNear',
    severity: 'caution',
    parties: first.item?.locked ? [partyOf(second), partyOf(first)] : [partyOf(first), partyOf(second)],
    byMm,
    states,
    atMm: pointsMm,
    clearByMm: null,
    rule: { atLeastMm, why, commonPractice },
  };
}

const toleranceMm = 1e-6;

/** Leads that do not reach, by the way they run: all, or only those that end at the items named. */
export const leadProblems = (aircraft: Aircraft, atIds: ReadonlySet<string> | null): FitProblem[] => {
  const leads = (aircraft.leads ?? []).filter(({ from, to }) => !atIds || atIds.has(from) || atIds.has(to));
  if (leads.length === 0) return [];
  const items = new Map([...aircraft.tanks, ...aircraft.parts].map((item) => [item.id, item]));
  return leads.flatMap((lead) => shortLead(aircraft, lead, items.get(lead.from), items.get(lead.to)) ?? []);
};

function shortLead(
  aircraft: Aircraft,
  lead: Lead,
  from: Item | undefined,
  to: Item | undefined,
): FitProblem | null {
  const state = from && to && runOf(lead, from, to, aircraft);
  if (!state || state.slackMm >= -toleranceMm) return null;
  const ends = [thingOf(from), thingOf(to)] as const;
  const [statesA, statesB] = [statesOf(aircraft, ends[0]), statesOf(aircraft, ends[1])];
  const states = statesA && statesB && bothStates(statesA, statesB);
  if (!states) return null;
  const party: FitParty = { id: lead.id, name: lead.name, what: 'lead', pieceId: lead.id };
  const { pathMm } = state;
  return {
    key: partiesKey('shortLead', [lead.id]),
    kind: 'shortLead',
    severity: 'bad',
    parties: [party, partyOf(ends[0]), partyOf(ends[1])],
    byMm: -state.slackMm,
    states,
    atMm: [pathMm[0]!, pathMm.at(-1)!],
    clearByMm: null,
    rule: null,
  };
}

/** How a lead runs; the same again while its ends and the structure stand still. */
const runOf = lastPerObject(
  (lead: Lead, _from: Item, _to: Item, aircraft: Aircraft): LeadState | null => leadState(aircraft, lead),
  (before, now) => before[0] === now[0] && before[1] === now[1] && before[2].structure === now[2].structure,
);

/** Cut-outs that leave less of a block than it asks for: of all items, or only of those named. */
export const wallProblems = (aircraft: Aircraft, ids: ReadonlySet<string> | null): FitProblem[] =>
  cutOuts(ids ? onlyItems(aircraft, ids) : aircraft).flatMap((cut): FitProblem[] => {
    if (!cut.wallTooThin || cut.wallLeftMm === null) return [];
    const { partId, partName, blockId, blockName, pieceId, minimumWallMm, wallLeftMm } = cut;
    const [statesA, statesB] = [partId, blockId].map((id) => statesOf(aircraft, { id, legsUp: null }));
    const states = statesA && statesB && bothStates(statesA, statesB);
    if (!states) return [];
    const what = aircraft.tanks.some(({ id }) => id === partId) ? 'tank' : 'part';
    return [
      {
        key: partiesKey('thinWall', [partId, blockId]),
        kind: 'thinWall',
        severity: 'caution',
        parties: [
          { id: partId, name: partName, what, pieceId: partId },
          { id: blockId, name: blockName, what: 'structure', pieceId },
        ],
        byMm: minimumWallMm - wallLeftMm,
        states,
        atMm: null,
        clearByMm: null,
        rule: null,
      },
    ];
  });

const onlyItems = (aircraft: Aircraft, ids: ReadonlySet<string>) => ({
  structure: aircraft.structure,
  parts: aircraft.parts.filter(({ id }) => ids.has(id)),
  tanks: aircraft.tanks.filter(({ id }) => ids.has(id)),
});
