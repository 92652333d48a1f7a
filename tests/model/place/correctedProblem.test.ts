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

test('with leads that move along, searching again comes out as the aircraft itself balances', () => {
  const question = placeProblem(wired, { down: LEVEL });
  if ('fault' in question) throw new Error(question.fault);
  let { problem } = question;
  const off: number[] = [];
  for (let round = 0; round < 4; round++) {
    const best = arranged(problem).best!;
    const { marginMm } = recheckArrangement(wired, problem, best, LEVEL);
    off.push(Math.abs(marginMm - best.marginMm));
    problem = correctedProblem(wired, problem, best, LEVEL);
  }
  expect(off[0]).toBeGreaterThan(0.02);
  expect(off.at(-1)).toBeLessThan(0.02);
});
