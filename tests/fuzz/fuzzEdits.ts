import { blankAircraft } from '../../src/model/document/blank';
import { itemById } from '../../src/model/document/edit';
import { writeAircraft } from '../../src/model/document/write';
import { editFault } from '../../src/model/reading/editFault';
import { parseAircraft } from '../../src/model/reading/read';
import { type Bench, createBench } from '../../src/store/bench';
import { type Chance, chanceOf } from './chance';
import { derivedOf, firstNaN } from './derived';
import type { Finding } from './fuzzFiles';
import { sources } from './mutants';
import { randomEdits } from './randomEdits';

/** So many edits are made on one bench before all of them are taken back. */
const EDITS_OF_BENCH = 40;
const LONGEST_S = 2;

export interface EditRun {
  readonly findings: readonly Finding[];
  /** How many edits were taken, and how many refused with a sentence. */
  readonly taken: number;
  readonly refused: number;
  readonly slowestS: number;
}

/** Makes random edits on benches, through the store as the screen does, and takes them all back. */
export function fuzzEdits(firstSeed: number, count: number, onEdit?: (done: number) => void): EditRun {
  const findings: Finding[] = [];
  let [taken, refused, slowestS, done] = [0, 0, 0, 0];
  for (let seed = firstSeed; done < count; seed += 1) {
    const chance = chanceOf(seed);
    const bench = benchOf(chance);
    const start = writeAircraft(bench.document.current());
    for (let at = 0; at < EDITS_OF_BENCH && done < count; at += 1, done += 1) {
      const before = process.cpuUsage();
      try {
        const told = step(bench, chance, at % 8 === 0);
        if (told === null) taken += 1;
        else if (typeof told === 'string') refused += 1;
        else findings.push({ seed, ...told });
      } catch (error) {
        findings.push({ seed, what: 'crash', detail: String((error as Error)?.stack ?? error) });
        break;
      }
      const { user, system } = process.cpuUsage(before);
      slowestS = Math.max(slowestS, (user + system) / 1e6);
      if ((user + system) / 1e6 > LONGEST_S) {
        findings.push({ seed, what: 'hang', detail: `edit ${at}: ${(user + system) / 1e6} s` });
      }
      onEdit?.(done + 1);
    }
    const detail = undoneFault(bench, start);
    // Its timer would keep it until this run, which never pauses, is over; and they would all go off then.
    bench.rest.stop();
    if (detail) findings.push({ seed, what: 'undo', detail });
  }
  return { findings, taken, refused, slowestS };
}

function benchOf(chance: Chance): Bench {
  const read = parseAircraft(chance.pick(sources));
  if (!read.ok) throw new Error(read.faults[0]?.sentence);
  return createBench(chance.next() < 0.2 ? blankAircraft() : read.aircraft);
}

/** One edit: null when it was taken, a sentence when it was refused, a finding when something is wrong. */
function step(bench: Bench, chance: Chance, deep: boolean): null | string | Pick<Finding, 'what' | 'detail'> {
  const { document } = bench;
  const before = document.api.getState().committed;
  if (chance.next() < 0.15) return dragged(bench, chance);
  const next = chance.pick(randomEdits)(before, chance);
  const told = typeof next === 'string' ? next : editFault(before, next);
  if (told !== null) {
    const bad = told.trim().length < 5 || /undefined|NaN›/.test(told);
    return bad ? { what: 'crash', detail: `a refusal without a sentence: "${told}"` } : told;
  }
  document.commit('Edit', next as typeof before);
  return judged(bench, chance, deep);
}

function dragged({ document, drag }: Bench, chance: Chance): null {
  const { parts, tanks } = document.current();
  const item = [...parts, ...tanks].length > 0 ? chance.pick([...parts, ...tanks]) : null;
  if (!item || !drag.pickUp(item.id)) return null;
  for (let left = 3; left > 0; left -= 1) drag.moveTo([chance.below(1500), chance.below(200) - 100, 0]);
  if (chance.next() < 0.3) drag.cancel();
  else drag.setDown();
  if (!itemById(document.current(), item.id)) throw new Error('What was dragged is gone.');
  return null;
}

function judged(
  { document, balance }: Bench,
  chance: Chance,
  deep: boolean,
): null | Pick<Finding, 'what' | 'detail'> {
  const aircraft = document.current();
  const { loaded: _, liquid: __, ...figures } = balance.get();
  const nan = firstNaN(figures) ?? firstNaN(derivedOf(aircraft, chance, deep));
  if (nan !== null) return { what: 'NaN', detail: nan };
  const text = writeAircraft(aircraft);
  const again = parseAircraft(text);
  if (!again.ok)
    return { what: 'repair', detail: `what was taken does not read: ${again.faults[0]?.sentence}` };
  return writeAircraft(again.aircraft) === text
    ? null
    : { what: 'repair', detail: 'written twice, two texts' };
}

/** Takes every step back, and does and takes back all of them again. */
function undoneFault({ document }: Bench, start: string): string | null {
  const end = writeAircraft(document.current());
  const steps = document.api.getState().past.length;
  for (let left = steps; left > 0; left -= 1) document.undo();
  if (writeAircraft(document.current()) !== start) return `after ${steps} steps back it is not as it was`;
  for (let left = steps; left > 0; left -= 1) document.redo();
  return writeAircraft(document.current()) === end
    ? null
    : `after ${steps} steps on again it is not as it was`;
}
