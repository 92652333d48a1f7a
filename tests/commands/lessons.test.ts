import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { lessonsCommand } from '../../src/commands/lessonsCommand';
import { inProject } from '../../src/commands/paths.mjs';
import { lessonJson, lessonNames } from '../model/lessons/lessonFiles';

let folder = '';
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'lessons-'));
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

function written(name: string, content: string | Uint8Array): string {
  const path = join(folder, name);
  writeFileSync(path, content);
  return path;
}

test('the lessons of the bench are sound, and each line tells the engine’s answer', () => {
  const paths = lessonNames.map((name) => inProject('demo-data', 'lessons', `${name}.json`));
  const { status, out, err } = lessonsCommand(paths);
  expect([status, err]).toEqual([0, '']);
  const lines = out.trimEnd().split('\n');
  expect(lines.length).toBe(9);
  for (const line of lines) expect(line).toMatch(/sound\. “.+”, [345] minutes; the engine answers .+\.$/);
  // 1000 g in all; the pack of 240 g goes 120 mm aft: 339.5 + 0.24 × 120.
  expect(lines.find((line) => line.includes('see-saw'))).toMatch(/answers 368\.3\u202fmm\.$/);
});

test('a lesson with faults gives them all and exits with 1', () => {
  const json = lessonJson('see-saw');
  json.closing = 'It moved 120 mm';
  json.question.change[0].itemId = 'pak';
  const { status, out } = lessonsCommand([written('bad.json', JSON.stringify(json))]);
  expect(status).toBe(1);
  expect(out).toMatch(/bad\.json has 3 faults:\n {2}question › change\[0\] › itemId/);
  expect(out).toMatch(/\n {2}closing: “120 mm”/);
  const fields = lessonsCommand([written('fields.json', JSON.stringify({ ...json, minutes: 9 }))]);
  expect(fields.status).toBe(1);
  expect(fields.out).toMatch(/has a fault:\n {2}minutes: expected 3 to 5 minutes, got 9\.\n/);
});

test('what cannot be read is told on the side of errors, and exits with 2', () => {
  const none = lessonsCommand([join(folder, 'none.json')]);
  expect([none.status, none.out]).toEqual([2, '']);
  expect(none.err).toMatch(/^Cannot read .*none\.json: there is no such file\.\n$/);
  const binary = lessonsCommand([written('zip.json', Uint8Array.from([80, 75, 3, 4, 0, 255, 254, 0]))]);
  expect(binary.status).toBe(2);
  expect(binary.err).toMatch(/no text file/);
  const option = lessonsCommand(['--fix', 'a.json']);
  expect([option.status, option.err]).toEqual([2, 'There is no option --fix; --help says more.\n']);
  expect(lessonsCommand([folder]).err).toMatch(/it is a folder/);
});

test('without a file it says how it is used', () => {
  expect(lessonsCommand([]).out).toMatch(/npm run lessons -- FILE…/);
  expect(lessonsCommand(['--help']).status).toBe(0);
});
