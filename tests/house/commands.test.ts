import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { browserCandidates } from '../../src/commands/browser.mjs';
import { firstMissingPackage, nodeIsNewEnough } from '../../src/commands/install.mjs';
import {
  firstLoadFiles,
  firstLoadLimitBytes,
  latinFontUrls,
  reportFirstLoad,
} from '../../src/commands/size.mjs';
import { countTests } from '../../src/commands/testCount.mjs';

test('Node is compared by number, not by text', () => {
  expect(['20.19.0', '20.100.0', '22.0.0', '100.1.0'].map(nodeIsNewEnough)).not.toContain(false);
  expect(['20.18.3', '20.2.0', '18.20.0', '9.99.0'].map(nodeIsNewEnough)).not.toContain(true);
});

describe('the installation is stale when', () => {
  const wanted = {
    packages: {
      '': {},
      'node_modules/a': { version: '1.0.0' },
      'node_modules/a/node_modules/@s/b': { version: '2.0.0' },
      'node_modules/other-platform': { version: '3.0.0', optional: true },
    },
  };
  const present = {
    'node_modules/a': { version: '1.0.0' },
    'node_modules/a/node_modules/@s/b': { version: '2.0.0' },
  };
  test.each([
    ['never, if all is there but another platform’s package', present, null],
    ['nothing is there', {}, 'a'],
    ['a version differs', { ...present, 'node_modules/a': { version: '1.0.1' } }, 'a'],
    ['a nested package is gone', { 'node_modules/a': { version: '1.0.0' } }, '@s/b'],
    [
      'an optional one is of another version',
      { ...present, 'node_modules/other-platform': { version: '1' } },
      'other-platform',
    ],
  ])('%s', (_, packages, missing) => {
    expect(firstMissingPackage(wanted, { packages })).toBe(missing);
  });
  test('there is no record at all', () => expect(firstMissingPackage(wanted, null)).toBe('a'));
});

test('a browser is looked for where each platform keeps it; CHROME_PATH wins', () => {
  expect(browserCandidates('linux', { CHROME_PATH: '/opt/c', PATH: '/usr/bin' })).toEqual(['/opt/c']);
  expect(browserCandidates('linux', { PATH: '/usr/bin' })[0]).toBe(join('/usr/bin', 'chromium'));
  expect(browserCandidates('darwin', {})[0]).toBe(
    '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
  );
  expect(browserCandidates('win32', { 'PROGRAMFILES(X86)': 'C:\\P' })).toContain(
    'C:\\P\\Microsoft\\Edge\\Application\\msedge.exe',
  );
});

describe('the count at the end of npm test', () => {
  const report = (numPassedTests: number, numFailedTests: number, ...files: [string, string[]][]) => ({
    numPassedTests,
    numFailedTests,
    testResults: files.map(([status, results]) => ({
      status,
      assertionResults: results.map((result) => ({ status: result })),
    })),
  });
  test.each([
    ['all good', report(3, 0, ['passed', ['passed']]), 0, { passed: 3, failed: 0 }],
    ['one bad', report(2, 1, ['failed', ['passed', 'failed']]), 1, { passed: 2, failed: 1 }],
    [
      'a file that does not load',
      report(2, 0, ['failed', []], ['passed', ['passed']]),
      1,
      { passed: 2, failed: 1 },
    ],
    ['both', report(2, 1, ['failed', []], ['failed', ['failed']]), 1, { passed: 2, failed: 2 }],
    ['an error outside any test', report(2, 0, ['passed', ['passed']]), 1, { passed: 2, failed: 1 }],
    ['no test ran', report(0, 0), 0, { passed: 0, failed: 1 }],
    ['no report', null, 1, { passed: 0, failed: 1 }],
  ])('%s', (_, given, status, expected) => {
    expect(countTests(given, status)).toEqual(expected);
  });
});

test('of the fonts, those that plain Latin text needs count', () => {
  const face = (file: string, range: string) =>
    `@font-face{font-family:A;src:url(${file}) format("woff2")${range}}`;
  const css = [
    face('./latin.woff2', ';unicode-range:U+0000-00FF,U+0131'),
    face('"short.woff2"', ';unicode-range:U+0-FF'),
    face('marks.woff2', ';unicode-range:U+??,U+131'),
    face('all.woff2', ''),
    face('latin-ext.woff2', ';unicode-range:U+0100-02BA,U+20A0-20AB'),
    face('greek.woff2', ';unicode-range:U+0370-03FF'),
  ].join('');
  expect(latinFontUrls(css)).toEqual(['./latin.woff2', 'short.woff2', 'marks.woff2', 'all.woff2']);
});

test('the first load follows static imports and style sheets, not what loads later', () => {
  const folder = mkdtempSync(join(tmpdir(), 'first-load-'));
  const write = (path: string, text: string) => writeFileSync(join(folder, path), text);
  mkdirSync(join(folder, '.vite'));
  mkdirSync(join(folder, 'assets'));
  const manifest = {
    'index.html': {
      file: 'assets/main.js',
      isEntry: true,
      imports: ['_shared.js'],
      dynamicImports: ['late.ts'],
      css: ['assets/main.css'],
    },
    '_shared.js': { file: 'assets/shared.js', imports: ['index.html'] },
    'late.ts': { file: 'assets/late.js', isDynamicEntry: true },
  };
  write('.vite/manifest.json', JSON.stringify(manifest));
  write('index.html', '<script src="./assets/early.js"></script><link rel="icon" href="./favicon.svg">');
  for (const name of ['main.js', 'shared.js', 'late.js', 'early.js']) write(`assets/${name}`, name);
  write('assets/main.css', '@font-face{src:url(latin.woff2)}');
  write('assets/latin.woff2', 'x'.repeat(1000));
  const files = firstLoadFiles(folder);
  const small = reportFirstLoad(folder);
  write('assets/latin.woff2', 'x'.repeat(firstLoadLimitBytes));
  const large = reportFirstLoad(folder);
  rmSync(folder, { recursive: true });
  expect([small, large]).toEqual([true, false]);
  expect(files[0]).toEqual({ file: 'assets/latin.woff2', bytes: 1000 });
  expect(files.map(({ file }) => file).sort()).toEqual([
    'assets/early.js',
    'assets/latin.woff2',
    'assets/main.css',
    'assets/main.js',
    'assets/shared.js',
    'index.html',
  ]);
});
