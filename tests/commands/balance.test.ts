import { execFileSync, spawnSync } from 'node:child_process';
import { mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, test } from 'vitest';
import { balanceCommand } from '../../src/commands/balanceCommand';
import type { Vec3 } from '../../src/engine/geometry/types';
import type { Aircraft } from '../../src/model/document/types';
import { writeAircraft } from '../../src/model/document/write';
import { aircraftOf, boxPart, dunlinText } from '../model/aircraft';

const folder = mkdtempSync(join(tmpdir(), 'balance-'));
const kept = (name: string, text: string) => {
  const path = join(folder, name);
  writeFileSync(path, text);
  return path;
};
const dunlin = kept('dunlin.json', dunlinText);

/** Two masses on a bar: 300 g at 100 mm and 100 g at 500 mm, the second 20 mm right and 40 mm up. */
const bar: Aircraft = {
  ...aircraftOf([], [boxPart('one', 300, [100, 0, 0]), boxPart('two', 100, [500, 20, 40])]),
  name: 'Bar',
  referencePoints: [{ id: 'former', name: 'Main Former', positionMm: [150, 10, 0] }],
};
const barFile = kept('bar.json', writeAircraft(bar));

interface Report {
  readonly massG: number;
  readonly cgMm: Vec3;
  readonly inertiaAboutCgGmm2: Readonly<Record<'xx' | 'yy' | 'zz' | 'xy' | 'xz' | 'yz', number>>;
  readonly parts: readonly { readonly name: string; readonly massG: number; readonly cgMm: Vec3 }[];
  readonly travel: readonly { readonly fuelFraction: number; readonly massG: number; readonly cgMm: Vec3 }[];
}
const report = (...args: string[]): Report => {
  const { status, out, err } = balanceCommand([...args, '--json']);
  expect({ status, err }).toEqual({ status: 0, err: '' });
  return JSON.parse(out);
};

describe('balance --json', () => {
  test('two boxes on a bar, by hand', () => {
    const { massG, cgMm, inertiaAboutCgGmm2: t } = report(barFile);
    // CG = Σ m·r / Σ m.
    expect(massG).toBe(400);
    [200, 5, 10].forEach((value, axis) => {
      expect(cgMm[axis]).toBeCloseTo(value, 9);
    });
    // Each box 100 × 40 × 20 by m(b² + c²)/12; two points apart by d add μ·d², μ = 300·100/400 = 75 g.
    expect(t.xx).toBeCloseTo((400 * (40 ** 2 + 20 ** 2)) / 12 + 75 * (20 ** 2 + 40 ** 2), 6);
    expect(t.yy).toBeCloseTo((400 * (100 ** 2 + 20 ** 2)) / 12 + 75 * (400 ** 2 + 40 ** 2), 6);
    expect(t.zz).toBeCloseTo((400 * (100 ** 2 + 40 ** 2)) / 12 + 75 * (400 ** 2 + 20 ** 2), 6);
    expect(t.xy).toBeCloseTo(-75 * 400 * 20, 6);
    expect(t.xz).toBeCloseTo(-75 * 400 * 40, 6);
    expect(t.yz).toBeCloseTo(-75 * 20 * 40, 6);
  });

  test('its parts add up to the whole', () => {
    const { massG, cgMm, parts } = report(dunlin, '--fuel', '0.4');
    const sum = parts.reduce((total, part) => total + part.massG, 0);
    const moment = parts.reduce((total, part) => total + part.massG * (part.cgMm?.[0] ?? 0), 0);
    expect(sum).toBeCloseTo(massG, 6);
    expect(moment / sum).toBeCloseTo(cgMm[0], 6);
  });

  test('half the usable fuel weighs half: V·ρ', () => {
    // Usable: 600 − 12 ml and π/4·40²·70/1000 − 4 ml at 0.74 g/ml.
    const usableG = (600 - 12 + (Math.PI / 4) * 40 ** 2 * 70 * 1e-3 - 4) * 0.74;
    const [full, half, dry] = ['1', '0.5', '0'].map((fuel) => report(dunlin, '--fuel', fuel).massG);
    expect(full! - dry!).toBeCloseTo(usableG, 5);
    expect(full! - half!).toBeCloseTo(usableG / 2, 5);
  });

  test('the travel runs from full to dry and meets the balance at both ends', () => {
    const { travel } = report(dunlin);
    expect([travel[0]?.fuelFraction, travel.at(-1)?.fuelFraction]).toEqual([1, 0]);
    expect(travel[0]?.cgMm[0]).toBeCloseTo(report(dunlin, '--fuel', '1').cgMm[0], 6);
    expect(travel.at(-1)?.cgMm[0]).toBeCloseTo(report(dunlin, '--fuel', '0').cgMm[0], 6);
    expect(report(barFile).travel).toHaveLength(1);
  });
});

