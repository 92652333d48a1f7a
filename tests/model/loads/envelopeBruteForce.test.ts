import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Vec3 } from '../../../src/engine/geometry/types';
import { flyingSwitches, type Positions } from '../../../src/model/airframe/loadSwitches';
import { balanceAt, LEVEL } from '../../../src/model/balance/balance';
import type { Aircraft } from '../../../src/model/document/types';
import { loadEnvelopeOf } from '../../../src/model/loads/loadStates';
import { switchedAircraft } from './switchedAircraft';

const every = (aircraft: Aircraft): Positions[] =>
  flyingSwitches(aircraft).reduce<Positions[]>(
    (all, { id, positions }) => all.flatMap((chosen) => positions.map((at) => ({ ...chosen, [id]: at.id }))),
    [{}],
  );

/** Every combination of the flying positions, each balanced from scratch over its whole burn. */
function againstAll(aircraft: Aircraft, down: Vec3) {
  const envelope = loadEnvelopeOf(aircraft, down)!;
  const { foremost, aftmost, leftmost, rightmost, lightest, heaviest } = envelope;
  for (const end of [foremost, aftmost, leftmost, rightmost]) {
    const there = balanceAt(aircraft, { ...end, down });
    // Differences added up and all added anew round otherwise, most where an airframe weighs next to what its shapes do:
    // a thousandth of what is certified is the same.
    there.cgMm!.forEach((mm, axis) => {
      expect(Math.abs(mm - end.cgMm[axis]!)).toBeLessThan(1e-4);
    });
    expect(end.withinMm!).toBeLessThanOrEqual(0.1 + 1e-9);
  }
  for (const positions of every(aircraft)) {
    for (const { cgMm, massG } of balanceAt(aircraft, { fuelFraction: 1, down, positions }).travel) {
      expect(cgMm[0]).toBeGreaterThan(foremost.cgMm[0] - foremost.withinMm! - 1e-4);
      expect(cgMm[0]).toBeLessThan(aftmost.cgMm[0] + aftmost.withinMm! + 1e-4);
      expect(cgMm[1]).toBeGreaterThan(leftmost.cgMm[1] - leftmost.withinMm! - 1e-4);
      expect(cgMm[1]).toBeLessThan(rightmost.cgMm[1] + rightmost.withinMm! + 1e-4);
      expect(massG).toBeGreaterThan(lightest.massG - 1e-7);
      expect(massG).toBeLessThan(heaviest.massG + 1e-7);
    }
  }
}

/** A loaded machine takes its time; the number of runs is what bounds it. */
const PATIENCE_MS = 120_000;

describe('the envelope against every load state one by one', () => {
  test(
    'with leads, pockets, weighed airframes, hulls and tanks on switches',
    () => {
      fc.assert(
        fc.property(switchedAircraft, (aircraft) => againstAll(aircraft, LEVEL)),
        { numRuns: Number(process.env.RUNS ?? 20) },
      );
    },
    PATIENCE_MS,
  );

  test(
    'the same in a climb',
    () => {
      fc.assert(
        fc.property(switchedAircraft, (aircraft) => againstAll(aircraft, [0.5, 0, -Math.sqrt(0.75)])),
        { numRuns: Number(process.env.RUNS ?? 8) },
      );
    },
    PATIENCE_MS,
  );
});
