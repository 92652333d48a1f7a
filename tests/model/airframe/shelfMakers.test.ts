import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { volumeProperties } from '../../../src/engine/mass/volumeProperties';
import { typicalPackMass } from '../../../src/engine/power/cells';
import { type ShelfPart, shelf } from '../../../src/model/airframe/shelf';
import {
  chemistries,
  controllerOf,
  engineOf,
  madeByClass,
  motorOf,
  packOf,
  receiverClasses,
  servoClasses,
  turbineOf,
} from '../../../src/model/airframe/shelfMakers';
import { blankAircraft } from '../../../src/model/document/blank';
import { addPart } from '../../../src/model/document/edit';
import { readAircraft } from '../../../src/model/reading/read';
import { seed } from '../../seed';

const gPerMl = ({ massG, shape }: ShelfPart) => massG / (volumeProperties(shape).volumeMm3 / 1000);
const onShelf = (name: string) => shelf.find((part) => part.name === name)!;

const any: fc.Arbitrary<ShelfPart> = fc.oneof(
  fc
    .record({
      chemistry: fc.constantFrom(...chemistries),
      cells: fc.integer({ min: 1, max: 14 }),
      capacityMah: fc.integer({ min: 100, max: 30_000 }),
    })
    .map(packOf),
  fc.integer({ min: 20, max: 15_000 }).map(motorOf),
  fc.integer({ min: 5, max: 300 }).map(controllerOf),
  fc.integer({ min: 8, max: 250 }).map((cc) => engineOf('petrol', cc)),
  fc.integer({ min: 1, max: 60 }).map((cc) => engineOf('methanol', cc)),
  fc.integer({ min: 20, max: 400 }).map(turbineOf),
  fc.constantFrom(...servoClasses, ...receiverClasses),
);

describe('things made from their class', () => {
  test('are sound, marked typical with a spread, and neither air nor lead', () => {
    fc.assert(
      fc.property(any, (part) => {
        const { aircraft } = addPart(blankAircraft(), { ...part, positionMm: [0, 0, 0] });
        const read = readAircraft(aircraft);
        expect(read.ok || read.faults[0]?.sentence).toBe(true);
        expect(part).toMatchObject({ massFrom: 'typical', sizeFrom: 'typical' });
        expect(part.plusMinusG!).toBeGreaterThan(0.05 * part.massG);
        expect(part.plusMinusG!).toBeLessThan(0.6 * part.massG);
        // Common practice, no source: nothing but ballast is as dense as steel.
        expect(gPerMl(part)).toBeGreaterThan(0.15);
        expect(gPerMl(part)).toBeLessThan(6);
      }),
      { numRuns: 300, seed },
    );
  });

  // Linden and Reddy, Handbook of Batteries (from memory), cells alone; a pack has leads and a sleeve besides, a third at most.
  test.each([
    ['lipo', 3.7, 130, 220],
    ['li-ion', 3.6, 150, 240],
    ['lifepo4', 3.2, 90, 120],
    ['nimh', 1.2, 60, 100],
  ] as const)('a %s pack holds as much for its mass as its cells can', (chemistry, volts, least, most) => {
    for (const cells of [2, 4, 6, 12]) {
      const { massG } = packOf({ chemistry, cells, capacityMah: 3000 });
      const whPerKg = (1000 * cells * volts * 3) / massG;
      expect(whPerKg).toBeGreaterThan(least / 1.34);
      expect(whPerKg).toBeLessThan(most);
    }
  });

  test('a pack from its class is what the wiring calls typical for such a one, to its rounding', () => {
    const names = { lipo: 'lipo', 'li-ion': 'liion', lifepo4: 'life', nimh: 'nimh' } as const;
    for (const chemistry of chemistries) {
      const { massG, plusMinusG } = packOf({ chemistry, cells: 4, capacityMah: 3000 });
      const typical = typicalPackMass(names[chemistry], 4, 3000);
      // Above 100 g in steps of 5 g, below in whole grams.
      expect(Math.abs(massG - typical.massG)).toBeLessThanOrEqual(2.5);
      expect(Math.abs(plusMinusG! - typical.plusMinusG)).toBeLessThanOrEqual(2.5);
    }
  });

  test('more of it weighs more', () => {
    const grows = (make: (size: number) => ShelfPart, sizes: readonly number[]) => {
      const masses = sizes.map((size) => make(size).massG);
      expect(masses).toEqual([...masses].sort((a, b) => a - b));
    };
    grows(motorOf, [50, 200, 800, 3000]);
    grows(controllerOf, [10, 40, 120]);
    grows((cc) => engineOf('petrol', cc), [10, 30, 100]);
    grows(turbineOf, [40, 100, 220]);
    grows((cells) => packOf({ chemistry: 'lipo', cells, capacityMah: 2200 }), [1, 2, 3, 6, 12]);
  });

  test.each([
    ['Pack 2S 1000 mAh', packOf({ chemistry: 'lipo', cells: 2, capacityMah: 1000 })],
    ['Pack 3S 2200 mAh', packOf({ chemistry: 'lipo', cells: 3, capacityMah: 2200 })],
    ['Pack 4S 3300 mAh', packOf({ chemistry: 'lipo', cells: 4, capacityMah: 3300 })],
    ['Pack 6S 5000 mAh', packOf({ chemistry: 'lipo', cells: 6, capacityMah: 5000 })],
    ['Pack 12S 5000 mAh', packOf({ chemistry: 'lipo', cells: 12, capacityMah: 5000 })],
    ['Motor, 300 W class', motorOf(300)],
    ['Motor, 1.5 kW class', motorOf(1500)],
    ['Motor, 4 kW class', motorOf(4000)],
    ['Petrol engine 20 cc', engineOf('petrol', 20)],
    ['Petrol engine 60 cc', engineOf('petrol', 60)],
    ['Turbine 80 N', turbineOf(80)],
    ['Turbine 140 N', turbineOf(140)],
    ['Speed controller 40 A', controllerOf(40)],
    ['Speed controller 120 A', controllerOf(120)],
  ])('%s lies within the spread of its class, and is about as large', (name, part) => {
    const fixed = onShelf(name);
    expect(madeByClass(name)).toBe(true);
    expect(Math.abs(part.massG - fixed.massG)).toBeLessThanOrEqual(part.plusMinusG!);
    const ratio = gPerMl(part) / gPerMl(fixed);
    expect(ratio).toBeGreaterThan(0.75);
    expect(ratio).toBeLessThan(1.33);
  });
});
