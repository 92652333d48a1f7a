import fc from 'fast-check';
import { expect, it } from 'vitest';
import { packEndurance } from '../../../src/engine/power/packEndurance';
import { powerFlow } from '../../../src/engine/power/powerFlow';
import type { PowerNet } from '../../../src/engine/power/types';
import { between } from '../../between';
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

it('where one is used up and the other cannot give what is drawn, both have come to their end', () => {
  // The small one has 10 Ω: 7.4 V ÷ 10 Ω = 0.74 A is all that it could ever give.
  const [small, large] = net(100, 1000).packs;
  const weak: PowerNet = { ...net(100, 1000), packs: [{ ...small!, ohm: 10 }, large!] };
  const { packs, units } = packEndurance(weak, [steady(60, 4)]);
  const endS = packs.get('p1')?.emptyAtS ?? 0;
  expect(endS).toBeGreaterThan(0);
  expect(units.get('servo')).toBe(endS);
  expect(packs.get('p0')?.emptyAtS).toBe(endS);
  // Before anything is used up it is another matter: nobody can give that.
  expect(() => packEndurance(weak, [steady(60, 4000)])).toThrow(RangeError);
});

it('one that comes to its end is nothing to what is not joined to it', () => {
  const alone = net(1000);
  const both: PowerNet = {
    packs: [...alone.packs, { ...alone.packs[0]!, id: 'other', capacityMah: 10 }],
    units: [...alone.units, { id: 'light', regulator: null }],
    feeds: [...alone.feeds, { from: 'other', to: 'light', ohm: 0, pastRegulator: false }],
  };
  const flown = [steady(60, 1)];
  expect(packEndurance(both, flown).packs.get('p0')).toEqual(packEndurance(alone, flown).packs.get('p0'));
  // 8 mAh at 1 A: 28.8 s.
  expect(packEndurance(both, flown).units.get('light')).toBeCloseTo(28.8, 6);
});

it('keeps charge and energy over the whole burn: what packs gave is what was used, and lost on the way', () => {
  const wired: PowerNet = {
    ...net(2000, 5000),
    feeds: [
      { from: 'p0', to: 'servo', ohm: 0.05, pastRegulator: false },
      { from: 'p1', to: 'servo', ohm: 0.02, pastRegulator: false },
    ],
  };
  const burn = [
    { durationS: 60, amps: 12 },
    { durationS: 400, amps: 5 },
    { durationS: 90, amps: 0.5 },
  ];
  const { packs } = packEndurance(
    wired,
    burn.map(({ durationS, amps }) => steady(durationS, amps)),
  );
  const usedMah = wired.packs.map(({ id }) => packs.get(id)!.usedMah);
  const drawnAs = burn.reduce((sum, { durationS, amps }) => sum + durationS * amps, 0);
  expect((usedMah[0]! + usedMah[1]!) * 3.6).toBeCloseTo(drawnAs, 6);
  // 1 mAh is 3.6 A·s: joules out of the cells, against those that reach the servo and those that warm cells and wires.
  const givenJ = (usedMah[0]! + usedMah[1]!) * 3.6 * 7.4;
  const spentJ = burn.reduce((sum, { durationS, amps }) => {
    const flow = powerFlow(
      wired,
      () => 7.4,
      () => amps,
    );
    const warm = wired.packs.reduce(
      (watts, { id, ohm }, at) => watts + (ohm + wired.feeds[at]!.ohm) * flow.packA.get(id)! ** 2,
      0,
    );
    return sum + durationS * (amps * flow.unitV.get('servo')! + warm);
  }, 0);
  expect(givenJ / spentJ).toBeCloseTo(1, 5);
});

it('more capacity never shortens it', () => {
  const capacity = fc.integer({ min: 200, max: 8000 });
  fc.assert(
    fc.property(
      fc.array(capacity, { minLength: 1, maxLength: 3 }),
      fc.array(fc.tuple(fc.integer({ min: 0, max: 900 }), between(0, 4)), {
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
