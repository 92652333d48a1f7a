import { expect, test } from 'vitest';
import { foreignAddresses, machinePaths, strayTopEntries } from './checkText';
import { projectFiles, readProjectFiles } from './projectFiles';

const isText = (path: string) =>
  /(^|\/)[^.]+$|\.(ts|tsx|mjs|json|css|html|svg|md|txt|csv)$/.test(path) && path !== 'package-lock.json';

test('the top folder holds nothing unexpected', () => {
  expect(projectFiles().length).toBeGreaterThan(10);
  expect(strayTopEntries(projectFiles())).toEqual([]);
  expect(strayTopEntries(['src/main.tsx', '.ci/run', 'notes.txt', 'lib/a.ts'])).toEqual(['notes.txt', 'lib']);
});

test('no file names a folder of somebody’s machine', () => {
  const found = [...readProjectFiles(isText)].flatMap(([path, text]) => machinePaths(path, text));
  expect(found).toEqual([]);
  const folder = ['', 'work', 'main'].join('/');
  expect(machinePaths('a.ts', `\nread('${folder}');`)).toEqual([`a.ts:2: read('${folder}');`]);
  const noFolder = ["import '..", '..', 'work', "a'; const m = g", 'work', '2;'].join('/');
  expect(machinePaths('a.ts', noFolder)).toEqual([]);
});

test('no source holds a foreign web address outside comments', () => {
  const sources = readProjectFiles((path) => path.startsWith('src/') && isText(path));
  expect([...sources].flatMap(([path, text]) => foreignAddresses(path, text))).toEqual([]);
  const code = "fetch('https://fonts.example.org/a.woff2'); // https://example.org/paper";
  expect(foreignAddresses('src/a.ts', code)).toHaveLength(1);
  expect(foreignAddresses('src/a.css', "@import 'http://example.org/a.css';")).toHaveLength(1);
  expect(
    foreignAddresses('src/a.ts', "const ns = 'http://www.w3.org/2000/svg'; // https://example.org"),
  ).toEqual([]);
});
