import * as v from 'valibot';

/** An object with these keys and no others: a slip in a lesson is refused, never ignored. */
export const strict = <const E extends v.ObjectEntries>(entries: E, description?: string) => {
  const object = v.strictObject(entries, 'Expected an object');
  return (description === undefined
    ? object
    : v.pipe(object, v.description(description))) as unknown as v.StrictObjectSchema<E, undefined>;
};

const LONGEST_TEXT = 600;
const TEXT_WANTED = `Expected text of 1 to ${LONGEST_TEXT} characters`;

/**
 * Words of the lesson. `{300 mm}`, `{40 g}` and `{250 ml}` are written in the person's units; `{answer}` and the like are
 * filled in by the engine (`placeholders.ts`).
 */
export const words = v.pipe(
  v.string(TEXT_WANTED),
  v.minLength(1, TEXT_WANTED),
  v.maxLength(LONGEST_TEXT, TEXT_WANTED),
);

/** A figure that only its quantity gives a unit. */
export const figure = v.pipe(
  v.number('Expected a number'),
  v.minValue(-1e6, 'Expected at least −1 000 000'),
  v.maxValue(1e6, 'Expected at most 1 000 000'),
);

/** More than nothing. */
export const positiveFigure = v.pipe(figure, v.gtValue(0, 'Expected more than 0'));
