import { describe, expect, test } from 'vitest';
import { checkLayers } from './checkLayers';
import { climbingImports } from './layerRules';
import { readProjectFiles } from './projectFiles';

test('the layers hold', () => {
  const { errors, warnings } = checkLayers(readProjectFiles((path) => path.startsWith('src/')));
  for (const warning of warnings) console.warn(warning);
  expect(errors).toEqual([]);
});

test('every climb that is let pass is still there', () => {
  const sources = readProjectFiles((path) => path.startsWith('src/'));
  for (const climb of climbingImports) expect(sources.has(climb.split(' ')[0] ?? '')).toBe(true);
});

/** The findings for planted files; an innocent engine file is always there. */
function plant(files: Record<string, string>): string[] {
  return checkLayers(new Map(Object.entries({ 'src/engine/box.ts': 'export const box = 1;\n', ...files })))
    .errors;
}

describe('the layer check finds', () => {
  const imports: [path: string, text: string][] = [
    ['src/engine/a.ts', "import { useState } from 'react';"],
    ['src/engine/a.ts', "import type { Vector3 } from 'three';"],
    ['src/engine/a.ts', "export { create } from 'zustand';"],
    ['src/engine/a.ts', "const v = await import('valibot');"],
    ['src/engine/a.ts', 'const v = (name: string) => import(name);'],
    ['src/engine/a.ts', "export type V = import('three').Vector3;"],
    ['src/engine/a.ts', "import { readFileSync } from 'node:fs';"],
    ['src/engine/a.ts', "export * from '../model/types';"],
    ['src/model/a.ts', "import type { S } from '../store/document';"],
    ['src/model/a.ts', "import { create } from 'zustand/vanilla';"],
    ['src/store/a.ts', "import { useSyncExternalStore } from 'react';"],
    ['src/store/a.ts', "import { create } from 'zustand';"],
    ['src/store/a.ts', "import { ray } from '../interaction/ray';"],
    ['src/interaction/a.ts', "import { Ray } from 'three';"],
    ['src/interaction/a.ts', "import { Part } from '../scene/Part';"],
    ['src/scene/A.tsx', "import { Card } from '../panels/Card';"],
    ['src/panels/A.tsx', "import type { Part } from '../scene/Part';"],
    ['src/panels/A.tsx', "import { Vector3 } from 'three';"],
    ['src/files/a.ts', "import { Card } from '../panels/Card';"],
    ['src/workers/a.ts', "import type { D } from '../store/document';"],
    ['src/store/a.ts', "import { solver } from '../workers/solver';"],
    ['src/scene/A.tsx', "import { App } from '../main';"],
    ['src/main.tsx', "import { Mesh } from 'three';"],
    ['src/commands/a.ts', "import { Card } from '../panels/Card';"],
    ['src/engine/a.ts', "import data from '../../demo-data/sandmartin.json';"],
    ['src/panels/A.tsx', "import '../scene/stage.css';"],
  ];
  test.each(imports)('in %s: %s', (path, text) => {
    const others = [
      'model/types.ts',
      'store/document.ts',
      'interaction/ray.ts',
      'scene/Part.tsx',
      'panels/Card.tsx',
      'workers/solver.ts',
    ];
    const planted = Object.fromEntries([...others, 'main.tsx'].map((name) => [`src/${name}`, 'export {};']));
    expect(plant({ ...planted, [path]: text })).toEqual([expect.stringContaining(`${path}: imports`)]);
  });

  const globals: [path: string, text: string, name: string][] = [
    ['src/engine/a.ts', 'export const w = window.innerWidth;', 'window'],
    ['src/engine/a.ts', 'export const t = globalThis.performance.now();', 'performance'],
    ['src/engine/a.ts', 'export const e = document.body;', 'document'],
    ['src/engine/a.ts', 'export const t = performance.now();', 'performance'],
    ['src/engine/a.ts', 'export const t = { at: new Date() };', 'Date'],
    ['src/engine/a.ts', 'export const r = () => Math.random();', 'Math.random'],
    ['src/engine/a.ts', "export const f = fetch('x');", 'fetch'],
    ['src/engine/a.ts', 'setTimeout(() => {}, 1);', 'setTimeout'],
    ['src/engine/a.ts', 'export type E = { element: HTMLElement };', 'HTMLElement'],
    ['src/model/a.ts', 'export const { title } = document;', 'document'],
    ['src/panels/A.tsx', "export const A = () => <b>{localStorage.getItem('a')}</b>;", 'localStorage'],
    ['src/scene/a.ts', "window.localStorage.setItem('a', 'b');", 'localStorage'],
    ['src/store/a.ts', "indexedDB.open('a');", 'indexedDB'],
    ['src/main.tsx', 'new FileReader();', 'FileReader'],
    ['src/panels/a.ts', 'URL.createObjectURL(thing);', 'URL.createObjectURL'],
  ];
  test.each(globals)('in %s: %s', (path, text, name) => {
    expect(plant({ [path]: text })).toContainEqual(expect.stringContaining(`${path}: uses ${name},`));
  });

  test('an import cycle, types included', () => {
    const a = "import type { B } from './b';";
    const b = "export * from './deep';";
    const deep = "import '../a';";
    expect(plant({ 'src/store/a.ts': a, 'src/store/b.ts': b, 'src/store/deep/index.ts': deep })).toEqual([
      'import cycle: src/store/a.ts -> src/store/b.ts -> src/store/deep/index.ts -> src/store/a.ts',
    ]);
  });

  test('an import that climbs from a lower room to a higher one, or to the top of its layer', () => {
    const rooms = { 'src/model/words/verdict.ts': '', 'src/scene/Stage.tsx': '', 'src/model/attic/a.ts': '' };
    const climbing = (path: string, target: string) => plant({ ...rooms, [path]: `import '${target}';` });
    expect(climbing('src/model/fit/a.ts', '../words/verdict')).toEqual([
      expect.stringContaining('stands below'),
    ]);
    expect(climbing('src/scene/mat/a.ts', '../Stage')).toEqual([expect.stringContaining('stands below')]);
    expect(climbing('src/model/words/a.ts', '../attic/a')).toHaveLength(1);
    expect(climbing('src/model/attic/b.ts', './a')).toEqual([
      expect.stringContaining('no place in the order'),
    ]);
  });

  test('a name that says nothing, an unknown folder, a file too long, an import of nothing', () => {
    expect(plant({ 'src/engine/utils.ts': '' })).toHaveLength(1);
    expect(plant({ 'src/panels/common/A.tsx': '' })).toHaveLength(1);
    expect(plant({ 'src/physics/a.ts': '' })).toHaveLength(1);
    expect(plant({ 'src/main/a.ts': '' })).toHaveLength(1);
    expect(plant({ 'src/engine/a.ts': '// line\n'.repeat(401) })).toHaveLength(1);
    expect(plant({ 'src/engine/a.ts': "import './gone';" })).toHaveLength(1);
  });

  test('that there was no engine to check', () => {
    expect(checkLayers(new Map([['src/main.tsx', '']])).errors).toHaveLength(1);
  });
});

