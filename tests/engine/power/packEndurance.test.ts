import fc from 'fast-check';
import { expect, it } from 'vitest';
import { packEndurance } from '../../../src/engine/power/packEndurance';
import type { PowerNet } from '../../../src/engine/power/types';
import { seed } from '../../seed';

const net = (...mah: readonly number[]): PowerNet => ({
  packs: mah.map((capacityMah, at) => ({
    id: `p${at}`,
    fullV: 8.4,
    nominalV: 7.4,
    emptyV: 6.6,
    // Two cells, each with a resistance that falls with the capacity.
    ohm: 30 / capacityMah,
    capacityMah,
    usableShare: 0.8,
  })),
  units: [{ id: 'servo', regulator: null }],
  feeds: mah.map((_mah, at) => ({ from: `p${at}`, to: 'servo', ohm: 0, pastRegulator: false })),
});

const steady = (durationS: number, amps: number) => ({ durationS, drawA: () => amps });

it('is capacity by current', () => {
  // 2000 mAh · 0.8 at 0.8 A: two hours.
  const { packs, units } = packEndurance(net(2000), [steady(600, 0.8)]);
  expect(packs.get('p0')?.emptyAtS).toBeCloseTo(7200, 3);
  // Ten minutes at 0.8 A: 133.3 mAh.
  expect(packs.get('p0')?.usedMah).toBeCloseTo(133.333, 3);
  expect(units.get('servo')).toBeCloseTo(7200, 3);
});

it('walks the phases, and goes on with their mean', () => {
  // 1600 mAh to use. One minute at 6 A is 100 mAh, nine at 1 A are 150: 250 in ten minutes, 1.5 A on the mean.
  const { packs } = packEndurance(net(2000), [steady(60, 6), steady(540, 1)]);
  expect(packs.get('p0')?.emptyAtS).toBeCloseTo(600 + (1350 / 1500) * 3600, 3);
});

it('two packs of a kind run down together, each with its share', () => {
  const { packs, units } = packEndurance(net(1000, 3000), [steady(60, 2)]);
  expect(packs.get('p0')?.emptyAtS).toBeCloseTo(5760, 0);
  expect(packs.get('p1')?.emptyAtS).toBeCloseTo(5760, 0);
  expect(units.get('servo')).toBeCloseTo(5760, 0);
});

it('what nothing is drawn from lasts for ever, what nothing feeds is without at once', () => {
  const idle = packEndurance(net(1000), [steady(60, 0)]);
  expect(idle.packs.get('p0')).toEqual({ usedMah: 0, emptyAtS: null });
  const bare = packEndurance({ ...net(1000), feeds: [] }, [steady(60, 1)]);
  expect(bare.units.get('servo')).toBe(0);
});

it('lasts no phases at all by what is drawn in the first', () => {
  expect(packEndurance(net(1000), []).packs.get('p0')?.emptyAtS).toBeNull();
});

it('more capacity never shortens it', () => {
  const capacity = fc.integer({ min: 200, max: 8000 });
  fc.assert(
    fc.property(
      fc.array(capacity, { minLength: 1, maxLength: 3 }),
      fc.array(fc.tuple(fc.integer({ min: 0, max: 900 }), fc.double({ min: 0, max: 4, noNaN: true })), {
        minLength: 1,
        maxLength: 4,
      }),
      fc.nat(2),
      fc.integer({ min: 0, max: 4000 }),
      (capacities, phases, which, more) => {
        const flown = phases.map(([durationS, amps]) => steady(durationS, amps));
        const at = which % capacities.length;
        const larger = capacities.map((mah, index) => (index === at ? mah + more : mah));
        const lasts = (mah: readonly number[]) =>
          packEndurance(net(...mah), flown).units.get('servo') ?? Number.POSITIVE_INFINITY;
        expect(lasts(larger)).toBeGreaterThanOrEqual(lasts(capacities) - 1e-6);
      },
    ),
    { seed, numRuns: 200 },
  );
});
