import { parseArgs } from 'node:util';
import { fuzzEdits } from '../../tests/fuzz/fuzzEdits';
import { type Finding, fuzzFiles } from '../../tests/fuzz/fuzzFiles';

// npm run fuzz [-- --files 10000 --edits 4000 --seed 1]: spoilt files and random edits, judged as the tests do.
const options = { files: { type: 'string' }, edits: { type: 'string' }, seed: { type: 'string' } } as const;

function counts(): { readonly files: number; readonly edits: number; readonly seed: number } | string {
  try {
    const { values } = parseArgs({ options });
    const { files = '10000', edits = '4000', seed = '1' } = values;
    const [fileCount = 0, editCount = 0, first = 0] = [files, edits, seed].map(Number);
    const whole = [fileCount, editCount, first].every((count) => Number.isSafeInteger(count) && count >= 0);
    return whole ? { files: fileCount, edits: editCount, seed: first } : 'Expected whole numbers, 0 or more.';
  } catch (error) {
    return error instanceof Error ? error.message : String(error);
  }
}

function tell(findings: readonly Finding[]): void {
  for (const { seed, what, detail } of findings) console.log(`seed ${seed}: ${what}: ${detail}`);
}

const asked = counts();
if (typeof asked === 'string') {
  console.error(`${asked} Use npm run fuzz -- --files 10000 --edits 4000 --seed 1.`);
  process.exitCode = 2;
} else {
  const every = (all: number, what: string) => (done: number) => {
    if (done % 500 === 0) console.error(`${done} of ${all} ${what} …`);
  };
  console.log(`seed ${asked.seed}`);
  const files = fuzzFiles(asked.seed, asked.files, every(asked.files, 'files'));
  tell(files.findings);
  console.log(
    `${asked.files} files, ${files.read} read: ${files.findings.length} findings; slowest ${files.slowestS.toFixed(2)} s of processor time`,
  );
  const edits = fuzzEdits(asked.seed, asked.edits, every(asked.edits, 'edits'));
  tell(edits.findings);
  console.log(
    `${asked.edits} edits, ${edits.taken} taken, ${edits.refused} refused: ${edits.findings.length} findings; slowest ${edits.slowestS.toFixed(2)} s of processor time`,
  );
  process.exitCode = files.findings.length + edits.findings.length === 0 ? 0 : 1;
}
