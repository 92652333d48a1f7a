import { itemById } from '../../document/edit';
import { type Fault, toldFault } from '../../reading/fault';
import { quantityAt } from '../answer';
import { startBench } from '../bench';
import { benchAtStep } from '../steps';
import type { Change, Estimator, Lesson } from '../types';
import { textsOf } from './texts';

type CautionId = Lesson['cautions'][number];

/** The CG goes aft by more than this in the lesson: whoever copies it on a real aircraft has to be warned, mm. */
const AFT_MM = 1;

/** Cautions that are wanting: what a lesson touches, it has to say. */
export function lintCautions(lesson: Lesson, estimator: Estimator): readonly Fault[] {
  const said = new Set<CautionId>(lesson.cautions);
  return [...wanted(lesson, estimator)].flatMap(([id, why]) => {
    if (said.has(id)) return [];
    const words = `the caution "${id}" is missing; the lesson ${why}.`;
    return [toldFault(lesson, ['cautions'], words, `"${id}"`, 'not there')];
  });
}

function wanted(lesson: Lesson, estimator: Estimator): ReadonlyMap<CautionId, string> {
  const { aircraft, question, experiment, check } = lesson;
  const text = textsOf(lesson)
    .map((each) => each.text.toLowerCase())
    .join(' ');
  const changes: readonly Change[] = [
    ...question.change,
    ...experiment.flatMap(({ goal }) => (goal.by === 'change' ? [goal.change] : goal.way)),
    ...check.question.change,
  ];
  const touches = (role: string) =>
    changes.some((change) => {
      if (!('itemId' in change)) return false;
      const item =
        itemById(aircraft, change.itemId) ?? (check.aircraft && itemById(check.aircraft, change.itemId));
      return item !== undefined && 'role' in item && item.role === role;
    });
  const says = (words: RegExp) => words.test(text);
  const found = new Map<CautionId, string>([
    ['estimates', 'is about figures that only scales can prove'],
    ['last-word', 'is followed by people who fly'],
  ]);
  if (goesAft(lesson, estimator)) found.set('first-flight', 'moves the CG aft');
  if (aircraft.tanks.length > 0 && aircraft.fuel?.use === 'burn') found.set('fuel', 'is about fuel');
  if (touches('energy') || says(/\bpack\b/)) found.set('lithium', 'is about a pack');
  if (touches('powerplant') || says(/\b(propeller|motor|engine)\b/))
    found.set('propeller', 'is about a motor');
  if (touches('ballast') || says(/\b(lead|ballast)\b/)) found.set('lead', 'is about ballast');
  return found;
}

function goesAft(lesson: Lesson, estimator: Estimator): boolean {
  const at = (index: number) =>
    quantityAt(benchAtStep(lesson, index, estimator), { of: 'cgStation' }, estimator);
  const first = quantityAt(startBench(lesson), { of: 'cgStation' }, estimator);
  return lesson.experiment.some((_, index) => (at(index + 1) ?? 0) - (first ?? 0) > AFT_MM);
}
