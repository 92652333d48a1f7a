import { mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { balanceCommand } from '../../src/commands/balanceCommand';
import type { Vec3 } from '../../src/engine/geometry/types';
import { downFromAttitude } from '../../src/engine/liquid/attitude';
import { balanceAt } from '../../src/model/balance/balance';
import { parseAircraft } from '../../src/model/reading/read';

const folder = mkdtempSync(join(tmpdir(), 'loads-'));
const sandmartin = 'demo-data/sandmartin.json';
const text = readFileSync(sandmartin, 'utf8');
const read = parseAircraft(text);
if (!read.ok) throw new Error(read.faults[0]?.sentence);
const { aircraft } = read;

const json = (...args: string[]) => {
  const { status, out, err } = balanceCommand([...args, '--json']);
  expect({ status, err }).toEqual({ status: 0, err: '' });
  return JSON.parse(out);
};
function expectSame(came: Vec3, expected: Vec3) {
  came.forEach((mm, axis) => {
    expect(mm).toBeCloseTo(expected[axis]!, 6);
  });
}
const downAt = (pitchDeg: number, forwardG = 0) =>
  downFromAttitude({ pitchDeg, rollDeg: 0, forwardG, sideG: 0 });

describe('load states as JSON', () => {
  test('the ends of the range are balances of the load states that they name', () => {
    const { loadStates, loadStatesNotChecked } = json(sandmartin);
    expect(loadStatesNotChecked).toBeNull();
    for (const end of ['foremost', 'aftmost', 'leftmost', 'rightmost', 'heaviest', 'lightest']) {
      const { positions, fuelFraction, cgMm, massG } = loadStates[end];
      const there = balanceAt(aircraft, { fuelFraction, positions, down: [0, 0, -1] });
      expect(there.massG).toBeCloseTo(massG, 6);
      expectSame(there.cgMm!, cgMm);
    }
    expect(loadStates.lightest.positions).toEqual({ 'video-sender': 'off' });
    expect(loadStates.lightest.name).toMatch(/video sender off/);
    expect(loadStates.aftmost.withinMm).toBeLessThanOrEqual(0.1);
  });
});

describe('the attitude', () => {
  test.each([
    ['climb', '30° climb', downAt(30)],
    ['Launch, 3 g', 'Launch, 3 g', downAt(10, 3)],
    ['12', '12° climb', downAt(12)],
    ['-5,0,-0.5', '5° dive, 0.5 g braking', downAt(-5, -0.5)],
  ])('%s is held as %s', (typed, name, down) => {
    const report = json(sandmartin, '--fuel', '0.5', `--attitude=${typed}`);
    expect(report.attitude.name).toBe(name);
    const there = balanceAt(aircraft, { fuelFraction: 0.5, down });
    expectSame(there.cgMm!, report.cgMm);
  });

  test('it is said in the table, and what is none is refused', () => {
    expect(balanceCommand([sandmartin, '--attitude', 'dive']).out).toMatch(/Held\s+so:\s+45°\s+dive\./);
    for (const typed of ['upside', '1,2,3,4', '', '91', '-90,0,1', '10,,']) {
      const { status, err } = balanceCommand([sandmartin, `--attitude=${typed}`]);
      expect({ typed, status }).toEqual({ typed, status: 2 });
      expect(err).toMatch(/--attitude: expected one of level, climb/);
    }
  });
});

describe('a header tank with nothing unusable', () => {
  const changed = JSON.parse(text);
  changed.tanks.find(({ id }: { id: string }) => id === 'header-tank').unusableMl = 0;
  const file = join(folder, 'header.json');
  writeFileSync(file, JSON.stringify(changed));

  test.each(['0', '1'])('is balanced with %s of the fuel', (fuel) => {
    const { massG, travel, loadStates } = json(file, '--fuel', fuel);
    expect(Number.isFinite(massG)).toBe(true);
    expect(travel[0].massG - travel.at(-1).massG).toBeGreaterThan(0);
    expect(loadStates.aftmost.withinMm).toBeLessThanOrEqual(0.1);
    // Dry, the header's 5 ml are gone as well, of petrol and oil of 0.745 g/ml.
    const before = balanceAt(aircraft, { fuelFraction: 0, down: [0, 0, -1] });
    expect(travel.at(-1).massG).toBeCloseTo(before.massG - 5 * 0.745, 6);
  });
});
