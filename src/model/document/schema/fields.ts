import * as v from 'valibot';
import { isName, isNote, LONGEST_NAME, NAME_WANTED } from '../names';
import { leastSizeMm, longestId, longestNote, most, mostFaultsOfList, mostOf } from './limits';

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

/**
 * A list of so many at most. One that is too long is reported as that alone, and a list of which very much is wrong is
 * not read to its end: no file can make the reading take long.
 */
export const list = <S extends v.GenericSchema>(item: S, longest: number = mostOf.entries) => {
  const array = v.array(item, 'Expected a list');
  const length = v.maxLength<v.InferOutput<typeof array>, number, string>(
    longest,
    `Expected at most ${longest} entries`,
  );
  const run: (typeof array)['~run'] = (dataset, config) => {
    const { value } = dataset;
    if (!Array.isArray(value)) return array['~run'](dataset, config);
    if (value.length > longest) return length['~run']({ typed: true, value }, config) as never;
    const issues = issuesOf(value, item, config);
    return (issues ? { typed: false, value, issues } : { typed: true, value }) as never;
  };
  return v.pipe({ ...array, '~run': run }, length);
};

/** Said of the list itself, so that nobody trusts the entries that were not looked at. */
const notReadOn = (input: unknown[]): v.BaseIssue<unknown> => ({
  kind: 'schema',
  type: 'array',
  input,
  expected: 'Array',
  received: 'Array',
  message: 'Expected fewer faults: the rest of the list was not looked at',
});

/** What is wrong with the entries, each issue with its place; undefined when nothing is. */
function issuesOf(
  input: unknown[],
  item: v.GenericSchema,
  config: v.Config<v.BaseIssue<unknown>>,
): [v.BaseIssue<unknown>, ...v.BaseIssue<unknown>[]] | undefined {
  const issues: v.BaseIssue<unknown>[] = [];
  for (const [key, value] of input.entries()) {
    for (const issue of item['~run']({ value }, config).issues ?? []) {
      const place = { type: 'array', origin: 'value', input, key, value } as const;
      issues.push({ ...issue, path: [place, ...(issue.path ?? [])] });
    }
    if (issues.length >= mostFaultsOfList) {
      issues.push(notReadOn(input));
      break;
    }
  }
  const [first, ...others] = issues;
  return first && [first, ...others];
}

/** The same schema with a sentence about it for the published JSON Schema. */
export const about = <S extends v.GenericSchema>(schema: S, description: string) =>
  v.pipe(schema, v.description(description)) as unknown as S;

/** A switch that is off when it is left out. */
export const flag = v.optional(v.boolean('Expected true or false'));

const grouped = (value: number) => String(value).replace(/\B(?=(\d{3})+$)/g, ' ');
const upTo = (greatest: number, symbol: string) =>
  `Expected at most ${grouped(greatest)} ${symbol}`.trimEnd();
/** From 0 up to a limit that nobody who measures meets. */
const atLeast0 = (expected: string, greatest: number, symbol: string) =>
  v.pipe(v.number(expected), v.minValue(0, expected), v.maxValue(greatest, upTo(greatest, symbol)));
const between = (least: number, greatest: number, expected: string) =>
  v.pipe(v.number(expected), v.minValue(least, expected), v.maxValue(greatest, expected));
/** Either side of 0, up to a limit that nobody who measures meets. */
const within = (greatest: number, symbol: string) =>
  v.pipe(
    v.number('Expected a number'),
    v.minValue(-greatest, `Expected at least −${grouped(greatest)} ${symbol}`.trimEnd()),
    v.maxValue(greatest, upTo(greatest, symbol)),
  );

/** A station, a buttline or a waterline, or how far a thing lies from another, mm. */
export const placeMm = within(most.lengthMm, 'mm');
/** A place or a margin in % of the MAC. */
export const percentOfMac = within(most.percentOfMac, '% MAC');
/** An entry of an inertia tensor, g·mm². */
export const inertiaGmm2 = within(most.inertiaGmm2, 'g·mm²');
/** A whole number: which comes first. */
export const rank = v.pipe(within(most.rank, ''), v.integer('Expected a whole number'));
/** A mass in g, 0 or more. */
export const massG = atLeast0('Expected 0 g or more', most.massG, 'g');
/** A size in mm, more than 0. */
export const sizeMm = v.pipe(
  v.number('Expected more than 0 mm'),
  v.minValue(leastSizeMm, `Expected more than 0 mm, ${leastSizeMm} mm at least`),
  v.maxValue(most.lengthMm, upTo(most.lengthMm, 'mm')),
);
/** A load factor, 0 or more, multiples of g. */
export const loadFactor = atLeast0('Expected 0 or more', most.loadFactor, '');
/** A size in mm, 0 or more. */
export const sizeOrZeroMm = atLeast0('Expected 0 mm or more', most.lengthMm, 'mm');
/** A volume in ml, 0 or more. */
export const volumeMl = atLeast0('Expected 0 ml or more', most.volumeMl, 'ml');
/** A time in s, 0 or more. */
export const timeS = atLeast0('Expected 0 s or more', most.timeS, 's');
/** A flow in ml/min, 0 or more. */
export const flowMlPerMin = atLeast0('Expected 0 ml/min or more', most.flowMlPerMin, 'ml/min');
/** An areal density in g/m², 0 or more. */
export const gPerM2 = atLeast0('Expected 0 g/m² or more', most.gPerM2, 'g/m²');
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

const along = within(most.direction, '');
/** A direction in the aircraft's frame, of any length. */
export const direction = v.strictTuple([along, along, along], 'Expected a direction [x, y, z]');

/** [station, buttline, waterline] in mm from the datum. */
export const pointMm = v.pipe(
  v.strictTuple([placeMm, placeMm, placeMm], 'Expected [station, buttline, waterline] in mm'),
  v.description('[station aft +, buttline right +, waterline up +], mm from the datum'),
);

const ID_WANTED = 'Expected an id: lower-case letters, digits and hyphens';
/** A name for the machine: stable, unique in the file, never shown. */
export const id = v.pipe(
  v.string(ID_WANTED),
  v.regex(/^[a-z0-9][a-z0-9-]*$/, ID_WANTED),
  v.maxLength(longestId, `Expected an id of at most ${longestId} characters`),
);
/** The other one of a mirrored pair. */
export const twinId = about(
  v.optional(id),
  'the part or tank on the other side that mirrors this one: what is done to one is done to the other; each names the other',
);
/** A name for people. */
export const label = v.pipe(
  v.string('Expected a name'),
  v.minLength(1, 'Expected a name'),
  v.maxLength(LONGEST_NAME, `Expected ${NAME_WANTED}`),
  v.check((text) => text === '' || text.length > LONGEST_NAME || isName(text), `Expected ${NAME_WANTED}`),
);
/** A note, of several lines if it likes. */
export const note = v.pipe(
  v.string('Expected text'),
  v.maxLength(longestNote, `Expected text of at most ${grouped(longestNote)} characters`),
  v.check(isNote, 'Expected text without control characters and marks that turn the reading direction'),
);
