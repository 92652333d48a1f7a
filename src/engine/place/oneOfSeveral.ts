import { type ArrangeOrder, arrange } from './arrange';
import { arrangeSentence } from './arrangeSentence';
import { type ArrangeAnswer, SAME_MARGIN_MM } from './searchState';
import { SAME_G } from './tolerances';
import type { PlaceProblem } from './types';

/** The best of several answers, and which it was; its proofs hold over all of them. */
export interface OneOfSeveral {
  readonly index: number;
  readonly answer: ArrangeAnswer;
}

/**
 * Chooses among problems of which one is to be solved: this pack or that, two small or one large. Every one is searched
 * with its share of the time; the one with the wanted margin, then the least ballast, then the largest margin, then the
 * fewest moves is taken, and is proved where no other could be better.
 */
export function arrangeOneOf(problems: readonly PlaceProblem[], order: ArrangeOrder): OneOfSeveral {
  const endMs = order.now() + order.timeMs;
  return bestOfSeveral(
    problems.map((problem, i) =>
      arrange(problem, { ...order, timeMs: Math.max(1, (endMs - order.now()) / (problems.length - i)) }),
    ),
  );
}

/** The same for answers that are there already. Expects one at least. */
export function bestOfSeveral(answers: readonly ArrangeAnswer[]): OneOfSeveral {
  let index = 0;
  answers.forEach((each, i) => {
    if (isBetter(each, answers[index]!)) index = i;
  });
  const chosen = answers[index]!;
  const { best } = chosen;
  const rivals = answers.filter((_, i) => i !== index);
  // Answers that keep the margin wanted stand before those for which there is none that does.
  const equals = rivals.filter(({ keptMarginMm }) => keptMarginMm >= chosen.keptMarginMm);
  const boundG = Math.min(chosen.boundG, ...equals.map((each) => each.boundG));
  const proved = best
    ? best.ballastG <= boundG + SAME_G
    : answers.every(({ boundG: g }) => g === Number.POSITIVE_INFINITY);
  const tied = equals.filter((each) => best !== null && each.boundG <= best.ballastG + SAME_G);
  const marginMm = best?.marginMm ?? 0;
  const isWider = (each: ArrangeAnswer) =>
    each.marginBoundMm === null || each.marginBoundMm > marginMm + SAME_MARGIN_MM;
  const marginBoundMm =
    chosen.marginBoundMm === null
      ? null
      : Math.max(chosen.marginBoundMm, ...tied.map((each) => each.marginBoundMm ?? Number.POSITIVE_INFINITY));
  const outcome = {
    best,
    boundG,
    gapG: best && Math.max(0, best.ballastG - boundG),
    proved,
    marginBoundMm,
    marginProved: chosen.marginProved && !tied.some(isWider),
    movesProved: chosen.movesProved && tied.every((each) => each.movesProved),
    keptMarginMm: chosen.keptMarginMm,
  };
  return { index, answer: { ...outcome, sentence: arrangeSentence(outcome) } };
}

function isBetter(a: ArrangeAnswer, b: ArrangeAnswer): boolean {
  if (!a.best || !b.best) return a.best !== null && b.best === null;
  if (a.keptMarginMm !== b.keptMarginMm) return a.keptMarginMm > b.keptMarginMm;
  if (Math.abs(a.best.ballastG - b.best.ballastG) > SAME_G) return a.best.ballastG < b.best.ballastG;
  if (Math.abs(a.best.marginMm - b.best.marginMm) > SAME_MARGIN_MM) return a.best.marginMm > b.best.marginMm;
  return a.best.moves < b.best.moves;
}
