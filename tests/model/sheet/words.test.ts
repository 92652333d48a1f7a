import { expect, test } from 'vitest';
import { LEVEL } from '../../../src/model/balance/balance';
import { blankAircraft } from '../../../src/model/document/blank';
import type { Aircraft } from '../../../src/model/document/types';
import { judge } from '../../../src/model/judgement/judge';
import { judgeFully } from '../../../src/model/judgement/judgeFully';
import type { BuildSheet } from '../../../src/model/sheet/sheet';
import { buildSheet } from '../../../src/model/sheet/sheet';
import { demo, NAMES, withPartAt } from '../../demo/demoAircraft';
import { inputOf } from './sheetOf';

const allWords = ({ sections, card, banner }: BuildSheet): string =>
  JSON.stringify({
    words: sections.map(({ blocks }) => blocks.filter(({ kind }) => kind !== 'drawing')),
    card,
    banner,
  });

test('an aircraft in which nothing stands in the way has no banner', () => {
  const sheet = buildSheet(inputOf(demo('sandmartin'), { more: { leftOut: ['drawings', 'templates'] } }));
  expect(sheet.banner).toBeNull();
  expect(sheet.card?.banner).toBeNull();
  expect(allWords(sheet)).not.toMatch(/approved|safe to fly|ready to fly:/i);
});

test('tail-heavy, a clash and what nobody has checked each say so on the sheet and on the card', () => {
  const aircraft = demo('sandmartin');
  const light = {
    leftOut: ['drawings', 'parts', 'fitting', 'templates', 'cg', 'weighing', 'checks'],
  } as const;
  const tail = withPartAt(aircraft, 'flight-pack', [1000, 0, 0]);
  const tailSheet = buildSheet(inputOf(tail, { more: light }));
  expect(tailSheet.banner).toMatch(/^Not ready to fly: tail-heavy by \d+/);
  expect(tailSheet.card?.banner).toBe(tailSheet.banner);

  const camera = aircraft.parts.find(({ id }) => id === 'camera')!;
  const clash = withPartAt(aircraft, 'ignition-pack', camera.positionMm);
  const judged = judgeFully(clash, { down: LEVEL, estimate: null });
  expect(buildSheet(inputOf(clash, { more: light, judgement: judged })).banner).toMatch(
    /^Not ready to fly: .*(does not fit|tail-heavy|nose-heavy)/,
  );

  const unchecked = judge(aircraft, {
    down: LEVEL,
    estimate: null,
    loads: { status: 'unfinished' },
    fit: null,
    certainty: null,
  });
  const banner = buildSheet(inputOf(aircraft, { judgement: unchecked, more: light })).banner;
  expect(banner).toMatch(/^Not ready to fly: the fit is not checked/);
});

test('only the cautions that apply stand in the checks', () => {
  const heed = (name: (typeof NAMES)[number]) =>
    buildSheet(
      inputOf(demo(name), {
        more: { leftOut: ['drawings', 'parts', 'fitting', 'templates', 'cg', 'weighing', 'card'] },
      }),
    ).sections[0]!.blocks.flatMap((block) => (block.kind === 'tick' && block.note ? [block.text] : []));
  expect(heed('fieldfare')).toContain('Turbines');
  expect(heed('fieldfare')).not.toContain('Propellers and rotors');
  expect(heed('whimbrel')).not.toContain('Fuel');
  expect(heed('whimbrel')).toContain('Lithium packs');
  // The glider’s water burns nobody.
  expect(heed('corncrake')).not.toContain('Fuel');
  expect(heed('sandmartin')).toContain('Lead');
});

test('what is left out is not there', () => {
  const sheet = buildSheet(
    inputOf(demo('whimbrel'), { more: { leftOut: ['drawings', 'card', 'templates'] } }),
  );
  expect(sheet.sections.map(({ id }) => id)).toEqual(['parts', 'fitting', 'cg', 'weighing', 'checks']);
  expect(sheet.card).toBeNull();
});

test('inches and ounces: no millimetre and no gram is left among the words', () => {
  for (const name of NAMES) {
    const input = inputOf(demo(name), { units: 'inch-ounce', more: { leftOut: ['drawings', 'templates'] } });
    const words = allWords(buildSheet(input)).replace(/certain to 0\.1 mm/g, '');
    expect(words.match(/\d[\u202f ]mm\b|\d\u202fg\b/g) ?? [], name).toEqual([]);
  }
});

const odd: readonly (readonly [string, (from: Aircraft) => Aircraft])[] = [
  ['an empty bench', () => blankAircraft()],
  ['no structure', (from) => ({ ...from, structure: [] })],
  ['no part and no tank', (from) => ({ ...from, parts: [], tanks: [] })],
  ['no band', (from) => ({ ...from, targetBand: null })],
  [
    'nothing weighs anything',
    (from) => ({
      ...from,
      structure: [],
      tanks: [],
      parts: from.parts.map((part) => ({ ...part, massG: 0 })),
    }),
  ],
  [
    'a name as long as one may be',
    (from) => ({
      ...from,
      name: 'W'.repeat(200),
      parts: from.parts.map((part) => ({ ...part, name: 'M'.repeat(200) })),
    }),
  ],
  [
    'a hundred more parts',
    (from) => ({
      ...from,
      parts: [
        ...from.parts,
        ...Array.from({ length: 100 }, (_, at) => ({
          ...from.parts[0]!,
          id: `more-${at}`,
          name: `More ${at}`,
        })),
      ],
    }),
  ],
];

test.each(odd)('%s makes a sheet without a figure that is none', (_, change) => {
  const aircraft = change(demo('sandmartin'));
  const sheet = buildSheet(inputOf(aircraft));
  const text = JSON.stringify(sheet);
  // A figure that is none is written as null in JSON.
  const shapes = JSON.stringify(
    sheet.sections.flatMap(({ blocks }) =>
      blocks.flatMap((block) => (block.kind === 'drawing' ? [block.drawing] : [])),
    ),
  );
  expect(shapes.replace(/"line":null/g, '')).not.toMatch(/null/);
  expect(text).not.toMatch(/NaN|Infinity|undefined/);
});
