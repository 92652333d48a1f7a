import * as v from 'valibot';
import { about, choice, list } from '../../document/schema/fields';
import { change } from './change';
import { figure, positiveFigure, strict, words } from './fields';
import { shownQuantity } from './quantity';

/** What the engine waits for. */
const goal = v.variant('by', [
  strict(
    {
      by: v.literal('change'),
      change: about(change, 'what has to be so on the bench'),
      within: about(
        v.optional(positiveFigure),
        'how far off still counts, in the unit of the change: mm, g, % of fuel, degrees, ml',
      ),
    },
    'a thing is done',
  ),
  strict(
    {
      by: v.literal('reach'),
      quantity: shownQuantity,
      least: about(v.optional(figure), 'at least this'),
      most: about(v.optional(figure), 'at most this'),
      way: about(list(change, 12), 'one way to get there, for the linter and for who asks to be shown'),
    },
    'a figure of the bench comes to lie between two',
  ),
]);

/** What is said to somebody who goes astray; what is left out, the bench says in words of its own. */
const hints = strict({
  other: about(v.optional(words), 'something else was changed: {item} is its name'),
  short: about(v.optional(words), 'right way, not far enough: {away} is what is wanting'),
  far: about(v.optional(words), 'right way, too far: {away} is how much'),
  wrongWay: about(v.optional(words), 'the wrong way'),
});

/** One thing to do by hand. */
export const step = strict(
  {
    do: about(words, 'what to do'),
    goal,
    rail: about(
      v.optional(choice(['station', 'buttline', 'waterline'])),
      'the axis that dragging is held to; free when left out',
    ),
    hints: v.optional(hints),
    after: about(v.optional(words), 'what is said once it is done'),
  },
  'one thing to do by hand',
);
