import { describe, expect, test } from 'vitest';
import { balanceAt, LEVEL } from '../../src/model/balance/balance';
import { removeItem } from '../../src/model/document/edit';
import type { Aircraft } from '../../src/model/document/types';
import { newProblems, wholeFit } from '../../src/model/fit/wholeFit';
import { bandToKeep } from '../../src/model/judgement/bandToKeep';
import { judgeFully } from '../../src/model/judgement/judgeFully';
import { applyArrangement } from '../../src/model/place/applyArrangement';
import { usualMarginMm } from '../../src/model/place/placeSettings';
import { searchPlaces } from '../../src/model/place/searchPlaces';
import { estimateStability } from '../../src/model/stability/estimateStability';
import { stabilityInput } from '../../src/model/stability/stability';
import { now, solve } from '../engine/place/solver';
import { type DemoName, demo } from './demoAircraft';
import { lostWays } from './lostWays';

/** Every look at the clock counts as so much, ms: the search is bounded by its steps, however busy the machine is. */
const LOOK_MS = 40;

function arrangedAsOffered(name: DemoName, timeMs: number) {
  const aircraft = demo(name);
  const estimate = estimateStability(stabilityInput(aircraft), 'fine');
  if (!estimate || 'fault' in estimate) throw new Error(`no estimate for ${name}`);
  const band = bandToKeep(
    balanceAt(aircraft, { fuelFraction: 1, down: LEVEL, estimate, estimateFresh: true }),
    aircraft,
  );
  if (!band) throw new Error(`no band for ${name}`);
  const emptied = aircraft.parts.filter(({ role, locked }) => role === 'ballast' && locked !== true);
  const empty = emptied.reduce((left, { id }) => removeItem(left, id), aircraft);
  let looks = 0;
  const found = searchPlaces(
    {
      variants: [{ name: '', aircraft: empty }],
      settings: { down: LEVEL, band, emptied, wantedMarginMm: usualMarginMm(aircraft, band, LEVEL) },
      probability: null,
    },
    { solve, now: () => now() + LOOK_MS * ++looks, timeMs },
  );
  if ('fault' in found) throw new Error(found.fault);
  const { best } = found.answer;
  if (!best) throw new Error(`nothing was found for ${name}`);
  const after = applyArrangement(empty, found.problem, best, emptied);
  const judged = (each: Aircraft) => judgeFully(each, { down: LEVEL, estimate });
  return { aircraft, after, found, judged };
}

describe('a demo arranged and accepted', () => {
  test.each([
    ['whimbrel', 3000],
    ['corncrake', 1000],
    ['sandmartin', 1500],
    ['fieldfare', 2500],
  ] as const)(
    '%s: good by the whole verdict, fits in every load state, every part has the way in it had',
    (name, timeMs) => {
      const { aircraft, after, found, judged } = arrangedAsOffered(name, timeMs);
      const is = judged(after);
      expect(is.findings.map(({ kind }) => kind)).toEqual([]);
      expect(is.severity).toBe('good');
      expect(newProblems(wholeFit(aircraft), wholeFit(after)).map(({ key }) => key)).toEqual([]);
      expect(lostWays(aircraft, after)).toEqual([]);
      // What is said of the margin is what the judgement finds.
      expect(found.answer.keptMarginMm).toBeGreaterThan(0);
    },
    600_000,
  );
});
