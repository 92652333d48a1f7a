import { expect, test } from 'vitest';
import { strayWorkerTalk } from './checkWorkers';
import { readProjectFiles } from './projectFiles';
import { readSource } from './sourceFacts';

test('workers are asked through one client, and answer through one envelope', () => {
  const sources = [...readProjectFiles((path) => /^src\/.*\.tsx?$/.test(path))];
  expect(sources.flatMap(([path, text]) => strayWorkerTalk(path, readSource(path, text).code))).toEqual([]);
});

test('the check finds who speaks with a worker past the client', () => {
  const code = "const w = new Worker('a');\nw.onmessage = null;\nw.postMessage(1);";
  expect(strayWorkerTalk('src/panels/a.ts', code)).toHaveLength(3);
  expect(strayWorkerTalk('src/solvers.ts', 'const w = new Worker(url);')).toEqual([]);
  expect(strayWorkerTalk('src/store/a.ts', "view.addEventListener('resize', fit);")).toEqual([]);
});
