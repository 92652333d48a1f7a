import { existsSync, readFileSync } from 'node:fs';
import { dirname, join, posix } from 'node:path';
import { gzipSync } from 'node:zlib';

/** The most the first load may weigh over the wire, in bytes after gzip (300 kB of 1000 bytes): the panels; the picture on the stage is fetched beside them. */
export const firstLoadLimitBytes = 300_000;

/**
 * What a browser fetches before the bench can show: the page, its scripts with their static imports,
 * its style sheets, and the fonts whose unicode range holds plain Latin letters. Sizes are bytes after
 * gzip; fonts are compressed already and count as they are.
 * Throws if the folder holds no build.
 * @param {string} folder the build folder
 * @returns {{ file: string, bytes: number }[]} largest first
 */
export function firstLoadFiles(folder) {
  const manifestPath = join(folder, '.vite/manifest.json');
  if (!existsSync(manifestPath)) throw new Error(`There is no build in ${folder}: run npm run build first.`);
  /** @type {Record<string, { file: string, isEntry?: boolean, imports?: string[], css?: string[] }>} */
  const manifest = JSON.parse(readFileSync(manifestPath, 'utf8'));
  const files = new Set(['index.html', ...linkedFiles(readFileSync(join(folder, 'index.html'), 'utf8'))]);
  const visited = new Set();
  const visit = (/** @type {string} */ key) => {
    const chunk = manifest[key];
    if (!chunk || visited.has(key)) return;
    visited.add(key);
    for (const file of [chunk.file, ...(chunk.css ?? [])]) files.add(file);
    for (const imported of chunk.imports ?? []) visit(imported);
  };
  for (const [key, chunk] of Object.entries(manifest)) if (chunk.isEntry) visit(key);
  for (const file of [...files]) {
    if (!file.endsWith('.css')) continue;
    const css = readFileSync(join(folder, file), 'utf8');
    for (const url of latinFontUrls(css)) files.add(posix.join(dirname(file), url));
  }
  return [...files]
    .map((file) => ({ file, bytes: wireBytes(join(folder, file)) }))
    .sort((a, b) => b.bytes - a.bytes);
}

/** Scripts and style sheets that a page names itself, as paths within the build folder. */
function linkedFiles(/** @type {string} */ html) {
  return [...html.matchAll(/(?:src|href)="\.?\/?([^":]+\.(?:js|css))"/g)].map((match) => match[1] ?? '');
}

/**
 * The woff2 files of those @font-face rules that a page of plain Latin text makes a browser fetch.
 * @param {string} css
 * @returns {string[]}
 */
export function latinFontUrls(css) {
  return [...css.matchAll(/@font-face\s*\{([^}]*)\}/g)].flatMap(([, rule = '']) => {
    const range = /unicode-range:\s*([^;}]+)/i.exec(rule)?.[1];
    const coversLatin = range === undefined || /U\+0{0,4}(?:0|\?\?)(?:-0*ff|,|$|\s)/i.test(range);
    const url = /url\(["']?([^"')]+\.woff2)/.exec(rule)?.[1];
    return coversLatin && url ? [url] : [];
  });
}

function wireBytes(/** @type {string} */ path) {
  const content = readFileSync(path);
  return path.endsWith('.woff2') ? content.length : gzipSync(content).length;
}

/** Prints the first load as a table and returns whether it is within the limit. */
export function reportFirstLoad(/** @type {string} */ folder) {
  const files = firstLoadFiles(folder);
  const total = files.reduce((sum, { bytes }) => sum + bytes, 0);
  const row = (/** @type {string} */ name, /** @type {number} */ bytes) =>
    console.log(`${(bytes / 1000).toFixed(1).padStart(8)} kB  ${name}`);
  console.log('First load, gzip:');
  for (const { file, bytes } of files) row(file, bytes);
  row(`in all; the limit is ${firstLoadLimitBytes / 1000} kB`, total);
  if (total <= firstLoadLimitBytes) return true;
  console.error(`The first load is ${((total - firstLoadLimitBytes) / 1000).toFixed(1)} kB over its limit.`);
  return false;
}
