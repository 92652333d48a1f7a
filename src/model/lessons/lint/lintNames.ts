import { switchesOf } from '../../airframe/loadSwitches';
import { itemById, structureById } from '../../document/edit';
import { BARE_AIRFRAME_ID } from '../../document/ids';
import { shownText } from '../../document/names';
import type { Aircraft } from '../../document/types';
import { type Fault, type Path, toldFault } from '../../reading/fault';
import { ANSWER_NAMES, HINT_NAMES, isMeasure, PREDICTION_NAMES } from '../fill';
import type { Change, Lesson, Quantity } from '../types';

/** Faults of the names: everything that a lesson speaks of must be aboard. */
export function lintNames(lesson: Lesson): readonly Fault[] {
  const { aircraft, begin = [], question, experiment, sum, check, figures = [], look } = lesson;
  const second = check.aircraft ?? aircraft;
  const inChanges = (changes: readonly Change[], of: Aircraft, at: Path) =>
    changes.flatMap((change, index) => changeFaults(lesson, change, of, [...at, index]));
  const inQuantity = (quantity: Quantity, of: Aircraft, at: Path) => quantityFaults(lesson, quantity, of, at);
  return [
    ...inChanges(begin, aircraft, ['begin']),
    ...inChanges(question.change, aircraft, ['question', 'change']),
    ...inQuantity(question.quantity, aircraft, ['question', 'quantity']),
    ...pointFaults(lesson, question.from, aircraft, ['question', 'from']),
    ...experiment.flatMap(({ goal }, index) => {
      const at = ['experiment', index, 'goal'];
      return goal.by === 'change'
        ? changeFaults(lesson, goal.change, aircraft, [...at, 'change'])
        : [...inChanges(goal.way, aircraft, [...at, 'way']), ...inQuantity(goal.quantity, aircraft, at)];
    }),
    ...(sum.quantity ? inQuantity(sum.quantity, aircraft, ['sum', 'quantity']) : []),
    ...inChanges(check.begin ?? [], second, ['check', 'begin']),
    ...inChanges(check.question.change, second, ['check', 'question', 'change']),
    ...inQuantity(check.question.quantity, second, ['check', 'question', 'quantity']),
    ...(check.question.by === 'marker'
      ? pointFaults(lesson, check.question.from, second, ['check', 'question', 'from'])
      : []),
    ...figures.flatMap(({ change, quantity }, index) => [
      ...inChanges(change, aircraft, ['figures', index, 'change']),
      ...inQuantity(quantity, aircraft, ['figures', index, 'quantity']),
    ]),
    ...figureNameFaults(lesson),
    ...(look?.select !== undefined && !aboard(aircraft, look.select)
      ? [missing(lesson, ['look', 'select'], 'something aboard', look.select, all(aircraft))]
      : []),
  ];
}

function missing(lesson: Lesson, at: Path, what: string, id: string, there: readonly Named[]): Fault {
  const list = there.map((each) => each.id).join(', ');
  const words = `expected ${what}, got "${shownText(id)}"; there ${there.length === 0 ? 'is none' : `are ${list}`}.`;
  return toldFault(lesson, at, words, what, id);
}

interface Named {
  readonly id: string;
}

const all = ({ parts, tanks, structure }: Aircraft): readonly Named[] => [...parts, ...tanks, ...structure];
const aboard = (aircraft: Aircraft, id: string) =>
  itemById(aircraft, id) !== undefined || structureById(aircraft, id) !== undefined;

