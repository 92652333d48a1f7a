import { expect, test } from 'vitest';
import { balanceAt, LEVEL } from '../../../src/model/balance/balance';
import { momentSheet, sheetText, workingSheet } from '../../../src/model/words/workingSheet';
import { aircraftOf, boxPart } from '../aircraft';
import { estimateAt } from '../judgement/estimate';

const aircraft = aircraftOf(
  [],
  [boxPart('camera', 640, [152, 20, -20]), boxPart('pack', 478, [283, -30, -30])],
);
const balance = balanceAt(aircraft, { fuelFraction: 1, down: LEVEL });
const datum = { name: 'the datum', mm: 0 };

test('by hand, from the datum: 97 280 + 135 274 = 232 554 g·mm over 1118 g is 208.0 mm', () => {
  const sheet = workingSheet('station', aircraft, balance, 'metric', datum)!;
  const plain = (text: string | undefined) => text?.replaceAll('\u202f', '');
  expect(sheet.rows.map((row) => row.map(plain))).toEqual([
    ['camera', '640', '152.0', '97280.0'],
    ['pack', '478', '283.0', '135274.0'],
  ]);
  expect(sheet.total?.map(plain)).toEqual(['Total', '1118', '', '232554.0']);
  expect(plain(sheet.steps.at(-1))).toBe('232554.0 ÷ 1118 = 208.0 mm');
});

test('from a reference point at 100 mm the arms and the CG are 100 mm less', () => {
  const sheet = workingSheet('station', aircraft, balance, 'metric', { name: '“Wing root”', mm: 100 })!;
  expect(sheet.rows.map((row) => row[2])).toEqual(['52.0', '183.0']);
  expect(sheet.steps.at(-1)).toMatch(/= 108\.0 mm$/);
  expect(sheet.says).toContain('“Wing root”');
});

test('in inches and ounces the printed figures give the printed CG: 208.0 mm is 8.19 in', () => {
  const sheet = workingSheet('station', aircraft, balance, 'inch-ounce', datum)!;
  const figures = sheet.rows.map((row) => row.slice(1).map(Number));
  const mass = figures.reduce((sum, [own = 0]) => sum + own, 0);
  const moment = figures.reduce((sum, [own = 0, arm = 0]) => sum + own * arm, 0);
  expect((moment / mass).toFixed(2)).toBe((208.0089 / 25.4).toFixed(2));
  expect(sheet.steps.at(-1)).toMatch(/= 8\.19 in$/);
});

test('a thing’s moment about the CG: 640 × (152 − 208.0) with as many decimals as it needs', () => {
  const sheet = momentSheet('camera', 640, 152, balance.cgMm![0], 'metric', datum);
  // 640 × (152 − 232554/1118), rounded.
  const wanted = Math.round(640 * (152 - 232554 / 1118));
  const [, cg = ''] = sheet.rows[2]!;
  expect(Math.round(640 * (152 - Number(cg)))).toBe(wanted);
  expect(sheet.steps.at(-1)?.replaceAll('\u202f', '').replaceAll('\u2212', '-')).toContain(
    `= ${wanted} g·mm`,
  );
});

test('no mass has no working; without an estimate there is no margin', () => {
  const empty = aircraftOf([], []);
  const nothing = balanceAt(empty, { fuelFraction: 1, down: LEVEL });
  expect(workingSheet('station', empty, nothing, 'metric', datum)).toBeNull();
  expect(workingSheet('margin', aircraft, balance, 'metric', datum)).toBeNull();
});

test('as text, every line of the table is as wide as the widest', () => {
  const text = sheetText('CG station', workingSheet('station', aircraft, balance, 'metric', datum)!);
  const lines = text.split('\n');
  const table = lines.slice(3, 9);
  expect(lines[0]).toBe('CG station');
  expect(
    new Set(table.filter((line) => line.includes('.0') || line.startsWith('-')).map(({ length }) => length))
      .size,
  ).toBe(1);
  expect(text).toMatch(/÷ 1118 = 208\.0 mm\n$/);
});

