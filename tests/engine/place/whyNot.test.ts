import { expect, test } from 'vitest';
import { checkPlaced } from '../../../src/engine/place/check';
import type { PlaceProblem } from '../../../src/engine/place/types';
import { type Lift, whyNot } from '../../../src/engine/place/whyNot';
import { bruteOfPoints } from './bruteForce';
import { pointCase } from './cases';
import { solve } from './solver';

const order = { solve, now: () => performance.now(), timeMs: 20_000 };

/** Every limit far away. */
const FAR = { forwardMm: -1e5, aftMm: 1e5 };

function liftsOf(problem: PlaceProblem): Lift[] {
  return [
    { id: 'forward', name: 'forward limit', what: 'limit', limits: ['forward'] },
    { id: 'aft', name: 'aft limit', what: 'limit', limits: ['aft'] },
    ...(problem.lateralMm === null
      ? []
      : [
          {
            id: 'lateral',
            name: 'lateral limit',
            what: 'limit' as const,
            limits: ['left', 'right'] as const,
          },
        ]),
    ...problem.apart.map(({ id }): Lift => ({ id, name: id, what: 'rule', ruleId: id })),
    ...problem.leads.map(({ id, name }): Lift => ({ id, name, what: 'lead', leadId: id })),
    {
      id: 'lock',
      name: 'part 0',
      what: 'lock',
      partId: 'p0',
      optionIds: problem.parts[0]!.options.slice(1).map(({ id }) => id),
    },
  ];
}

/** The problem with some of them let go, written out by hand. */
function without(problem: PlaceProblem, gone: readonly string[]): PlaceProblem {
  const has = (id: string) => gone.includes(id);
  return {
    ...problem,
    band: {
      forwardMm: has('forward') ? FAR.forwardMm : problem.band.forwardMm,
      aftMm: has('aft') ? FAR.aftMm : problem.band.aftMm,
    },
    lateralMm: has('lateral') ? null : problem.lateralMm,
    apart: problem.apart.filter(({ id }) => !has(id)),
    leads: problem.leads.filter(({ id }) => !has(id)),
    parts: problem.parts.map((part, i) =>
      i === 0 && !has('lock') ? { ...part, options: part.options.slice(0, 1) } : part,
    ),
  };
}

test('the reasons are the smallest sets that trying every set finds', () => {
  let impossible = 0;
  let several = 0;
  for (let seed = 1; seed <= 60; seed++) {
    const drawn = pointCase(seed);
    const problem = { ...drawn, spots: drawn.spots.map((spot) => ({ ...spot, mostG: 20 })) };
    const lifts = liftsOf(problem);
    const found = whyNot(problem, lifts, order);
    expect(found.proved, `case ${seed}`).toBe(true);
    const works = (set: readonly string[]) => bruteOfPoints(without(problem, set)) !== null;
    if (works([])) {
      expect(found.possible, `case ${seed}`).toBe(true);
      continue;
    }
    impossible += 1;
    const ids = lifts.map(({ id }) => id);
    const ones = ids.filter((id) => works([id])).map((id) => [id]);
    const twos = ids.flatMap((a, i) => ids.slice(i + 1).flatMap((b) => (works([a, b]) ? [[a, b]] : [])));
    const smallest = ones.length > 0 ? ones : twos;
    if (ones.length === 0) several += 1;
    if (smallest.length === 0) continue;
    const said = found.reasons.map((reason) => reason.lifts.map(({ id }) => id).join(' ')).sort();
    expect(said, `case ${seed}`).toEqual(smallest.map((set) => set.join(' ')).sort());
    for (const { lifts: set, breachMm, arrangement, sentence } of found.reasons) {
      const eased = without(
        problem,
        set.map(({ id }) => id),
      );
      expect(checkPlaced(eased, arrangement.placed, arrangement.ballast).faults, `case ${seed}`).toEqual([]);
      const limits = set.filter(({ what }) => what === 'limit').length;
      expect(breachMm > 0, `case ${seed}`).toBe(limits > 0);
      expect(sentence).toMatch(/^[A-Z].*\.$/);
    }
  }
  expect(impossible).toBeGreaterThan(15);
  expect(several).toBeGreaterThan(0);
}, 60_000);
