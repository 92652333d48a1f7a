import { beforeAll, describe, expect, test } from 'vitest';
import { sayIn } from '../../src/commands/say';
import { advise } from '../../src/model/advice/advise';
import { flyingStates } from '../../src/model/airframe/flyingStates';
import { type Balance, balanceAt, LEVEL } from '../../src/model/balance/balance';
import type { Aircraft } from '../../src/model/document/types';
import { judgeFully } from '../../src/model/judgement/judgeFully';
import { compareSeverity } from '../../src/model/judgement/types';
import { estimateStability } from '../../src/model/stability/estimateStability';
import { type StabilityEstimate, stabilityInput } from '../../src/model/stability/stability';
import { verdict } from '../../src/model/words/verdict';
import { followWords } from '../model/advice/followWords';
import { brokenDemos } from './brokenDemos';
import { type DemoName, demo, NAMES } from './demoAircraft';
import type { Broken } from './planting';

const say = sayIn('metric', null);
const plain = (text: string) => text.replace(/\u202f/g, ' ');

let estimates: ReadonlyMap<DemoName, StabilityEstimate>;
beforeAll(() => {
  estimates = new Map(
    NAMES.map((name) => {
      const answer = estimateStability(stabilityInput(demo(name)), 'fine');
      if (!answer || 'fault' in answer) throw new Error(`no estimate for ${name}`);
      return [name, answer];
    }),
  );
});

/** Every planted fault leaves the wings alone, so the estimate is that of the demo as it comes. */
const answers = new Map<Broken, ReturnType<typeof workedOut>>();
function answerTo(row: Broken) {
  const answer = answers.get(row) ?? workedOut(row);
  answers.set(row, answer);
  return answer;
}

function workedOut({ demo: name, plant }: Broken) {
  const aircraft = plant(demo(name));
  const estimate = estimates.get(name)!;
  const advice = advise(aircraft, { down: LEVEL, estimate }, say);
  const { before } = advice;
  const mass = { massG: before.shown?.full.massG ?? Number.NaN, plusMinusG: null };
  return { aircraft, estimate, advice, before, said: verdict(aircraft, before, say, { advice, mass }) };
}

/** The balances of the sound demo in each load state that flies. */
const soundBalances = (aircraft: Aircraft): readonly Balance[] =>
  flyingStates(aircraft).map((positions) => balanceAt(aircraft, { fuelFraction: 1, down: LEVEL, positions }));

/**
 * Farthest fore, aft and sideways with a fault added to the sound demo's sums: (M·x + Σ m·x)/(M + Σ m). A part on a
 * switch would be in the sums of some states only; such rows have no sum and are left to the words.
 */
function byHand({ demo: name, adds }: Broken) {
  const sound = demo(name);
  const more = adds!(sound);
  const points = soundBalances(sound).flatMap(({ travel }) =>
    travel.map(({ massG, cgMm: [x, y] }) => ({
      x: (massG * x + more.xGmm) / (massG + more.massG),
      y: (massG * y + more.yGmm) / (massG + more.massG),
    })),
  );
  const xs = points.map(({ x }) => x);
  const ys = points.map(({ y }) => y);
  const y = ys.reduce((far, one) => (Math.abs(one) > Math.abs(far) ? one : far));
  return { foreMm: Math.min(...xs), aftMm: Math.max(...xs), y };
}

test('there are forty of them, and no two alike', () => {
  expect(brokenDemos.length).toBeGreaterThanOrEqual(40);
  expect(new Set(brokenDemos.map((row) => `${row.demo}: ${row.fault}`)).size).toBe(brokenDemos.length);
});

describe.each(brokenDemos.map((row) => [`${row.demo}, ${row.fault}`, row] as const))('%s', (_, row) => {
  test('is judged as it must be', () => {
    const { aircraft, advice, before, said, estimate } = answerTo(row);
    const facts = Object.fromEntries(
      said.facts.map(({ key, value, note, tone }) => [key, plain(`${value}; ${note}; ${tone}`)]),
    );
    const [headline, cause, fix] = [said.headline, said.cause, said.fix?.label ?? ''].map(plain);
    expect(headline).toMatch(row.headline);
    expect(said.tone).toBe(row.tone);
    if (row.cause) expect(cause).toMatch(row.cause);
    for (const [key, value] of Object.entries(row.facts ?? {})) expect(facts[key], key).toMatch(value);
    if (row.fix === null) expect(said.fix?.remedy ?? null).toBeNull();
    else if (row.fix) expect(fix).toMatch(row.fix);
    expect(`${headline} ${cause}`.split(/\s+/).length, 'words').toBeLessThanOrEqual(32);
    if (advice.remedy) {
      const after = judgeFully(followWords(aircraft, advice.remedy), { down: LEVEL, estimate });
      expect(after.severity).toBe(advice.remedy.result.severity);
      expect(compareSeverity(after.severity, before.severity)).toBeGreaterThanOrEqual(0);
      expect(after.findings[0]).not.toEqual(before.findings[0]);
    }
  });

  test.runIf(row.adds)('by the sum of mass × arm', () => {
    const { before, said } = answerTo(row);
    const { foreMm, aftMm, y } = byHand(row);
    // Leads that go with a part, cut-outs, and travels sampled at other fuel states: tenths of a millimetre.
    expect(Math.abs(before.foremost!.cgMm[0] - foreMm)).toBeLessThan(0.7);
    expect(Math.abs(before.aftmost!.cgMm[0] - aftMm)).toBeLessThan(0.7);
    expect(Math.abs(before.mostLateral!.cgMm[1] - y)).toBeLessThan(0.7);
    const number = Number(/heavy by ([\d.]+)/.exec(plain(said.headline))?.[1] ?? Number.NaN);
    if (Number.isNaN(number) || !before.band) return;
    const outMm = said.tone === 'danger' ? aftMm - before.band.aftMm : before.band.forwardMm - foreMm;
    expect(number).toBeGreaterThanOrEqual(outMm - 0.7);
    expect(number).toBeLessThanOrEqual(outMm + 1.7);
  });
});
