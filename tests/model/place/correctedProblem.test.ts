import { expect, test } from 'vitest';
import { LEVEL } from '../../../src/model/balance/balance';
import type { Aircraft } from '../../../src/model/document/types';
import { recheckArrangement } from '../../../src/model/place/applyArrangement';
import { correctedProblem } from '../../../src/model/place/correctedProblem';
import { placeProblem } from '../../../src/model/place/placeProblem';
import { arranged } from '../../engine/place/solver';
import { redshank } from './bench';

/** A lead heavy enough to be noticed, from the pack by way of a clip to the receiver. */
const wired: Aircraft = {
  ...redshank(470),
  leads: [
    {
      id: 'loom',
      name: 'Loom',
      from: 'pack',
      to: 'receiver',
      lengthMm: 2000,
      massGPerM: 60,
      waypointsMm: [[500, 0, 15]],
    },
  ],
};

test('a lead by way of a clip hangs on what moves: what is found balances on the aircraft as it was thought to', () => {
  const question = placeProblem(wired, { down: LEVEL });
  if ('fault' in question) throw new Error(question.fault);
  const { problem } = question;
  const best = arranged(problem).best!;
  const { marginMm, faults } = recheckArrangement(wired, problem, best, LEVEL);
  expect(faults).toEqual([]);
  expect(best.moves).toBeGreaterThan(0);
  expect(Math.abs(marginMm - best.marginMm)).toBeLessThan(1e-3);
});

test('where the aircraft balances otherwise than thought, the corrected problem balances as it does', () => {
  const question = placeProblem(wired, { down: LEVEL });
  if ('fault' in question) throw new Error(question.fault);
  const best = arranged(question.problem).best!;
  const astray = {
    ...question.problem,
    cases: question.problem.cases.map((one) => ({
      ...one,
      massG: one.massG + 30,
      momentGmm: [one.momentGmm[0] - 9000, one.momentGmm[1] + 400, 0] as const,
    })),
  };
  const mended = correctedProblem(wired, astray, best, LEVEL);
  mended.cases.forEach(({ massG, momentGmm }, s) => {
    expect(massG).toBeCloseTo(question.problem.cases[s]!.massG, 6);
    expect(momentGmm[0]).toBeCloseTo(question.problem.cases[s]!.momentGmm[0], 2);
    expect(momentGmm[1]).toBeCloseTo(question.problem.cases[s]!.momentGmm[1], 2);
  });
});
