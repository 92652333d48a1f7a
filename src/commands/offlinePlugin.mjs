import { createHash } from 'node:crypto';
import { readdirSync, readFileSync, statSync } from 'node:fs';
import { join, relative } from 'node:path';
import { inProject } from './paths.mjs';

const template = inProject('src/files/offline/serviceWorker.js');
const changes = inProject('src/files/offline/changes.json');

/** Every file in a folder, by its path from there with forward slashes. */
function filesIn(/** @type {string} */ folder) {
  return readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .filter((name) => statSync(join(folder, name)).isFile())
    .map((name) => relative(folder, join(folder, name)).replaceAll('\\', '/'));
}

/**
 * The worker's text for a build: what it keeps, the build's mark, and what is new in it.
 * @param {readonly string[]} files
 * @param {string} build
 */
export function workerText(files, build) {
  /** @type {Record<string, string>} */
  const lists = {
    FILES: JSON.stringify([...files].sort()),
    BUILD: JSON.stringify(build),
    CHANGES: JSON.stringify(JSON.parse(readFileSync(changes, 'utf8'))),
  };
  return readFileSync(template, 'utf8').replace(
    /\/\* (FILES|BUILD|CHANGES) \*\/ (?:\[\]|'')/g,
    (_, word) => lists[word] ?? '',
  );
}

/**
 * Adds the worker that keeps the page for use without a network to a build, with the list of all its files.
 * @returns {import('vite').Plugin}
 */
export function offline() {
  let assets = '';
  return {
    name: 'offline',
    apply: 'build',
    configResolved: (config) => {
      assets = config.publicDir;
    },
    generateBundle: {
      order: 'post',
      handler(_options, bundle) {
        const mark = createHash('sha256');
        const files = [];
        for (const [name, piece] of Object.entries(bundle).sort(([a], [b]) => (a < b ? -1 : 1))) {
          if (name.startsWith('.vite/')) continue;
          files.push(name);
          mark.update(name).update(piece.type === 'chunk' ? piece.code : piece.source);
        }
        for (const name of filesIn(assets).sort()) {
          // A picture for readers of the project, which no page shows.
          if (name === 'bench.png') continue;
          files.push(name);
          mark.update(name).update(readFileSync(join(assets, name)));
        }
        mark.update(readFileSync(template)).update(readFileSync(changes));
        const source = workerText(files, mark.digest('hex').slice(0, 16));
        this.emitFile({ type: 'asset', fileName: 'service-worker.js', source });
      },
    },
  };
}
