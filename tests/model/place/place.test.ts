import { describe, expect, test } from 'vitest';
import { whyNot } from '../../../src/engine/place/whyNot';
import { shelf } from '../../../src/model/airframe/shelf';
import { balanceAt, LEVEL } from '../../../src/model/balance/balance';
import { updatePart } from '../../../src/model/document/edit';
import type { Aircraft } from '../../../src/model/document/types';
import { clashesOf } from '../../../src/model/fit/clash';
import { applyArrangement, recheckArrangement } from '../../../src/model/place/applyArrangement';
import { itemZone } from '../../../src/model/place/itemZone';
import { placeLifts } from '../../../src/model/place/placeLifts';
import { placeProblem } from '../../../src/model/place/placeProblem';
import type { PlaceSettings } from '../../../src/model/place/placeSettings';
import { payloadAt, swapPart, usefulMass } from '../../../src/model/place/usefulMass';
import { arranged, now, solve } from '../../engine/place/solver';
import { redshank } from './bench';

const down = LEVEL;
const questionOf = (aircraft: Aircraft, settings: Partial<PlaceSettings> = {}) => {
  const question = placeProblem(aircraft, { down, ...settings });
  if ('fault' in question) throw new Error(question.fault);
  return question.problem;
};

describe('the problem read off an aircraft', () => {
  test('without a band there is nothing to aim at', () => {
    expect(placeProblem({ ...redshank(500), targetBand: null }, { down })).toEqual({
      fault: expect.stringMatching(/band/),
    });
  });

  test('unlocked parts may go to every bay they fit; a locked one stands in the way', () => {
    const problem = questionOf(updatePart(redshank(500), 'pack', { locked: true }));
    expect(problem.parts.map(({ id }) => id)).toEqual(['camera', 'receiver', 'pump']);
    expect(problem.obstacles.map(({ id }) => id)).toContain('pack');
    for (const { options } of problem.parts)
      expect(options.map(({ id }) => id).filter((id) => id !== 'here')).toEqual([
        'bay nose-bay',
        'bay rear-bay',
      ]);
    const bound = questionOf(updatePart(redshank(500), 'pump', { bayId: 'nose-bay' }));
    expect(bound.parts.find(({ id }) => id === 'pump')?.options.map(({ name }) => name)).toEqual([
      'its place',
      'nose-bay',
    ]);
  });

  test('the load cases and the parts add up to the aircraft', () => {
    const aircraft = redshank(500);
    const { massG, cgMm } = balanceAt(aircraft, { fuelFraction: 1, down });
    const { cases, parts } = questionOf(aircraft);
    const own = parts.map((part) => part.massesG[0]!);
    expect(cases[0]!.massG + own.reduce((a, b) => a + b, 0)).toBeCloseTo(massG, 9);
    const moment = parts.reduce(
      (sum, part, i) => sum + own[i]! * part.present.centreMm[0],
      cases[0]!.momentGmm[0],
    );
    expect(moment / massG).toBeCloseTo(cgMm![0], 9);
  });
});

describe('arranging an aircraft', () => {
  test.each([470, 500, 530, 560, 620])(
    'a band that ends at %i mm: applied, it balances and nothing clashes',
    (aftMm) => {
      const aircraft = updatePart(redshank(aftMm), 'pump', { mayTurn: 'any' });
      const before = structuredClone(aircraft);
      const problem = questionOf(aircraft);
      const answer = arranged(problem);
      expect(answer.proved).toBe(true);
      const { best } = answer;
      expect(best).not.toBeNull();
      const { aircraft: after, faults, marginMm } = recheckArrangement(aircraft, problem, best!, down);
      expect(faults).toEqual([]);
      expect(marginMm).toBeCloseTo(best!.marginMm, 3);
      const { fit } = balanceAt(after, { fuelFraction: 1, down });
      expect(Math.min(fit!.forwardMarginMm, fit!.aftMarginMm)).toBeCloseTo(best!.marginMm, 3);
      for (const { id } of aircraft.parts)
        expect(clashesOf(after, id).filter(({ depthMm }) => depthMm > 1e-3)).toEqual([]);
      expect(after.parts.length).toBe(4 + best!.ballast.length);
      // The old aircraft is as it was: one step back undoes it all.
      expect(aircraft).toEqual(before);
      expect(applyArrangement(aircraft, problem, { ...best!, ballast: [], placed: [] })).toBe(aircraft);
    },
  );

  test('nothing is moved where all is well', () => {
    const start = redshank(500);
    const { cgMm } = balanceAt(start, { fuelFraction: 1, down });
    const aircraft = redshank(cgMm![0] + 10);
    const answer = arranged(questionOf(aircraft));
    expect(answer.best).toMatchObject({ ballastG: 0, moves: 0 });
    expect(answer.sentence).toBe('No ballast is needed.');
  });

  test('a fault in the solver would be seen', () => {
    const aircraft = redshank(500);
    const problem = questionOf(aircraft);
    const best = arranged(problem).best!;
    const [first, ...rest] = best.placed;
    const astray = {
      ...best,
      placed: [{ ...first!, moved: true, centreMm: rest[0]!.centreMm, cgMm: rest[0]!.cgMm }, ...rest],
    };
    expect(recheckArrangement(aircraft, problem, astray, down).faults).not.toEqual([]);
  });

  test('what is locked can be the reason, and is named', () => {
    const locked = redshank(440).parts.reduce(
      (one, { id }) => updatePart(one, id, { locked: true }),
      redshank(470),
    );
    const aircraft = { ...locked, ballastSpots: [] };
    const question = placeLifts(aircraft, { down });
    if ('fault' in question) throw new Error(question.fault);
    const { reasons, possible, proved } = whyNot(question.problem, question.lifts, {
      solve,
      now,
      timeMs: 20_000,
    });
    expect({ possible, proved }).toEqual({ possible: false, proved: true });
    const sets = reasons.map(({ lifts }) => lifts.map(({ id }) => id).join(' + '));
    expect(sets.length).toBeGreaterThan(0);
    for (const { lifts, arrangement } of reasons.filter(({ breachMm }) => breachMm === 0)) {
      const freed = lifts.reduce(
        (one, lift) => (lift.what === 'lock' ? updatePart(one, lift.partId, { locked: false }) : one),
        aircraft as Aircraft,
      );
      const { faults } = recheckArrangement(freed, question.problem, arrangement, down);
      expect(faults).toEqual([]);
    }
  });
});