test('the layer check warns of a long file and leaves good sources alone', () => {
  const long = checkLayers(new Map([['src/engine/a.ts', '// line\n'.repeat(251)]]));
  expect(long).toEqual({ errors: [], warnings: [expect.stringContaining('251 lines')] });
  expect(
    plant({
      'src/model/types.ts': "import type { Box } from '../engine/box';\nexport const v = 'window';",
      'src/model/title.ts': 'export const titleOf = (document: { title: string }) => document.title; // Date',
      'src/engine/member.ts':
        'export const f = (a: { Date: number; fetch(): void }) => a.Date;\ntype T = [location: 1];\ninterface F { (document: 1, ...window: 1[]): void; [fetch: string]: unknown }',
      'src/store/react.ts': "import { useStore } from 'zustand';\nimport { useRef } from 'react';",
      'src/store/document.ts': "import { createStore } from 'zustand/vanilla';",
      'src/interaction/snap.ts': "import { title } from '../model/title';",
      'src/scene/Stage.tsx':
        "import { Canvas } from '@react-three/fiber';\nimport '../interaction/snap';\nimport * as T from 'three';",
      'src/panels/Card.tsx': "import './card.css';\nimport { useState } from 'react';",
      'src/files/autosave.ts': "localStorage.setItem('a', 'b');",
      'src/main.tsx':
        "import { createRoot } from 'react-dom/client';\nconst S = () => import('./scene/Stage');",
    }),
  ).toEqual([]);
});