const plainText = (text: string | undefined) => text?.replaceAll('\u202f', '').replaceAll('\u2212', '-');

test('across and up: arms from the plane of symmetry and from the datum, whatever stations are read from', () => {
  // 640·20 + 478·(−30) = −1540; 640·(−20) + 478·(−30) = −27140.
  const root = { name: '“Wing root”', mm: 100 };
  const across = workingSheet('buttline', aircraft, balance, 'metric', root)!;
  expect(across.says).toBe(
    'Mass × arm = moment for everything aboard, arms from the plane of symmetry, right +.',
  );
  expect(across.rows.map((row) => row.map(plainText))).toEqual([
    ['camera', '640', '20.0', '12800.0'],
    ['pack', '478', '-30.0', '-14340.0'],
  ]);
  expect(plainText(across.steps.at(-1))).toBe('-1540.0 ÷ 1118 = -1.4 mm');
  const up = workingSheet('waterline', aircraft, balance, 'metric', root)!;
  expect(up.says).toBe('Mass × arm = moment for everything aboard, arms from the datum, up +.');
  expect(plainText(up.steps.at(-1))).toBe('-27140.0 ÷ 1118 = -24.3 mm');
  expect(workingSheet('station', aircraft, balance, 'metric', root)!.says).toMatch(/, aft \+\.$/);
});

test('the mass is the sum of the masses alone', () => {
  const sheet = workingSheet('mass', aircraft, balance, 'metric', datum)!;
  expect(sheet.head).toEqual(['', 'Mass, g']);
  expect(sheet.rows).toEqual([
    ['camera', '640'],
    ['pack', '478'],
  ]);
  expect(sheet.total?.map(plainText)).toEqual(['Total', '1118']);
  expect(sheet.steps.map(plainText)).toEqual(['Mass = 1118 g']);
});

test('the margin: neutral point less CG over the chord, from the chosen point', () => {
  // 230 − 208.0 = 22.0 mm of 200 mm is 11.0 %.
  const estimated = { ...balance, estimate: estimateAt(230) };
  const sheet = workingSheet('margin', aircraft, estimated, 'metric', { name: 'the nose', mm: 30 })!;
  expect(sheet.rows.map((row) => row.map(plainText))).toEqual([
    ['Neutral point, estimated', '200.0'],
    ['CG', '178.0'],
    ['Mean aerodynamic chord', '200.0'],
  ]);
  expect(sheet.total).toBeNull();
  expect(plainText(sheet.steps.at(-1))).toBe(
    '(200.0 - 178.0) ÷ 200.0 × 100 = 22.0 ÷ 200.0 × 100 = 11.0 % MAC',
  );
  expect(sheet.says).toContain('from the nose.');
});

test('a moment about the CG is read from the chosen point, and its sign says the way', () => {
  const aft = momentSheet('Lead', 100, 300, 250, 'metric', { name: 'the nose', mm: 50 });
  expect(aft.rows.map((row) => row.map(plainText))).toEqual([
    ['Mass', '100.0'],
    ['Station of its CG', '250.0'],
    ['Station of the CG', '200.0'],
  ]);
  expect(plainText(aft.steps.at(-1))).toBe('100.0 × (250.0 - 200.0) = 100.0 × 50.0 = +5000 g·mm');
  const forward = momentSheet('Lead', 100, 200, 250, 'metric', datum);
  expect(plainText(forward.steps.at(-1))).toMatch(/= -5000 g·mm$/);
});

test('as text: names to the left, figures to the right, a rule above and below the rows', () => {
  const text = plainText(sheetText('Sum', workingSheet('mass', aircraft, balance, 'metric', datum)!))!;
  expect(text.split('\n')).toEqual([
    'Sum',
    'Everything aboard with the fuel shown, added up.',
    '',
    '        Mass, g',
    '---------------',
    'camera      640',
    'pack        478',
    '---------------',
    // A thousand is parted by a thin space, which stands in the width.
    expect.stringMatching(/^Total +1118$/),
    '',
    'Mass = 1118 g',
    '',
  ]);
});
