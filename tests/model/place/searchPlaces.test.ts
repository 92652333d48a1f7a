import { describe, expect, test } from 'vitest';
import { itemExtent } from '../../../src/model/airframe/extent';
import { balanceAt, LEVEL } from '../../../src/model/balance/balance';
import { updatePart } from '../../../src/model/document/edit';
import type { Aircraft } from '../../../src/model/document/types';
import { fitRefusals } from '../../../src/model/fit/wholeFit';
import { applyArrangement } from '../../../src/model/place/applyArrangement';
import { flyingPositions } from '../../../src/model/place/loadCases';
import type { PlaceSettings } from '../../../src/model/place/placeSettings';
import { type PlaceFound, searchPlaces } from '../../../src/model/place/searchPlaces';
import { otherPacks, variantsOf } from '../../../src/model/place/variants';
import { now, solve } from '../../engine/place/solver';
import { redshank } from './bench';

const found = (aircraft: Aircraft, settings: Partial<PlaceSettings> = {}): PlaceFound => {
  const outcome = searchPlaces(
    { variants: [{ name: '', aircraft }], settings: { down: LEVEL, ...settings }, probability: null },
    { solve, now, timeMs: 90_000 },
  );
  if ('fault' in outcome) throw new Error(outcome.fault);
  return outcome;
};

/** The least margin in every state that flies, by the aircraft's own balance, mm. */
const leastMargin = (aircraft: Aircraft): number =>
  Math.min(
    ...flyingPositions(aircraft).map((positions) => {
      const { fit } = balanceAt(aircraft, { fuelFraction: 1, down: LEVEL, positions });
      return Math.min(fit!.forwardMarginMm, fit!.aftMarginMm);
    }),
  );