function changeFaults(lesson: Lesson, change: Change, aircraft: Aircraft, at: Path): readonly Fault[] {
  const { parts, tanks, structure } = aircraft;
  const items = [...parts, ...tanks];
  switch (change.do) {
    case 'place':
    case 'mass':
    case 'takeOut':
      return itemById(aircraft, change.itemId)
        ? []
        : [missing(lesson, [...at, 'itemId'], 'a part or tank', change.itemId, items)];
    case 'plusMinus':
      return itemById(aircraft, change.itemId) ||
        (change.itemId === BARE_AIRFRAME_ID && aircraft.bareAirframe)
        ? []
        : [missing(lesson, [...at, 'itemId'], 'a part, a tank or "bare-airframe"', change.itemId, items)];
    case 'shiftStructure':
      return structureById(aircraft, change.pieceId)
        ? []
        : [missing(lesson, [...at, 'pieceId'], 'a piece of structure', change.pieceId, structure)];
    case 'start':
      return tanks.some(({ id }) => id === change.tankId)
        ? []
        : [missing(lesson, [...at, 'tankId'], 'a tank', change.tankId, tanks)];
    case 'fuel':
      return aircraft.fuel && tanks.length > 0
        ? []
        : [missing(lesson, at, 'an aircraft with a tank and fuel', 'fuel', tanks)];
    case 'switch':
      return switchFaults(lesson, change, aircraft, at);
    case 'solved':
      return at[0] === 'check' || lesson.question.quantity.of !== 'partFor'
        ? [
            toldFault(
              lesson,
              at,
              '“solved” needs a question that looks for a part.',
              'a "partFor" question',
              'none',
            ),
          ]
        : [];
    case 'hold':
      return [];
  }
}

function switchFaults(
  lesson: Lesson,
  { switchId, positionId }: Extract<Change, { readonly do: 'switch' }>,
  aircraft: Aircraft,
  at: Path,
): readonly Fault[] {
  const switches = switchesOf(aircraft);
  const found = switches.find(({ id }) => id === switchId);
  if (!found) return [missing(lesson, [...at, 'switchId'], 'a switch', switchId, switches)];
  return found.positions.some(({ id }) => id === positionId)
    ? []
    : [missing(lesson, [...at, 'positionId'], `a position of "${switchId}"`, positionId, found.positions)];
}

function quantityFaults(lesson: Lesson, quantity: Quantity, aircraft: Aircraft, at: Path): readonly Fault[] {
  const { parts, tanks } = aircraft;
  if (quantity.of === 'liquid' && !tanks.some(({ id }) => id === quantity.tankId)) {
    return [missing(lesson, [...at, 'tankId'], 'a tank', quantity.tankId, tanks)];
  }
  if (quantity.of !== 'partFor') return [];
  if (!itemById(aircraft, quantity.itemId)) {
    return [missing(lesson, [...at, 'itemId'], 'a part or tank', quantity.itemId, [...parts, ...tanks])];
  }
  const sideways = quantity.wanted.quantity.of === 'cgButtline';
  if (quantity.solve === 'mass' || sideways === (quantity.solve === 'buttline')) return [];
  const words = `a part's ${quantity.solve} has no say in the ${sideways ? 'buttline' : 'station'} of the CG.`;
  return [toldFault(lesson, at, words, sideways ? '"buttline"' : '"station"', `"${quantity.solve}"`)];
}

function pointFaults(
  lesson: Lesson,
  pointId: string | undefined,
  { referencePoints }: Aircraft,
  at: Path,
): readonly Fault[] {
  return pointId === undefined || referencePoints.some(({ id }) => id === pointId)
    ? []
    : [missing(lesson, at, 'a reference point', pointId, referencePoints)];
}

const RESERVED: readonly string[] = [...ANSWER_NAMES, ...PREDICTION_NAMES, ...HINT_NAMES];

function figureNameFaults(lesson: Lesson): readonly Fault[] {
  const names = (lesson.figures ?? []).map(({ name }) => name);
  return names.flatMap((name, index) => {
    const taken = RESERVED.includes(name) || isMeasure(name) ? 'a name of the engine’s' : null;
    const why = taken ?? (names.indexOf(name) < index ? 'the name of a figure before it' : null);
    const expected = 'a name of its own';
    return why === null
      ? []
      : [
          toldFault(
            lesson,
            ['figures', index, 'name'],
            `“${name}” is ${why}; expected ${expected}.`,
            expected,
            why,
          ),
        ];
  });
}
