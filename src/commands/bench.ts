import { readdir } from 'node:fs/promises';
import { pathToFileURL } from 'node:url';
import type { BenchRow } from '../../tests/bench/measure';
import { inProject } from './paths.mjs';

// npm run bench [-- --json] [part of a file name]: runs tests/bench/*.bench.ts, one after the other.
const json = process.argv.includes('--json');
const wanted = process.argv.slice(2).filter((argument) => !argument.startsWith('--'));
const folder = inProject('tests/bench');
const files = (await readdir(folder))
  .filter(
    (file) => file.endsWith('.bench.ts') && (wanted.length === 0 || wanted.some((w) => file.includes(w))),
  )
  .sort();
const rows: BenchRow[] = [];
for (const file of files) {
  if (!json) console.error(`running ${file} …`);
  const module: { default: () => Promise<BenchRow[]> } = await import(
    pathToFileURL(`${folder}/${file}`).href
  );
  rows.push(...(await module.default()));
}
if (rows.length === 0) {
  console.error(
    wanted.length ? `No benchmark is called ${wanted.join(' or ')}.` : 'There is no benchmark to run.',
  );
  process.exitCode = 1;
} else {
  console.log(json ? JSON.stringify(rows, null, 2) : benchTable(rows));
}

function benchTable(list: readonly BenchRow[]): string {
  const cells = list.map((row) => [
    row.name,
    `${row.ours.toPrecision(3)} ${row.unit}`,
    `${row.theirs.toPrecision(3)} ${row.unit}`,
    `${row.ratio.toPrecision(3)}×`,
    row.against,
  ]);
  const lines = [['what', 'ours', 'theirs', 'theirs/ours', 'against'], ...cells];
  const widths = lines[0]!.map((_, column) => Math.max(...lines.map((line) => line[column]!.length)));
  return lines
    .map((line) =>
      line
        .map((cell, i) => cell.padEnd(widths[i]!))
        .join('  ')
        .trimEnd(),
    )
    .join('\n');
}