describe('the zone of one item', () => {
  test('its ends put the CG on the limits', () => {
    const aircraft = redshank(560);
    for (const { id } of aircraft.parts) {
      const zone = itemZone(aircraft, id, down)!;
      const { fromMm, toMm } = zone.station.allowed!;
      for (const [stationMm, limit] of [
        [fromMm, 540],
        [toMm, 560],
      ] as const) {
        const moved = updatePart(aircraft, id, { positionMm: [stationMm, 0, 0] });
        expect(balanceAt(moved, { fuelFraction: 1, down }).cgMm![0]).toBeCloseTo(limit, 6);
      }
      expect(zone.marginAt(fromMm, 0).marginMm).toBeCloseTo(0, 6);
      for (const free of zone.freeStations) {
        for (const stationMm of [free.fromMm, (free.fromMm + free.toMm) / 2, free.toMm]) {
          const moved = updatePart(aircraft, id, { positionMm: [stationMm, 0, 0] });
          expect(clashesOf(moved, id).filter(({ depthMm }) => depthMm > 1e-6)).toEqual([]);
        }
      }
    }
  });
});

describe('what if', () => {
  const bandOf = (aircraft: Aircraft) => balanceAt(aircraft, { fuelFraction: 1, down }).band;

  test('the heaviest payload at a spot puts the CG on a limit, and a gram more puts it outside', () => {
    const start = redshank(500);
    const aircraft = redshank(balanceAt(start, { fuelFraction: 1, down }).cgMm![0] + 5);
    const { mostG } = payloadAt(aircraft, down, [900, 0, 0], bandOf(aircraft))!;
    const withG = (massG: number) => {
      const load = { ...aircraft.parts[0]!, id: 'load', massG, positionMm: [900, 0, 0] as const };
      return balanceAt({ ...aircraft, parts: [...aircraft.parts, load] }, { fuelFraction: 1, down }).fit!;
    };
    expect(withG(mostG).aftMarginMm).toBeCloseTo(0, 6);
    expect(withG(mostG + 1).where).toBe('tail-heavy');
  });

  test('useful mass comes to the limit exactly, before any lead', () => {
    const start = redshank(500);
    const aircraft = redshank(balanceAt(start, { fuelFraction: 1, down }).cgMm![0] + 24);
    const options = usefulMass(aircraft, down, bandOf(aircraft));
    expect(options.map(({ part }) => part.id).sort()).toEqual(['camera', 'pack']);
    for (const { part, changeG } of options) {
      expect(changeG).toBeGreaterThan(0);
      const heavier = updatePart(aircraft, part.id, { massG: part.massG + changeG });
      expect(balanceAt(heavier, { fuelFraction: 1, down }).fit!.forwardMarginMm).toBeCloseTo(0, 6);
    }
  });

  test('a swap tells both verdicts', () => {
    const aircraft = redshank(560);
    const other = shelf.find(({ name }) => name === 'Pack 6S 5000 mAh')!;
    const swap = swapPart(aircraft, 'pack', other, { down, band: bandOf(aircraft) })!;
    const least = (one: Aircraft) => {
      const fit = balanceAt(one, { fuelFraction: 1, down }).fit!;
      return Math.min(fit.forwardMarginMm, fit.aftMarginMm);
    };
    expect(swap.beforeMm).toBeCloseTo(least(aircraft), 6);
    expect(swap.afterMm).toBeCloseTo(least(swap.aircraft), 6);
    const best = updatePart(swap.aircraft, 'pack', { positionMm: [swap.bestMm!, 0, 0] });
    expect(least(best)).toBeCloseTo(10, 5);
  });
});
