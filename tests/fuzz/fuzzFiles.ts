import { writeAircraft } from '../../src/model/document/write';
import { readFileBytes } from '../../src/model/reading/fileText';
import { migrate } from '../../src/model/reading/migrations/migrate';
import { UNCHECKED } from '../../src/model/reading/read';
import { chanceOf } from './chance';
import { derivedOf, firstNaN } from './derived';
import { mutant } from './mutants';

/** No file may hold the processor longer than this, s. */
const LONGEST_S = 2;
/** Every so many files are looked at in all their load states. */
const DEEP = 8;

export interface Finding {
  readonly seed: number;
  readonly what: 'crash' | 'hang' | 'NaN' | 'repair' | 'undo';
  readonly detail: string;
}

export interface FileRun {
  readonly findings: readonly Finding[];
  /** How many of the files still read. */
  readonly read: number;
  readonly slowestS: number;
}

/** Reads spoilt files, one for each seed, and judges all that the bench would show of those that read. */
export function fuzzFiles(firstSeed: number, count: number, onFile?: (done: number) => void): FileRun {
  const findings: Finding[] = [];
  let [read, slowestS] = [0, 0];
  for (let seed = firstSeed; seed < firstSeed + count; seed += 1) {
    const start = process.cpuUsage();
    try {
      const found = judged(seed, () => {
        read += 1;
      });
      if (found) findings.push({ seed, ...found });
    } catch (error) {
      findings.push({ seed, what: 'crash', detail: String((error as Error)?.stack ?? error) });
    }
    const { user, system } = process.cpuUsage(start);
    const tookS = (user + system) / 1e6;
    slowestS = Math.max(slowestS, tookS);
    if (tookS > LONGEST_S) findings.push({ seed, what: 'hang', detail: `${tookS.toFixed(1)} s` });
    onFile?.(seed - firstSeed + 1);
  }
  return { findings, read, slowestS };
}

function judged(seed: number, onRead: () => void): Pick<Finding, 'what' | 'detail'> | null {
  const chance = chanceOf(seed);
  const bytes = mutant(chance);
  const result = readFileBytes(bytes);
  if (!result.ok) {
    const unchecked = result.faults.find(({ expected }) => expected === UNCHECKED);
    const silent = result.faults.find(
      ({ sentence }) => sentence.length < 5 || /[\p{Cc}\u202e]/u.test(sentence),
    );
    if (unchecked) return { what: 'crash', detail: unchecked.sentence };
    return silent ? { what: 'crash', detail: `a fault without a sentence: ${JSON.stringify(silent)}` } : null;
  }
  onRead();
  // A file of an older version is taken through its steps, which have tests of their own; nothing else may change.
  const migrated = migrate(JSON.parse(new TextDecoder().decode(bytes)));
  const meant = JSON.stringify(migrated.ok ? migrated.json : null);
  const written = JSON.stringify(JSON.parse(writeAircraft(result.aircraft)));
  if (meant !== written)
    return { what: 'repair', detail: `${meant.length} and ${written.length} characters` };
  const nan = firstNaN(derivedOf(result.aircraft, chance, seed % DEEP === 0));
  return nan === null ? null : { what: 'NaN', detail: nan };
}
