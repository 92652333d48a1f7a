/** What may stand in one file of src alone, and where: each is one half of how workers are asked. */
const homes: readonly { readonly what: string; readonly pattern: RegExp; readonly home: RegExp }[] = [
  {
    what: 'hears or answers messages of a worker; answerAsks does',
    pattern: /addEventListener\(\s*'message'|\bonmessage\s*=/,
    home: /^src\/workers\/(answerAsks|workerClient)\.ts$/,
  },
  {
    what: 'sends to a worker; workerClient does',
    pattern: /\bpostMessage\s*\(/,
    home: /^src\/workers\/(answerAsks|workerClient|envelope)\.ts$/,
  },
  { what: 'opens a worker', pattern: /\bnew Worker\(/, home: /^src\/(solvers|atFirstRest)\.ts$/ },
];

/** Tabs of one browser speak with each other in the same words, and so does the worker that keeps the page. */
const others: ReadonlySet<string> = new Set([
  'src/files/oneTab.ts',
  'src/files/fleet/fleetNews.ts',
  'src/files/offline/keepOffline.ts',
]);

/** Where a worker is spoken with past the one client. */
export const strayWorkerTalk = (path: string, code: string): string[] =>
  homes.flatMap(({ what, pattern, home }) =>
    pattern.test(code) && !home.test(path) && !others.has(path) ? [`${path}: ${what}`] : [],
  );
