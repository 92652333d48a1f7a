import * as v from 'valibot';
import { about, flag, id, label, list, record } from './fields';
import { mostOf } from './limits';

const position = record({
  id,
  name: label,
  without: about(v.optional(list(id)), 'ids of the parts, tanks and structure that are not aboard'),
  onStand: about(flag, 'only ever so on the balancing stand; the verdict on all load states leaves it out'),
  empty: about(v.optional(list(id)), 'ids of the tanks that hold nothing'),
});

/** Something that is in exactly one of its positions: payload on or off, canopy on or off, ballast tank full or empty. */
export const loadSwitch = record(
  {
    id,
    name: label,
    positions: v.pipe(list(position, mostOf.positions), v.minLength(2, 'Expected at least 2 positions')),
  },
  'something that can be aboard or not; the first position is how the bench starts',
);
