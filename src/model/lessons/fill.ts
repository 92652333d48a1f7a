import { formatLength, formatMass, formatVolume } from '../units';
import { type Answer, answerOf, lessonAnswer } from './answer';
import { startBench } from './bench';
import { differenceText, figureText, type Reading, sidesOf, waysOf } from './figureText';
import { estimateHere } from './quantity';
import type { Asked, Estimator, Lesson } from './types';

/** What stands in for a placeholder, by its name. */
export type Fillings = Readonly<Record<string, string>>;

/** Names that the engine fills in itself, and where each may stand. */
export const ANSWER_NAMES = ['before', 'answer', 'moved'] as const;
export const PREDICTION_NAMES = ['predicted', 'off', 'side'] as const;
export const HINT_NAMES = ['item', 'away'] as const;

const PLACEHOLDER = /\{([^{}]*)\}/g;
const STATION = /^station (-?\d+(?:\.\d+)?) mm$/;
const MEASURE = /^(-?\d+(?:\.\d+)?) (mm|g|ml)$/;

/** What stands between braces in a text, in its order. */
export const placeholdersIn = (text: string): readonly string[] =>
  [...text.matchAll(PLACEHOLDER)].map(([, inside = '']) => inside);

/** A measure that stands between braces in the file's unit, in the person's: `300 mm`, `station 300 mm`, `40 g`, `250 ml`. */
function measureText(inside: string, { units, fromMm }: Reading): string | null {
  const station = STATION.exec(inside)?.[1];
  if (station !== undefined) return formatLength(Number(station) - fromMm, units);
  const [, figure, unit] = MEASURE.exec(inside) ?? [];
  switch (unit) {
    case 'mm':
      return formatLength(Number(figure), units);
    case 'g':
      return formatMass(Number(figure), units);
    case 'ml':
      return formatVolume(Number(figure), units);
    default:
      return null;
  }
}

/** Whether a placeholder is a measure and not a name. */
export const isMeasure = (inside: string): boolean => STATION.test(inside) || MEASURE.test(inside);

/** A text with its placeholders filled. One that nothing fills stays as it is; the linter has refused it before. */
export const filled = (text: string, fillings: Fillings, reading: Reading): string =>
  text.replace(PLACEHOLDER, (whole, inside: string) =>
    Object.hasOwn(fillings, inside) ? (fillings[inside] ?? whole) : (measureText(inside, reading) ?? whole),
  );

/** What the engine says of a question, for its words. */
export function answerFillings(asked: Asked, { before, answer }: Answer, reading: Reading): Fillings {
  const { quantity, as } = asked;
  const moved = answer - before;
  const [more, less] = waysOf(quantity);
  const apart = differenceText(moved, asked, reading.units);
  return {
    before: figureText(before, { quantity, as }, reading),
    answer: figureText(answer, { quantity, as }, reading),
    moved: `${apart} ${moved < 0 ? less : more}`,
  };
}

/** What is said of a prediction besides: how far off, and to which side. */
export function predictionFillings(
  asked: Asked,
  predicted: number,
  { answer }: Answer,
  reading: Reading,
): Fillings {
  const { quantity, as } = asked;
  const [more, less] = sidesOf(quantity, as);
  return {
    predicted: figureText(predicted, { quantity, as }, reading),
    off: differenceText(predicted - answer, asked, reading.units),
    side: predicted < answer ? less : more,
  };
}

/** How a lesson's own figures are read: stations from the point that its question names. */
export const readingFor = (
  { aircraft, question }: Pick<Lesson, 'aircraft' | 'question'>,
  units: Reading['units'],
): Reading => ({
  units,
  fromMm: aircraft.referencePoints.find(({ id }) => id === question.from)?.positionMm[0] ?? 0,
});

/**
 * All that a lesson's words may name apart from a prediction: the answer, and the further figures of the file. Figures that
 * cannot be worked out are left out.
 */
export function lessonFillings(
  lesson: Lesson,
  units: Reading['units'],
  estimator: Estimator = estimateHere,
): Fillings {
  const reading = readingFor(lesson, units);
  const answer = lessonAnswer(lesson, estimator);
  const bench = startBench(lesson);
  const named = (lesson.figures ?? []).flatMap((each) => {
    const found = answerOf(bench, each, estimator);
    return found ? [[each.name, figureText(found.answer, each, reading)] as const] : [];
  });
  return {
    ...Object.fromEntries(named),
    ...(answer ? answerFillings(lesson.question, answer, reading) : {}),
  };
}
