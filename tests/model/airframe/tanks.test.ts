import { describe, expect, test } from 'vitest';
import { massMirror, massSum } from '../../../src/engine/mass/massProperties';
import { tankBody } from '../../../src/model/airframe/bodies';
import { engineTanks, shapeVolumeMl } from '../../../src/model/airframe/tanks';
import type { Aircraft, TankItem } from '../../../src/model/document/types';
import { readAircraft } from '../../../src/model/reading/read';
import { dunlinJson } from '../aircraft';

const dunlin = (): Aircraft => {
  const read = readAircraft(dunlinJson());
  if (!read.ok) throw new Error(read.faults[0]?.sentence);
  return read.aircraft;
};

describe('engineTanks', () => {
  test('brim-full is the volume: π/4 · 40² · 70 mm³ for the header', () => {
    const [main, header] = engineTanks(dunlin());
    expect(header?.startMl).toBeCloseTo((Math.PI / 4) * 40 ** 2 * 70 * 1e-3, 9);
    expect(main).toMatchObject({ startMl: 600, densityGPerMl: 0.74, feeds: 'header', share: 'volume' });
    // A capsule: sphere of 80 and cylinder of 80 mm.
    const shape = { kind: 'capsule', lengthMm: 160, diameterMm: 80 } as const;
    expect(shapeVolumeMl(shape)).toBeCloseTo(((Math.PI / 6) * 80 ** 3 + (Math.PI / 4) * 80 ** 3) * 1e-3, 9);
  });

  test('an unchanged tank is the same object, a change of fuel makes new ones', () => {
    const aircraft = dunlin();
    const before = engineTanks(aircraft);
    const renamed = { ...aircraft, name: 'Other' };
    expect(engineTanks(renamed).every((tank, i) => tank === before[i])).toBe(true);
    const denser = engineTanks({ ...aircraft, fuel: { ...aircraft.fuel!, densityGPerMl: 0.8 } });
    expect(denser.map(({ densityGPerMl }) => densityGPerMl)).toEqual([0.8, 0.8]);
  });
});

describe('an empty tank', () => {
  const saddle: TankItem = {
    ...dunlin().tanks[0]!,
    shape: {
      kind: 'prism',
      lengthMm: 100,
      outlineMm: [
        [0, 0],
        [60, 0],
        [0, 40],
      ],
    },
    positionMm: [430, 60, 20],
    yawDeg: 10,
    rollDeg: 5,
  };

  test('its twin, mirrored and set down on the other side, is its mirror image', () => {
    const twin: TankItem = {
      ...saddle,
      mirrored: true,
      positionMm: [430, -60, 20],
      yawDeg: -10,
      rollDeg: -5,
    };
    const [one, other] = [tankBody(saddle).mass, tankBody(twin).mass];
    const mirrored = massMirror(one);
    other.cgMm?.forEach((value, i) => {
      expect(value).toBeCloseTo(mirrored.cgMm?.[i] ?? Number.NaN, 9);
    });
    expect(other.inertiaAboutCgGmm2.xy).toBeCloseTo(mirrored.inertiaAboutCgGmm2.xy, 6);
    expect(massSum([one, other]).cgMm?.[1]).toBeCloseTo(0, 9);
  });
});
