import * as v from 'valibot';

/**
 * An object that keeps the keys it does not know, so that a file written by a later version, or by a
 * person's own hand, comes back whole. It is typed as if it had only its own keys.
 */
export const record = <const E extends v.ObjectEntries>(entries: E) =>
  v.looseObject(entries) as unknown as v.ObjectSchema<E, undefined>;

/** Any finite number. */
export const real = v.pipe(v.number(), v.finite('Expected a finite number'));
/** A mass in g, 0 or more. */
export const massG = v.pipe(v.number(), v.finite(), v.minValue(0, 'Expected 0 or more grams'));
/** A size in mm, more than 0. */
export const sizeMm = v.pipe(v.number(), v.finite(), v.gtValue(0, 'Expected more than 0 mm'));
/** A size in mm, 0 or more. */
export const sizeOrZeroMm = v.pipe(v.number(), v.finite(), v.minValue(0, 'Expected 0 mm or more'));
/** A volume in ml, 0 or more. */
export const volumeMl = v.pipe(v.number(), v.finite(), v.minValue(0, 'Expected 0 ml or more'));
/** An angle in degrees within ±360. */
export const angleDeg = v.pipe(v.number(), v.finite(), v.minValue(-360), v.maxValue(360));
/** 0 to 100. */
export const percent = v.pipe(v.number(), v.finite(), v.minValue(0), v.maxValue(100));
/** A share, 0 to 1. */
export const unit = v.pipe(v.number(), v.finite(), v.minValue(0), v.maxValue(1));

/** [station, buttline, waterline] in mm from the datum. */
export const pointMm = v.pipe(
  v.tuple([real, real, real], 'Expected [station, buttline, waterline] in mm'),
  v.description('[station aft +, buttline right +, waterline up +], mm from the datum'),
);

/** A name for the machine: stable, unique in the file, never shown. */
export const id = v.pipe(
  v.string(),
  v.regex(/^[a-z0-9][a-z0-9-]*$/, 'Expected lower-case letters, digits and hyphens'),
);
/** A name for people. */
export const label = v.pipe(v.string(), v.minLength(1, 'Expected a name'));
