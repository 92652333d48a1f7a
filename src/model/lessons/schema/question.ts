import * as v from 'valibot';
import { about, choice, id, list } from '../../document/schema/fields';
import { change } from './change';
import { figure, positiveFigure, strict, words } from './fields';
import { quantity } from './quantity';

/** The axis that the marker is dragged along, in the unit of what is asked. */
const axis = strict(
  {
    least: figure,
    most: figure,
    start: about(figure, 'where the marker stands at first'),
    step: about(positiveFigure, 'the marker goes by so much'),
    within: about(positiveFigure, 'a prediction no farther off than this is right'),
  },
  'the axis that the marker is dragged along',
);

const asked = {
  ask: about(words, 'the question'),
  change: about(list(change, 12), 'what will be done to the bench; the answer follows from it'),
  quantity,
  as: about(
    choice(['value', 'shift', 'times']),
    'the figure itself after the change; by how much it moved; or how many times as much it is',
  ),
};

/** A question that is answered with a marker. The answer is never in the file: the engine works it out. */
export const question = strict({
  ...asked,
  from: about(v.optional(id), 'the reference point that stations are read from; the datum when left out'),
  axis,
  changesNothing: about(
    v.optional(v.boolean('Expected true or false')),
    'the point is that the figure stays as it was',
  ),
});

/** A question that is answered by choosing words. The engine says which are right by where its figure lies. */
export const choiceQuestion = strict({
  ...asked,
  options: v.pipe(
    list(
      strict({
        say: words,
        least: about(v.optional(figure), 'right where the figure is at least this'),
        most: about(v.optional(figure), 'right where the figure is at most this'),
      }),
      5,
    ),
    v.minLength(2, 'Expected at least 2 options'),
  ),
});
