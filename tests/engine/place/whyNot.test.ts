import { expect, test } from 'vitest';
import { checkPlaced } from '../../../src/engine/place/check';
import type { PlaceProblem } from '../../../src/engine/place/types';
import { type Lift, whyNot } from '../../../src/engine/place/whyNot';
import { bruteOfPoints } from './bruteForce';
import { pointCase } from './cases';
import { now, solve } from './solver';

const order = { solve, now, timeMs: 120_000 };

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
  for (let seed = 1; seed <= 40; seed++) {
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
  expect(impossible).toBeGreaterThan(10);
  expect(several).toBeGreaterThan(0);
});

/** The least that a limit must give way, by asking trying-everything for every hundredth of a millimetre in turn. */
function bruteBreachMm(problem: PlaceProblem, end: 'forward' | 'aft', mostMm: number): number {
  const works = (byMm: number) => {
    const { forwardMm, aftMm } = problem.band;
    const band = {
      forwardMm: forwardMm - (end === 'forward' ? byMm : 0),
      aftMm: aftMm + (end === 'aft' ? byMm : 0),
    };
    return bruteOfPoints({ ...problem, band }) !== null;
  };
  let [low, high] = [0, mostMm];
  while (high - low > 0.001) {
    const mid = (low + high) / 2;
    if (works(mid)) high = mid;
    else low = mid;
  }
  return high;
}

test('a limit gives way by no more than trying everything finds, ballast and its weight counted', () => {
  let tried = 0;
  for (let seed = 1; seed <= 60 && tried < 8; seed++) {
    const drawn = pointCase(seed);
    const problem = { ...drawn, spots: drawn.spots.map((spot) => ({ ...spot, mostG: 40 })) };
    if (bruteOfPoints(problem)) continue;
    for (const end of ['forward', 'aft'] as const) {
      const lift: Lift = { id: end, name: `${end} limit`, what: 'limit', limits: [end] };
      const [reason] = whyNot(problem, [lift], order).reasons;
      if (!reason) continue;
      tried += 1;
      expect(reason.breachMm, `case ${seed} ${end}`).toBeLessThanOrEqual(
        bruteBreachMm(problem, end, reason.breachMm + 5) + 0.01,
      );
      expect(reason.blame, `case ${seed} ${end}`).toMatch(/^state \d$/);
    }
  }
  expect(tried).toBeGreaterThan(5);
});
