import * as v from 'valibot';
import { about, choice, id, label, list } from '../../document/schema/fields';
import { change } from './change';
import { strict, words } from './fields';
import { quantity } from './quantity';
import { choiceQuestion, question } from './question';
import { step } from './step';

export const LESSON_FORMAT = 'counterpoise lesson';
export const LESSON_VERSION = 1;

const MINUTES_WANTED = 'Expected 3 to 5 minutes';

/** An aircraft file, whole; the reader of aircraft files checks it. */
export const embeddedAircraft = v.looseObject({}, 'Expected an aircraft, as the bench saves it');

const look = strict(
  {
    view: about(v.optional(choice(['free', 'side', 'top', 'front'])), 'how the stage looks at it'),
    layers: about(
      v.optional(list(choice(['cg', 'stability', 'fit', 'leads', 'rooms', 'inertia']), 6)),
      'what the stage draws besides',
    ),
    select: about(v.optional(id), 'what is chosen at first'),
  },
  'how the bench looks when the lesson begins',
);

/** What is said of a prediction, by how it compares with what happened. */
const outcome = strict(
  {
    right: about(words, 'within the tolerance'),
    tooLittle: about(words, 'the right way, but too little of it, or nothing'),
    tooMuch: about(words, 'the right way, but too much of it'),
    wrongWay: about(words, 'the other way'),
    why: about(words, 'said to everybody afterwards: why it came so'),
  },
  'what happened against what was predicted',
);

const sum = strict(
  {
    intro: words,
    quantity: about(v.optional(quantity), 'whose sum is shown; the one that was asked for when left out'),
    closing: about(words, 'the closing line'),
  },
  'the sum, line by line; the engine writes it',
);

/** A second case, to see whether it was understood. */
const check = strict(
  {
    aircraft: about(v.optional(embeddedAircraft), 'another aircraft; that of the lesson when left out'),
    begin: about(v.optional(list(change, 12)), 'how the bench stands at the start of it'),
    question: v.variant('by', [
      strict({ by: v.literal('marker'), ...question.entries }),
      strict({ by: v.literal('choice'), ...choiceQuestion.entries }),
    ]),
    right: words,
    wrong: words,
  },
  'one check on a new case',
);

const figureName = v.pipe(
  v.string('Expected a name of letters'),
  v.regex(/^[a-z][A-Za-z]*$/, 'Expected a name of letters'),
);

/** A figure that the words of the lesson may name: `{name}`. */
const namedFigure = strict({
  name: about(figureName, 'how the words call it: {name}'),
  change: about(list(change, 12), 'what is done to the bench first'),
  quantity,
  as: choice(['value', 'shift', 'times']),
});

export const lesson = strict(
  {
    format: v.literal(LESSON_FORMAT, `Expected "${LESSON_FORMAT}"`),
    version: v.literal(LESSON_VERSION, `Expected ${LESSON_VERSION}`),
    id,
    title: label,
    about: about(words, 'what it is about, for the list of lessons'),
    minutes: about(
      v.pipe(v.number(MINUTES_WANTED), v.minValue(3, MINUTES_WANTED), v.maxValue(5, MINUTES_WANTED)),
      'how long it takes',
    ),
    aircraft: embeddedAircraft,
    begin: about(
      v.optional(list(change, 12)),
      'how the bench stands at the start, where it is not as the file has it',
    ),
    look: v.optional(look),
    question,
    experiment: about(
      v.pipe(list(step, 8), v.minLength(1, 'Expected at least 1 step')),
      'what is done by hand',
    ),
    outcome,
    sum,
    check,
    figures: about(v.optional(list(namedFigure, 8)), 'further figures that the words may name'),
    closing: about(words, 'what to take home'),
    cautions: about(
      list(
        choice(['estimates', 'last-word', 'first-flight', 'propeller', 'fuel', 'lithium', 'turbine', 'lead']),
        8,
      ),
      'the usual cautions that stand with it',
    ),
    by: about(v.optional(label), 'who wrote it'),
  },
  'A lesson on the live bench. Lengths in mm from the datum (station aft +, buttline right +, waterline up +), masses in g, volumes in ml, inertia in kg·m², margins in % MAC. The answers are never in the file: the engine works them out from the aircraft and the change. Unknown keys are refused.',
);
