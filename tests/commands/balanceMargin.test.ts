import { mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';
import { balanceCommand } from '../../src/commands/balanceCommand';
import { writeAircraft } from '../../src/model/document/write';
import { aircraftOf, boxPart } from '../model/aircraft';

const demo = fileURLToPath(new URL('../../demo-data/whimbrel.json', import.meta.url));

test('balance --json gives neutral point and margin, and null where nothing lifts', () => {
  const { neutralPointMm, staticMarginPct, cgMm } = JSON.parse(balanceCommand([demo, '--json']).out);
  expect(neutralPointMm).toBeGreaterThan(cgMm[0]);
  expect(staticMarginPct).toBeGreaterThan(0);
  const file = join(mkdtempSync(join(tmpdir(), 'margin-')), 'bar.json');
  writeFileSync(file, writeAircraft(aircraftOf([], [boxPart('one', 300, [100, 0, 0])])));
  expect(JSON.parse(balanceCommand([file, '--json']).out)).toMatchObject({
    neutralPointMm: null,
    staticMarginPct: null,
  });
});

test('a geometry without an answer is named on standard error, and the balance still comes', () => {
  const aircraft = JSON.parse(readFileSync(demo, 'utf8'));
  const wing = aircraft.structure.find(({ id }: { id: string }) => id === 'wing');
  wing.rootMm = [40, -30, 0];
  const file = join(mkdtempSync(join(tmpdir(), 'margin-')), 'broken.json');
  writeFileSync(file, JSON.stringify(aircraft));
  const { status, out, err } = balanceCommand([file, '--json']);
  expect([status, JSON.parse(out).neutralPointMm]).toEqual([0, null]);
  expect(err).toMatch(/neutral point cannot be estimated: lifting surface "Wing"/);
});

test('the table says that the neutral point is an estimate', () => {
  expect(balanceCommand([demo]).out).toMatch(/neutral point .* % MAC, an estimate/);
});
