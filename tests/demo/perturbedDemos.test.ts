import { expect, test } from 'vitest';
import { type Advice, advise } from '../../src/model/advice/advise';
import { flyingStates } from '../../src/model/airframe/flyingStates';
import { balanceAt, LEVEL } from '../../src/model/balance/balance';
import type { Aircraft, Part } from '../../src/model/document/types';
import { newProblems, wholeFit } from '../../src/model/fit/wholeFit';
import { type Given, judgeFully } from '../../src/model/judgement/judgeFully';
import { compareSeverity } from '../../src/model/judgement/types';
import { estimateStability } from '../../src/model/stability/estimateStability';
import { stabilityInput } from '../../src/model/stability/stability';
import { followWords } from '../model/advice/followWords';
import { type DemoName, demo, NAMES } from './demoAircraft';
import { perturbed } from './perturbedDemos';

/** RUNS=30 looks longer: so many of each demo. */
const RUNS = Number(process.env.RUNS ?? 4);
const GIVEN: Given = { down: LEVEL, estimate: null };

/** Every other aircraft is held to the estimate of its demo as well: chance leaves the wings alone. */
function givenFor(name: DemoName, seed: number): Given {
  if (seed % 2 === 0) return GIVEN;
  const estimate = estimateStability(stabilityInput(demo(name)), 'coarse');
  if (!estimate || 'fault' in estimate) throw new Error(`no estimate for ${name}`);
  return { ...GIVEN, estimate };
}

/**
 * Foremost and aftmost of every flying load state by the sums of the aircraft before, with each part's mass × arm taken
 * out as it was and put in as it is: (M·x − Σ m·x + Σ m′·x′)/(M − Σ m + Σ m′). Leads that go with a part are left out.
 */
function bySums(before: Aircraft, after: Aircraft): { readonly foreMm: number; readonly aftMm: number } {
  const now = new Map<string, Part>(after.parts.map((part) => [part.id, part]));
  const stood = new Set(before.parts.map(({ id }) => id));
  const xs = flyingStates(before).flatMap((positions) => {
    const { loaded, travel } = balanceAt(before, { ...GIVEN, fuelFraction: 1, positions });
    let [massG, momentGmm] = [0, 0];
    const add = (part: Part | undefined, sign: 1 | -1) => {
      massG += sign * (part?.massG ?? 0);
      momentGmm += sign * (part?.massG ?? 0) * (part?.positionMm[0] ?? 0);
    };
    for (const part of loaded.parts) {
      add(part, -1);
      add(now.get(part.id), 1);
    }
    for (const part of after.parts) if (!stood.has(part.id)) add(part, 1);
    return travel.map(({ massG: wholeG, cgMm: [x] }) => (wholeG * x + momentGmm) / (wholeG + massG));
  });
  return { foreMm: Math.min(...xs), aftMm: Math.max(...xs) };
}

/** Leads that follow a part shift the sums by tenths of a millimetre, see the widest of the demos. */
const LEADS_MM = 0.7;

function expectSound(aircraft: Aircraft, given: Given, { remedy, about, before }: Advice): void {
  if (!remedy) return;
  const followed = followWords(aircraft, remedy);
  const after = judgeFully(followed, given);
  expect(newProblems(wholeFit(aircraft), wholeFit(followed)), remedy.words).toEqual([]);
  expect(after.severity, remedy.words).toBe(remedy.result.severity);
  expect(compareSeverity(after.severity, before.severity), remedy.words).toBeGreaterThanOrEqual(0);
  // A tank takes its liquid along, which the sums of parts do not see.
  const tanksToo = remedy.edits.some(
    (edit) => edit.do === 'move' && aircraft.tanks.some(({ id }) => id === edit.id),
  );
  if (about !== 'along' || !before.band || tanksToo) return;
  const { foreMm, aftMm } = bySums(aircraft, followed);
  expect(aftMm, remedy.words).toBeLessThan(before.band.aftMm + LEADS_MM);
  expect(foreMm, remedy.words).toBeGreaterThan(before.band.forwardMm - LEADS_MM);
}

test.each(NAMES)('%s by chance out of balance: what is advised, done from its words, is right', (name) => {
  const seeds = Array.from({ length: RUNS }, (_, k) => 1 + k + 100 * NAMES.indexOf(name));
  const answers = seeds.map((seed) => {
    const aircraft = perturbed(demo(name), seed);
    const given = givenFor(name, seed);
    const advice = advise(aircraft, given, { units: 'metric', fromMm: 0 });
    expectSound(aircraft, given, advice);
    return advice;
  });
  expect(answers.some(({ remedy }) => remedy !== null)).toBe(true);
});
