import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  formatAngle,
  formatArea,
  formatInertia,
  formatLength,
  formatMass,
  formatMoment,
  formatTime,
  formatVolume,
  fromOwnUnit,
  parseQuantity,
  type Quantity,
  toOwnUnit,
  type UnitSystem,
} from '../../../src/model/units';
import { between } from '../../between';

const thin = '\u202f';

function read(text: string, quantity: Quantity, system: UnitSystem = 'metric'): number | string {
  const parsed = parseQuantity(text, { quantity, system });
  return parsed.ok ? parsed.value : parsed.sentence;
}

describe('parseQuantity', () => {
  test.each([
    // NIST SP 811 (2008), appendix B: 1 in = 25.4 mm, 1 ft = 304.8 mm, 1 lb = 453.592 37 g exactly.
    ['1 in', 'length', 25.4],
    ['1 ft', 'length', 304.8],
    ['1 lb', 'mass', 453.59237],
    // 16 oz to the pound; the same table gives 28.349 52 g.
    ['16 oz', 'mass', 453.59237],
    ['1 oz', 'mass', 28.349523125],
    // NIST Handbook 44, appendix C: 1 US gallon = 128 fl oz = 231 in³ = 3.785 411 784 l exactly.
    ['128 fl oz', 'volume', 3785.411784],
  ] as const)('%s by definition', (text, quantity, value) => {
    expect(read(text, quantity)).toBeCloseTo(value, 9);
  });

  test.each([
    ['412+36', 'length', 448],
    ['412 − 36', 'length', 376],
    ['(150 + 305) / 2', 'length', 227.5],
    ['2 * 45', 'length', 90],
    ['12cm', 'length', 120],
    ['1,5 m', 'length', 1500],
    ['.5 m', 'length', 500],
    ['3 1/2 in', 'length', 88.9],
    ['3½"', 'length', 88.9],
    ['3 ½ ″', 'length', 88.9],
    ['3/4 in', 'length', 19.05],
    ['1 ft 6 in', 'length', 457.2],
    ['1\' 6"', 'length', 457.2],
    ['1’ 6”', 'length', 457.2],
    ['−(10 + 5)', 'length', -15],
    ['--5', 'length', 5],
    [`10${thin}000`, 'length', 10000],
    ['12 345,5', 'length', 12345.5],
    ['10 500 / 2', 'length', 5250],
    ['10 000 / 2', 'length', 5000],
    ['6/2 mm', 'length', 3],
    ['1,234.5', 'length', 1234.5],
    ['1.2 kg - 30', 'mass', 1170],
    ['1.2 KG - 30 Grams', 'mass', 1170],
    ['4.5 oz', 'mass', 4.5 * 28.349523125],
    ['1 lb 4 oz', 'mass', 20 * 28.349523125],
    ['0,125 kg', 'mass', 125],
    ['1.5 l', 'volume', 1500],
    ['250 cc', 'volume', 250],
    ['-2.5°', 'angle', -2.5],
    ['30 deg', 'angle', 30],
    ['11 min 40 s', 'time', 700],
    ['90', 'time', 90],
    ['12.5 %', 'ratio', 12.5],
    ['0.8', 'number', 0.8],
    ['0', 'mass', 0],
  ] as const)('reads %s', (text, quantity, value) => {
    expect(read(text, quantity)).toBeCloseTo(value, 9);
  });

  test('a bare number is in the person’s own unit, also within a sum', () => {
    expect(read('2', 'length', 'inch-ounce')).toBeCloseTo(50.8, 12);
    expect(read('2', 'mass', 'inch-ounce')).toBeCloseTo(2 * 28.349523125, 12);
    expect(read('10 mm + 1', 'length', 'inch-ounce')).toBeCloseTo(35.4, 12);
    expect(read('3', 'angle', 'inch-ounce')).toBe(3);
  });

  test('a conversion leaves no rounding noise in the file', () => {
    expect(read('3.5 in', 'length')).toBe(88.9);
    expect(Object.is(read('-0', 'length'), 0)).toBe(true);
  });

  test.each([
    ['', 'length', 'Expected a length'],
    ['abc', 'mass', 'not a unit of mass|Cannot read "abc"'],
    ['12 kg', 'length', '"kg" is not a unit of length'],
    ['4 oz', 'volume', '"oz" is not a unit of volume'],
    ['12 mm', 'number', 'Use a plain number'],
    ['1,200', 'mass', 'two ways: write 1200, or 1.200'],
    ['3-1/2 in', 'length', 'two ways: write 3 1/2, or 3 - 1/2'],
    ['5 *', 'mass', 'stops short'],
    ['5 +', 'mass', 'stops short'],
    ['(5 + 3', 'mass', 'not closed'],
    ['5)', 'mass', 'Cannot read'],
    ['2 mm * 3 mm', 'length', 'Only one side'],
    ['(6) / 2 mm', 'length', 'Divide by a plain number'],
    ['1/0', 'length', 'no finite value'],
    ['1 ft 6', 'length', 'unit of the last figure'],
    ['6 in 1 ft', 'length', 'cannot follow'],
    ['1e3', 'length', 'not a unit'],
    ['1 000 00', 'length', 'Cannot read'],
    ['1.2.3', 'length', 'Cannot read'],
    ['alert(1)', 'length', 'Cannot read|not a unit'],
  ] as const)('refuses %j in a sentence', (text, quantity, sentence) => {
    expect(read(text, quantity)).toMatch(new RegExp(sentence));
  });

  test('never throws, whatever is typed', () => {
    const typed = fc.oneof(fc.string(), fc.stringMatching(/^[0-9 .,+\-*/()a-z'"½]{0,20}$/));
    fc.assert(
      fc.property(typed, (text) => {
        const parsed = parseQuantity(text, { quantity: 'length', system: 'metric' });
        return parsed.ok ? Number.isFinite(parsed.value) : parsed.sentence.length > 10;
      }),
    );
  });
});

describe('formatting', () => {
  test('sensible digits, a true minus, thin spaces from 10 000 on', () => {
    expect(formatLength(603.4, 'metric')).toBe(`603${thin}mm`);
    expect(formatLength(603.44, 'metric', { fine: true })).toBe(`603.4${thin}mm`);
    expect(formatLength(603, 'inch-ounce')).toBe(`23.74${thin}in`);
    expect(formatMass(6940, 'metric')).toBe(`6940${thin}g`);
    expect(formatMass(12345, 'metric')).toBe(`12${thin}345${thin}g`);
    expect(formatMass(236, 'inch-ounce')).toBe(`8.32${thin}oz`);
    expect(formatVolume(500, 'inch-ounce')).toBe(`16.91${thin}fl oz`);
    expect(formatLength(-45, 'metric', { unit: false })).toBe('−45');
    expect(formatLength(1.1, 'metric', { fine: true, signed: true })).toBe(`+1.1${thin}mm`);
    expect(formatAngle(-2.5)).toBe('−2.5°');
  });

  test('what rounds to 0 has no sign', () => {
    expect(formatLength(-0.3, 'metric', { unit: false, signed: true })).toBe('0');
  });

  test('inertia is in kg·m² and moment in the person’s units', () => {
    // 1 kg at 1 m: 1 kg·m² = 10⁹ g·mm².
    expect(formatInertia(1e9)).toBe(`1.0000${thin}kg·m²`);
    expect(formatMoment(-78588, 'metric')).toBe(`−78${thin}588${thin}g·mm`);
    expect(formatMoment(28.349523125 * 25.4, 'inch-ounce')).toBe(`1.00${thin}oz·in`);
  });

  test('area is in dm², or in the square of the inch', () => {
    expect(formatArea(853_000, 'metric')).toBe(`85.3${thin}dm²`);
    expect(formatArea(100 * 25.4 ** 2, 'inch-ounce')).toBe(`100${thin}in²`);
  });

  test('time', () => {
    expect(formatTime(700)).toBe(`11${thin}min 40${thin}s`);
    expect(formatTime(59.6)).toBe(`1${thin}min 00${thin}s`);
    expect(formatTime(40)).toBe(`40${thin}s`);
    expect(formatTime(3900)).toBe(`1${thin}h 05${thin}min`);
  });

  test('what is shown can be typed back, to half of the last digit', () => {
    const systems = fc.constantFrom<UnitSystem>('metric', 'inch-ounce');
    fc.assert(
      fc.property(between(-1e6, 1e6), systems, (value, system) => {
        const lastDigit = { length: [1, 0.254], mass: [1, 0.2834952], volume: [1, 0.2957353] } as const;
        const column = system === 'metric' ? 0 : 1;
        for (const [quantity, show] of [
          ['length', formatLength],
          ['mass', formatMass],
          ['volume', formatVolume],
        ] as const) {
          const back = read(show(value, system), quantity, system);
          expect(typeof back).toBe('number');
          expect(Math.abs(Number(back) - value)).toBeLessThanOrEqual(lastDigit[quantity][column] / 2 + 1e-6);
        }
      }),
    );
  });
});

test('an entry of 500 characters is read, and a longer one is refused by its length', () => {
  const sum = (terms: number) => Array.from({ length: terms }, () => '1').join('+');
  // 250 ones and 249 signs, and a space.
  expect(read(`${sum(250)} `, 'length')).toBe(250);
  expect(read(`${sum(250)}  `, 'length')).toContain('at most 500 characters');
});

test.each(['90 s', '90 sec', '90 second', '1.5 min'])('%s is a minute and a half', (text) => {
  expect(read(text, 'time')).toBe(90);
});

test.each([
  // NIST SP 811 (2008), appendix B.
  [2, 'length', 'inch-ounce', 50.8],
  [2, 'length', 'metric', 2],
] as const)('%d of one’s own unit of %s, %s, in the file’s', (value, quantity, system, inFile) => {
  expect(fromOwnUnit(value, quantity, system)).toBeCloseTo(inFile, 9);
  expect(toOwnUnit(inFile, quantity, system)).toBeCloseTo(value, 9);
});
