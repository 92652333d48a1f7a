import { describe, expect, test } from 'vitest';
import { pctMacToStation, planform, stationToPctMac } from '../../src/engine/wing/planform';
import type { LiftingSurface, WingPanel } from '../../src/engine/wing/types';

function wing(panel: Partial<WingPanel>): LiftingSurface {
  return {
    id: 'wing',
    name: 'Wing',
    rootMm: [0, 0, 0],
    cantDeg: 0,
    incidenceDeg: 0,
    sides: 'both',
    panels: [
      {
        spanMm: 1000,
        rootChordMm: 200,
        tipChordMm: 200,
        sweepMm: 0,
        dihedralDeg: 0,
        rootTwistDeg: 0,
        tipTwistDeg: 0,
        ...panel,
      },
    ],
  };
}

describe('published mean aerodynamic chords', () => {
  test('ONERA M6 (AGARD AR-138 case data, from memory): MAC 0.64607 m', () => {
    // Taper is printed with three digits: half a unit in its last place moves the MAC by 0.0002 m.
    const m6 = planform(
      wing({
        spanMm: 1196.3,
        rootChordMm: 805.9,
        tipChordMm: 0.562 * 805.9,
        sweepMm: 1196.3 * Math.tan(Math.PI / 6),
      }),
    );
    expect(Math.abs(m6.macMm - 646.07)).toBeLessThan(0.2);
  });

  test('taper 0.5, root chord 8 ft (tutorial): 6.22 ft', () => {
    const ft = 304.8;
    const mac = planform(wing({ spanMm: 20 * ft, rootChordMm: 8 * ft, tipChordMm: 4 * ft })).macMm / ft;
    expect(Math.abs(mac - 6.22)).toBeLessThan(0.005);
  });

  test.each([0, 0.3, 0.562, 1])(
    'one panel, taper %f: MAC and its buttline by Raymer, Aircraft Design',
    (taper) => {
      const root = 317;
      const half = 843;
      const figures = planform(
        wing({ spanMm: half, rootChordMm: root, tipChordMm: taper * root, sweepMm: 91 }),
      );
      expect(figures.macMm).toBeCloseTo((2 / 3) * root * ((1 + taper + taper ** 2) / (1 + taper)), 9);
      expect(figures.macButtlineMm).toBeCloseTo(((2 * half) / 6) * ((1 + 2 * taper) / (1 + taper)), 9);
    },
  );
});

describe('per cent MAC', () => {
  test('LEMAC 144 in, TEMAC 206 in, CG 17 in aft of LEMAC: 27.4 % (FAA-H-8083-1B ch. 3, from memory)', () => {
    expect(Math.abs(stationToPctMac({ lemacMm: 144, macMm: 62 }, 144 + 17) - 27.4)).toBeLessThan(0.05);
  });

  test('MAC from 517 to 1706 in, CG 724 in: 17.4096 % (airline question, answer derived)', () => {
    expect(Math.abs(stationToPctMac({ lemacMm: 517, macMm: 1706 - 517 }, 724) - 17.4096)).toBeLessThan(5e-5);
  });

  test('MAC 100 in, CG 20 in aft of LEMAC: 20 % (FAA-H-8083-30 p. 4-31)', () => {
    expect(stationToPctMac({ lemacMm: 0, macMm: 100 }, 20)).toBe(20);
    expect(pctMacToStation({ lemacMm: 0, macMm: 100 }, 20)).toBe(20);
  });
});
