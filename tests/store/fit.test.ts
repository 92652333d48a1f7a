import { expect, test } from 'vitest';
import { judging } from '../../src/judging';
import { placeItem } from '../../src/model/document/edit';
import type { Aircraft } from '../../src/model/document/types';
import type { FitProblem } from '../../src/model/fit/wholeFit';
import { wholeFit } from '../../src/model/fit/wholeFit';
import { fitSummary } from '../../src/panels/card/summaries';
import { type Bench, createBench } from '../../src/store/bench';
import { aircraftOf, boxPart } from '../model/aircraft';

/** A row of boxes, each 100 × 40 × 20 mm, of which every third runs 30 mm into the one before it. */
const row = (count: number): Aircraft =>
  aircraftOf(
    [],
    Array.from({ length: count }, (_, k) =>
      boxPart(`box-${k}`, 10, [k * 130 - (k % 3 === 2 ? 60 : 0), 0, 0]),
    ),
  );

const keys = (problems: readonly FitProblem[]) => problems.map(({ key, byMm }) => `${key} ${byMm}`);
/** Judged with nothing remembered, for a copy shares nothing with what was judged before. */
const afresh = (aircraft: Aircraft) => keys(wholeFit(structuredClone(aircraft)).problems);

/** A bench whose worker is the test's own hand. */
function benchOf(aircraft: Aircraft) {
  const asked: { of: Aircraft; answer(problems: readonly FitProblem[]): void; fail(): void }[] = [];
  const bench = createBench(aircraft);
  bench.fit.start({
    entry: async () => null,
    order: async () => null,
    whole: (of) =>
      new Promise((answer, reject) => asked.push({ of, answer, fail: () => reject(new Error('gone')) })),
    stop: () => {},
  });
  bench.fit.startJudge(judging);
  return { bench, asked };
}

const said = (bench: Bench) => [bench.fit.whole(), fitSummary('box-2')(bench)];
const settled = () => new Promise((resolve) => setTimeout(resolve));

test('few things are judged at once', () => {
  const { bench, asked } = benchOf(row(30));
  expect(keys(bench.fit.whole()!.problems)).toHaveLength(10);
  expect(asked).toHaveLength(0);
  bench.rest.stop();
});

test('many things are judged in the worker, and nothing is said of them meanwhile', async () => {
  const { bench, asked } = benchOf(row(420));
  let told = 0;
  bench.fit.subscribe(() => {
    told += 1;
  });
  expect(said(bench)).toEqual([null, '']);
  expect(said(bench)).toEqual([null, '']);
  expect(asked).toHaveLength(1);
  asked[0]!.answer(wholeFit(structuredClone(asked[0]!.of)).problems);
  await settled();
  expect(told).toBe(1);
  // Every third of 420.
  expect(bench.fit.whole()!.problems).toHaveLength(140);
  expect(fitSummary('box-2')(bench)).not.toMatch(/^(fits)?$/);

  // From there each move is judged at once, and as if judged afresh.
  for (const [id, x] of [
    ['box-7', 0],
    ['box-2', 260],
    ['box-7', 900],
  ] as const) {
    bench.document.commit('Move', placeItem(bench.document.current(), id, [x, 0, 0]));
    const problems = bench.fit.whole()!.problems;
    bench.fit.judge()!.takeJudged(bench.document.current(), problems);
    expect(keys(problems).sort()).toEqual(afresh(bench.document.current()).sort());
    bench.fit.judge()!.takeJudged(bench.document.current(), problems);
  }
  expect(asked).toHaveLength(1);
  bench.rest.stop();
});

test('what changed meanwhile is judged from the answer, and without a worker it is judged here', async () => {
  const { bench, asked } = benchOf(row(420));
  expect(bench.fit.whole()).toBeNull();
  bench.document.commit('Move', placeItem(bench.document.current(), 'box-2', [260, 0, 0]));
  expect(bench.fit.whole()).toBeNull();
  expect(asked).toHaveLength(1);
  asked[0]!.answer(wholeFit(structuredClone(asked[0]!.of)).problems);
  await settled();
  // The one that was moved stands clear of the box before it.
  expect(bench.fit.whole()!.problems).toHaveLength(139);

  const other = row(400);
  bench.document.replace(other);
  expect(bench.fit.whole()).toBeNull();
  asked[1]!.fail();
  await settled();
  expect(bench.fit.whole()!.problems).toHaveLength(133);
  bench.rest.stop();
});
