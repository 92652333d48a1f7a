import { shownText } from '../../document/names';
import type { UnitSystem } from '../../units';
import { type From, type WorkingSheet, workingSheet } from '../../words/workingSheet';
import { benchBalance, changed, type LessonBench, startBench } from '../bench';
import { estimateHere, figureAt, needsEstimate } from '../quantity';
import type { Asked, Estimator, Lesson, Quantity } from '../types';
import { heldTogether } from './heldTogether';
import { inertiaSheet } from './inertiaSheet';
import { liquidSheet } from './liquidSheet';
import { neutralPointSheet } from './neutralPointSheet';
import { partForSheet } from './partForSheet';
import { plusMinusSheet } from './plusMinusSheet';

/** A sum as it stands on paper; where there are several, each with what it is of. */
export interface TitledSheet {
  readonly title: string | null;
  readonly sheet: WorkingSheet;
}

/** Who asks for sheets, and how they are written. */
export interface SheetWish {
  readonly units: UnitSystem;
  readonly from: From;
  readonly estimator?: Estimator;
}

/** The point that a question's stations are read from. */
export function fromPoint({ aircraft }: Pick<LessonBench, 'aircraft'>, pointId: string | undefined): From {
  const point = aircraft.referencePoints.find(({ id }) => id === pointId);
  return point
    ? { name: shownText(point.name), mm: point.positionMm[0] }
    : { name: `the datum (${shownText(aircraft.datum)})`, mm: 0 };
}

/** The sums behind a lesson's own answer, as `sum` of the file wants them. */
export function lessonSheets(
  lesson: Lesson,
  units: UnitSystem,
  estimator: Estimator = estimateHere,
): readonly TitledSheet[] {
  const { question, sum } = lesson;
  const bench = startBench(lesson);
  const asked = { ...question, quantity: sum.quantity ?? question.quantity };
  return askedSheets(bench, asked, { units, from: fromPoint(bench, question.from), estimator });
}

/** The sums behind the answer to any question: after the change, and before it too where the two are held against each other. */
export function askedSheets(bench: LessonBench, asked: Asked, wish: SheetWish): readonly TitledSheet[] {
  const { quantity, as, change } = asked;
  const titled = (title: string | null, sheet: WorkingSheet | null) => (sheet ? [{ title, sheet }] : []);
  const after = changed(bench, change);
  if (quantity.of === 'partFor') return titled(null, quantitySheet(after, quantity, wish));
  if (as === 'value') return titled(null, quantitySheet(after, quantity, wish));
  const [first, last] = [quantitySheet(bench, quantity, wish), quantitySheet(after, quantity, wish)];
  const { units, from, estimator = estimateHere } = wish;
  const [was, is] = [figureAt(bench, quantity, estimator), figureAt(after, quantity, estimator)];
  if (was === null || is === null || !last) return titled('Before', first);
  const line = heldTogether(quantity, as, [was, is], units, from.mm);
  return [...titled('Before', first), ...titled('After', { ...last, steps: [...last.steps, line] })];
}

/** The sum behind one figure of a bench; null where there is no such figure. */
export function quantitySheet(
  bench: LessonBench,
  quantity: Quantity,
  { units, from, estimator = estimateHere }: SheetWish,
): WorkingSheet | null {
  const asked = quantity.of === 'partFor' ? quantity.wanted.quantity : quantity;
  const balance = benchBalance(bench, needsEstimate(asked) ? estimator : undefined);
  const { aircraft } = bench;
  switch (quantity.of) {
    case 'cgStation':
      return workingSheet('station', aircraft, balance, units, from);
    case 'cgButtline':
      return workingSheet('buttline', aircraft, balance, units, from);
    case 'margin':
      return workingSheet('margin', aircraft, balance, units, from);
    case 'mass':
      return workingSheet('mass', aircraft, balance, units, from);
    case 'neutralPoint':
      return neutralPointSheet(balance, units, from);
    case 'inertia':
      return inertiaSheet(aircraft, balance, quantity.about, units);
    case 'cgPlusMinus':
      return plusMinusSheet(aircraft, balance, units);
    case 'liquid':
      return liquidSheet(aircraft, balance, units);
    case 'partFor':
      return partForSheet(bench, quantity, estimator, units, from);
  }
}
