import { expect, test } from 'vitest';
import type { ShapeKind } from '../../src/engine/mass/shapes';
import { defaultsOverSolids } from './checkSolids';
import { readProjectFiles } from './projectFiles';

const isCode = (path: string) => /^src\/.*\.tsx?$/.test(path);

test('no switch over solids has a default', () => {
  const sources = [...readProjectFiles(isCode)];
  expect(sources.flatMap(([path, text]) => defaultsOverSolids(path, text))).toEqual([]);
});

test('the check finds a default over solids, and leaves other switches alone', () => {
  const over = (cases: string) =>
    defaultsOverSolids('src/a.ts', `export function f(k: string) {\n  switch (k) {\n${cases}\n  }\n}`);
  expect(over("case 'cylinder': return 1;\ndefault: return 2;")).toEqual([
    'src/a.ts:2: a switch over solids has a default',
  ]);
  expect(over("case 'cylinder': return 1;")).toEqual([]);
  expect(over("case 'Enter': return 1;\ndefault: return 2;")).toEqual([]);
});

// What the rule is for: the compiler refuses a switch that leaves a solid out, and a table that does.
test('the compiler names what leaves a solid out', () => {
  const lengthsOf = (kind: ShapeKind): number => {
    switch (kind) {
      case 'sphere':
      case 'mesh':
      case 'loft':
      case 'prism':
      case 'panel':
        return 0;
      case 'box':
      case 'taperedBox':
      case 'cylinder':
      case 'tube':
      case 'frustum':
      case 'ellipsoid':
      case 'capsule':
        return 1;
    }
  };
  // @ts-expect-error a table without all solids is no table of solids
  const short: Readonly<Record<ShapeKind, true>> = { box: true };
  expect([lengthsOf('sphere'), lengthsOf('tube'), Object.keys(short).length]).toEqual([0, 1, 1]);
});
