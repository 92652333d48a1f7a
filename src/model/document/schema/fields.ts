import * as v from 'valibot';

/**
 * An object that keeps the keys it does not know, so that a file written by a later version, or by a
 * person's own hand, comes back whole. It is typed as if it had only its own keys.
 */
export const record = <const E extends v.ObjectEntries>(entries: E, description?: string) => {
  const object = v.looseObject(entries, 'Expected an object');
  const described = description === undefined ? object : v.pipe(object, v.description(description));
  return described as unknown as v.ObjectSchema<E, undefined>;
};

/** One of a few words. */
export const choice = <const W extends readonly string[]>(words: W) =>
  v.picklist(words, `Expected ${words.map((word) => `"${word}"`).join(' or ')}`);

/** Any number of them. */
export const list = <S extends v.GenericSchema>(item: S) => v.array(item, 'Expected a list');

/** The same schema with a sentence about it for the published JSON Schema. */
export const about = <S extends v.GenericSchema>(schema: S, description: string) =>
  v.pipe(schema, v.description(description)) as unknown as S;

/** A switch that is off when it is left out. */
export const flag = v.optional(v.boolean('Expected true or false'));

const number = (expected: string) => v.pipe(v.number(expected), v.finite(expected));
const atLeast0 = (expected: string) => v.pipe(number(expected), v.minValue(0, expected));
const between = (least: number, most: number, expected: string) =>
  v.pipe(number(expected), v.minValue(least, expected), v.maxValue(most, expected));

/** Any finite number. */
export const real = number('Expected a number');
/** A mass in g, 0 or more. */
export const massG = atLeast0('Expected 0 g or more');
/** A size in mm, more than 0. */
export const sizeMm = v.pipe(number('Expected more than 0 mm'), v.gtValue(0, 'Expected more than 0 mm'));
/** A number, 0 or more. */
export const realOrZero = atLeast0('Expected 0 or more');
/** A size in mm, 0 or more. */
export const sizeOrZeroMm = atLeast0('Expected 0 mm or more');
/** A volume in ml, 0 or more. */
export const volumeMl = atLeast0('Expected 0 ml or more');
/** A time in s, 0 or more. */
export const timeS = atLeast0('Expected 0 s or more');
/** A flow in ml/min, 0 or more. */
export const flowMlPerMin = atLeast0('Expected 0 ml/min or more');
/** An areal density in g/m², 0 or more. */
export const gPerM2 = atLeast0('Expected 0 g/m² or more');
/** A density in g/ml: foam may weigh nothing, gold weighs 19. */
export const gPerMl = between(0, 25, 'Expected 0 to 25 g/ml');
/** The density of a liquid in g/ml, more than 0. */
export const liquidGPerMl = v.pipe(
  between(0, 25, 'Expected more than 0 and at most 25 g/ml'),
  v.gtValue(0, 'Expected more than 0 and at most 25 g/ml'),
);
/** What a liquid's density may be off by, g/ml. */
export const liquidPlusMinusGPerMl = between(0, 1, 'Expected 0 to 1 g/ml');
/** A temperature that a model's fuel gets to, °C. */
export const fuelTemperatureC = between(-20, 60, 'Expected −20 to 60 °C');
/** An angle in degrees within ±360. */
export const angleDeg = between(-360, 360, 'Expected −360° to 360°');
/** An angle in degrees that a panel can stand at. */
export const dihedralDeg = between(-89, 89, 'Expected −89° to 89°');
/** 0 to 100. */
export const percent = between(0, 100, 'Expected 0 to 100 %');
/** A share, 0 to 1. */
export const unit = between(0, 1, 'Expected 0 to 1');

/** What a mass may be off by, as entered: two standard uncertainties. */
export const plusMinusG = about(
  v.optional(massG),
  'what the scales may be off by, g: two standard uncertainties',
);
/** What a place may be off by, as entered: two standard uncertainties. */
export const plusMinusMm = about(
  v.optional(sizeOrZeroMm),
  'what the place of its CG may be off by, mm: two standard uncertainties',
);

/** A direction in the aircraft's frame, of any length. */
export const direction = v.strictTuple([real, real, real], 'Expected a direction [x, y, z]');

/** [station, buttline, waterline] in mm from the datum. */
export const pointMm = v.pipe(
  v.strictTuple([real, real, real], 'Expected [station, buttline, waterline] in mm'),
  v.description('[station aft +, buttline right +, waterline up +], mm from the datum'),
);

/** A name for the machine: stable, unique in the file, never shown. */
export const id = v.pipe(
  v.string('Expected an id: lower-case letters, digits and hyphens'),
  v.regex(/^[a-z0-9][a-z0-9-]*$/, 'Expected an id: lower-case letters, digits and hyphens'),
);
/** A name for people. */
export const label = v.pipe(v.string('Expected a name'), v.minLength(1, 'Expected a name'));
