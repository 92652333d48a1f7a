import { expect, test } from 'vitest';
import { lastingVariables, memoryHome, ownMemories } from './checkMemory';
import { readProjectFiles } from './projectFiles';

const sources = readProjectFiles((path) => path.startsWith('src/'));

test('what is worked out once is remembered in one home', () => {
  expect(ownMemories(sources)).toEqual([]);
});

test('every variable that is let pass is still there', () => {
  expect(sources.has(memoryHome)).toBe(true);
  for (const path of Object.keys(lastingVariables)) expect(sources.get(path)).toMatch(/^let\b/m);
});

test('the check finds a WeakMap and a variable of a file, and no others', () => {
  const planted = (path: string, text: string) => ownMemories(new Map([[path, text]]));
  expect(planted('src/model/a.ts', 'const seen = new WeakMap<object, number>();')).toHaveLength(1);
  expect(planted('src/panels/A.tsx', 'let kept: number | null = null;')).toHaveLength(1);
  expect(planted('src/engine/a.ts', 'export let latest = 0;')).toHaveLength(1);
  expect(planted(memoryHome, 'new WeakMap();')).toEqual([]);
  expect(
    planted('src/model/a.ts', '// a WeakMap once\nexport function f() {\n  let a = 1;\n  return a;\n}'),
  ).toEqual([]);
});