describe('what is offered for an aircraft', () => {
  test('balances as told, makes nothing of the fit worse, and stands on the floor of its bay', () => {
    const aircraft = redshank(500);
    const { answer, problem } = found(aircraft, { wantedMarginMm: 2 });
    expect(answer.proved).toBe(true);
    expect(answer.keptMarginMm).toBe(2);
    const after = applyArrangement(aircraft, problem, answer.best!);
    expect(leastMargin(after)).toBeGreaterThanOrEqual(2 - 1e-3);
    expect(leastMargin(after)).toBeCloseTo(answer.best!.marginMm, 3);
    expect(fitRefusals(aircraft, after)).toEqual([]);
    for (const { id, moved } of answer.best!.placed) {
      if (!moved) continue;
      // The bays are 50 mm high about the datum's waterline.
      expect(itemExtent(after.parts.find((part) => part.id === id)!).minMm[2]).toBeCloseTo(-25, 6);
    }
  });

  test('where nothing may move and no ballast can be put, it is proved at once that there is none', () => {
    const base = redshank(540);
    const parts = base.parts.map((part) => ({ ...part, locked: true }));
    const { answer } = found({ ...base, ballastSpots: [], parts });
    expect(answer.best).toBeNull();
    expect(answer.proved).toBe(true);
    expect(answer.boundG).toBe(Number.POSITIVE_INFINITY);
  });

  test('a state that is only ever so on the stand holds nothing up', () => {
    const heavy = updatePart(redshank(500), 'pack', { massG: 900 });
    const standing: Aircraft = {
      ...heavy,
      switches: [
        {
          id: 'pack-out',
          name: 'Pack',
          positions: [
            { id: 'in', name: 'in' },
            { id: 'out', name: 'out', without: ['pack'], onStand: true },
          ],
        },
      ],
    };
    const [with_, without] = [found(standing), found(heavy)];
    expect(with_.answer.best?.ballastG).toBe(without.answer.best?.ballastG);
  });

  test('one of several: no worse than any of them alone, and proved over all', () => {
    const aircraft = redshank(530);
    const variants = variantsOf(aircraft, { pack: [{ shelfName: 'Pack 6S 5000 mAh', count: 1 }] });
    if ('fault' in variants) throw new Error(variants.fault);
    expect(variants).toHaveLength(2);
    const outcome = searchPlaces(
      { variants, settings: { down: LEVEL }, probability: null },
      { solve, now, timeMs: 120_000 },
    );
    if ('fault' in outcome) throw new Error(outcome.fault);
    const alone = variants.map(
      (one) => found(one.aircraft).answer.best?.ballastG ?? Number.POSITIVE_INFINITY,
    );
    expect(outcome.answer.best?.ballastG).toBe(Math.min(...alone));
    expect(outcome.answer.proved).toBe(true);
  });

  test('one of the packs that suffice: no worse than any of them alone, and proved over all', () => {
    const plain = redshank(530);
    const [pack, camera] = plain.parts;
    // 30 A for five minutes with a fifth in reserve: 3000 mAh ÷ 80 % = 3750.
    const aircraft: Aircraft = {
      ...plain,
      powerFlight: { phases: [{ name: 'Flight', durationS: 300, throttlePct: 100 }], reservePct: 20 },
      parts: [
        { ...pack!, power: { pack: { chemistry: 'lipo', cells: 4, capacityMah: 4500 } } },
        {
          ...camera!,
          power: {
            use: { kind: 'motor', minV: 9, maxV: 20, meanA: 30, peakA: 30 },
            fedBy: [{ from: 'pack' }],
          },
        },
        ...plain.parts.slice(2),
      ],
    };
    const packs = otherPacks(aircraft, aircraft.parts[0]!).slice(0, 1);
    expect(packs.map(({ capacityMah }) => capacityMah)).toEqual([4000]);
    const variants = variantsOf(aircraft, { pack: packs.map(({ capacityMah }) => ({ capacityMah })) });
    if ('fault' in variants) throw new Error(variants.fault);
    const outcome = searchPlaces(
      { variants, settings: { down: LEVEL }, probability: null },
      { solve, now, timeMs: 120_000 },
    );
    if ('fault' in outcome) throw new Error(outcome.fault);
    const alone = variants.map(
      (each) => found(each.aircraft).answer.best?.ballastG ?? Number.POSITIVE_INFINITY,
    );
    expect(outcome.answer.best?.ballastG).toBe(Math.min(...alone));
    expect(outcome.answer.proved).toBe(true);
  });

  test('what balances as it is is never lost, however little the search finds', () => {
    const ballast = {
      ...redshank(500).parts[2]!,
      id: 'lead',
      name: 'Lead',
      role: 'ballast' as const,
      shape: { kind: 'box' as const, lengthMm: 20, widthMm: 20, heightMm: 44 },
      massG: 200,
      positionMm: [20, 0, 0] as const,
    };
    const loaded = (aftMm: number): Aircraft => {
      const aircraft = redshank(aftMm);
      return { ...aircraft, parts: [...aircraft.parts, ballast] };
    };
    const { cgMm } = balanceAt(loaded(500), { fuelFraction: 1, down: LEVEL });
    const outcome = searchPlaces(
      {
        variants: [{ name: '', aircraft: redshank(cgMm![0] + 10) }],
        settings: { down: LEVEL, emptied: [ballast], wantedMarginMm: 2 },
        probability: null,
      },
      // A solver that comes to nothing in its time.
      {
        solve: () => ({ status: 'stopped', values: null, bound: Number.NEGATIVE_INFINITY }),
        now,
        timeMs: 1000,
      },
    );
    if ('fault' in outcome) throw new Error(outcome.fault);
    // Without it only no ballast at all is known to be the least, but what is offered is no worse than what there was.
    const { best, keptMarginMm } = outcome.answer;
    expect(best!.ballastG).toBeLessThanOrEqual(200);
    expect(keptMarginMm).toBe(2);
    const after = applyArrangement(redshank(cgMm![0] + 10), outcome.problem, best!, [ballast]);
    expect(leastMargin(after)).toBeGreaterThanOrEqual(2 - 1e-3);
    expect(outcome.answer.proved).toBe(best!.ballastG === 0);
    expect(outcome.answer.marginProved).toBe(false);
  });

  test('without a band it says what is missing', () => {
    const outcome = searchPlaces(
      {
        variants: [{ name: '', aircraft: { ...redshank(500), targetBand: null } }],
        settings: { down: LEVEL },
        probability: null,
      },
      { solve, now, timeMs: 1000 },
    );
    expect(outcome).toEqual({ fault: 'State a target band first: there is nothing to aim at.' });
  });
});