describe('the table', () => {
  const table = (...args: string[]) => balanceCommand(args).out.replaceAll('\u202f', ' ');

  test('names every item with mass, place and moment', () => {
    const text = table(barFile);
    expect(text).toMatch(/two +100\.0 +500\.0 +20\.0 +40\.0 +50 000/);
    expect(text).toMatch(/All +400\.0 +200\.0 +5\.0 +10\.0 +80 000/);
  });

  test('from a reference point, by name or id, in any case', () => {
    for (const from of ['Main Former', 'main former', 'former']) {
      expect(table(barFile, '--from', from)).toMatch(/two +100\.0 +350\.0 +10\.0 +40\.0 +35 000/);
    }
  });

  test('in inches and ounces', () => {
    // 500/25.4 and 100/28.349523125
    expect(table(barFile, '--units', 'inch')).toMatch(/two +3\.53 +19\.69 +0\.79 +1\.57/);
  });

  test('stays within 82 columns', () => {
    const lines = table(dunlin).split('\n');
    expect(lines.length).toBeGreaterThan(20);
    for (const line of lines) expect(line.length, line).toBeLessThanOrEqual(82);
  });

  test('an empty bench has no CG', () => {
    const empty = kept('empty.json', writeAircraft(aircraftOf([])));
    expect(table(empty)).toMatch(/CG +none/);
    expect(report(empty).cgMm).toBeNull();
  });
});

describe('bad input', () => {
  const bad = kept('bad.json', dunlinText.replace('"massG": 21', '"massG": -21'));
  const torn = kept('torn.json', '{\n  "format":\n}');

  test.each([
    [[join(folder, 'none.json')], /none\.json: there is no such file/],
    [[folder], /it is a folder/],
    [[bad], /has a fault:\n {2}parts\[1\] "Receiver" › massG: expected 0 g or more, got -21\./],
    [[torn], /line 3, column 1/],
    [[], /Expected one file, got 0/],
    [[barFile, dunlin], /Expected one file, got 2/],
    [[barFile, '--fuel', '2'], /--fuel: expected a number from 0/],
    [[barFile, '--fuel', 'half'], /got "half"/],
    [[barFile, '--units', 'cubits'], /expected metric or inch/],
    [[barFile, '--from', 'moon'], /no reference point "moon"; the file has "Main Former"/],
    [[barFile, '--wings'], /wings/],
  ])('%j: status 2 and a sentence on standard error', (args, sentence) => {
    const { status, out, err } = balanceCommand(args);
    expect({ status, out }).toEqual({ status: 2, out: '' });
    expect(err).toMatch(sentence);
  });
});

describe('as a command', () => {
  const script = fileURLToPath(new URL('../../src/commands/balance.ts', import.meta.url));
  const tsx = fileURLToPath(new URL('../../node_modules/.bin/tsx', import.meta.url));

  test('a relative path is taken from where it is called', () => {
    const out = execFileSync(tsx, [script, 'bar.json', '--json'], { cwd: folder, encoding: 'utf8' });
    expect(JSON.parse(out).massG).toBe(400);
  });

  test('exits with 2 on bad input, message on standard error only', () => {
    const { status, stdout, stderr } = spawnSync(tsx, [script, 'none.json'], {
      cwd: folder,
      encoding: 'utf8',
    });
    expect({ status, stdout }).toEqual({ status: 2, stdout: '' });
    expect(stderr).toMatch(/no such file/);
  });

  test('--help', () => {
    expect(balanceCommand(['--help'])).toMatchObject({ status: 0, err: '' });
    expect(balanceCommand(['--help']).out).toMatch(/--fuel 0\.5/);
  });
});
