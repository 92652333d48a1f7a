import { type Break, drop, set } from './breaks';

/** Faults that the reader tells: where, what was expected, what came. */
export const unread: readonly Break[] = [
  [
    'another format',
    'see-saw',
    set('format', 'a lesson'),
    /^format: expected "counterpoise lesson", got "a lesson"/,
  ],
  [
    'a later version',
    'see-saw',
    set('version', 9),
    /^version: expected 1 at most: a later bench wrote this, got 9/,
  ],
  ['a text for a version', 'see-saw', set('version', '1'), /^version: expected 1, got "1"/],
  ['no title', 'see-saw', drop('title'), /^title: expected a name, got nothing/],
  ['an unknown field', 'see-saw', set('question.answer', 368), /^question: unknown key "answer"/],
  ['an unknown field at the top', 'see-saw', set('teacher', 'x'), /^the file: unknown key "teacher"/],
  ['two minutes', 'see-saw', set('minutes', 2), /^minutes: expected 3 to 5 minutes, got 2/],
  ['six minutes', 'see-saw', set('minutes', 6), /^minutes: expected 3 to 5 minutes, got 6/],
  ['a bad id', 'see-saw', set('id', 'See saw'), /^id: expected an id/],
  ['no steps', 'see-saw', set('experiment', []), /^experiment: expected at least 1 step/],
  [
    'an unknown quantity',
    'see-saw',
    set('question.quantity.of', 'luck'),
    /^question › quantity › of: expected .*cgStation/,
  ],
  [
    'an unknown change',
    'see-saw',
    set('question.change.0.do', 'paint'),
    /^question › change\[0\] › do: expected .*place/,
  ],
  [
    'an unknown way to ask',
    'see-saw',
    set('question.as', 'much'),
    /^question › as: expected "value" or "shift" or "times"/,
  ],
  ['an unknown caution', 'see-saw', set('cautions.0', 'rain'), /^cautions\[0\]: expected .*"estimates"/],
  ['an empty text', 'see-saw', set('closing', ''), /^closing: expected text of 1 to 600 characters/],
  [
    'a long text',
    'see-saw',
    set('closing', 'a'.repeat(601)),
    /^closing: expected text of 1 to 600 characters/,
  ],
  ['a list for a text', 'see-saw', set('closing', ['x']), /^closing: expected text.*got a list of 1/],
  ['no tolerance', 'see-saw', set('question.axis.within', 0), /within: expected more than 0, got 0/],
  [
    'one option',
    'see-saw',
    (j) => j.check.question.options.splice(1),
    /options: expected at least 2 options/,
  ],
  [
    'no aircraft',
    'see-saw',
    drop('aircraft'),
    /^aircraft: expected an aircraft, as the bench saves it, got nothing/,
  ],
  [
    'an aircraft with a fault',
    'see-saw',
    set('aircraft.parts.1.massG', -1),
    /^aircraft › parts\[1\] "Flight pack" › massG: expected 0 g or more, got -1/,
  ],
  [
    'an aircraft with a slip',
    'see-saw',
    set('aircraft.parts.1.lockd', true),
    /^aircraft › parts\[1\] "Flight pack": unknown key "lockd", did you mean "locked"/,
  ],
  ['two parts of one id', 'see-saw', set('aircraft.parts.0.id', 'pack'), /^aircraft › parts\[1\].*pack/],
  [
    'a check’s aircraft with a fault',
    'see-saw',
    (j) => (j.check.aircraft = { ...j.aircraft, name: '' }),
    /^check › aircraft › name: expected a name/,
  ],
];
