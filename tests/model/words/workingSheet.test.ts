import { expect, test } from 'vitest';
import { balanceAt, LEVEL } from '../../../src/model/balance/balance';
import { momentSheet, sheetText, workingSheet } from '../../../src/model/words/workingSheet';
import { aircraftOf, boxPart } from '../aircraft';

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
