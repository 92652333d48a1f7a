import { expect, test } from 'vitest';
import { advise } from '../../../src/model/advice/advise';
import { applyRemedy } from '../../../src/model/advice/remedy';
import { balanceAt, LEVEL } from '../../../src/model/balance/balance';
import type { Aircraft } from '../../../src/model/document/types';
import { aircraftOf, boxPart } from '../aircraft';
import { surface } from '../surface';

const straight = surface({ id: 'wing', spanMm: 800, rootChordMm: 200, tipChordMm: 120 });

/** A wing whose right side is heavy by a camera that is screwed down; its tips swept aft +. */
const lopsided = (sweepMm: number): Aircraft => ({
  ...aircraftOf(
    [{ ...straight, panels: [{ ...straight.panels[0]!, sweepMm }] }],
    [{ ...boxPart('camera', 400, [600, 60, 0]), locked: true }],
  ),
  targetBand: { by: 'station', forwardMm: 400, aftMm: 900 },
  lateralToleranceMm: 2,
});

const stationOf = (aircraft: Aircraft) => balanceAt(aircraft, { fuelFraction: 1, down: LEVEL }).cgMm![0];

test.each([
  [300, 'aft'],
  [-300, 'forward'],
])(
  'ballast at a tip swept by %d mm says how far it moves the CG %s, never less aft than it does',
  (sweepMm, way) => {
    const aircraft = lopsided(sweepMm);
    const { remedy } = advise(aircraft, { down: LEVEL, estimate: null }, { units: 'metric', fromMm: 0 });
    const [, figure, said] = /wing tip, which moves the CG ([\d.]+)\u202fmm (aft|forward)$/.exec(
      remedy!.words,
    )!;
    expect(said).toBe(way);
    const shiftMm = stationOf(applyRemedy(aircraft, remedy!)) - stationOf(aircraft);
    const saidMm = Number(figure) * (said === 'aft' ? 1 : -1);
    expect(saidMm).toBeGreaterThanOrEqual(shiftMm - 1e-9);
    expect(saidMm - shiftMm).toBeLessThan(0.1);
  },
);
