import { readFileSync } from 'node:fs';
import { parseArgs } from 'node:util';
import { type Balance, balanceAt, LEVEL } from '../model/balance/balance';
import type { Aircraft, ReferencePoint } from '../model/document/types';
import { parseAircraft } from '../model/reading/read';
import { estimateStability } from '../model/stability/estimateStability';
import { type StabilityAnswer, stabilityInput } from '../model/stability/stability';
import type { UnitSystem } from '../model/units';
import { balanceJson } from './balanceJson';
import { balanceTable } from './balanceTable';

const HELP = `Balances an aircraft file.

  npm run --silent balance -- FILE [options]

  --fuel 0.5       usable fuel left, 1 full to 0 dry; full when left out
  --units inch     inches and ounces in the table; metric when left out
  --from NAME      show places from this reference point instead of the datum
  --json           print JSON: always mm and g, from the datum; products of
                   inertia are tensor elements, xy = -∫xy dm
  --help           print this

The exit code is 0, or 2 when the command or the file cannot be read.
`;

/** What a command leaves behind: its exit code and what it prints. */
export interface Outcome {
  readonly status: number;
  readonly out: string;
  readonly err: string;
}

interface Wish {
  readonly path: string;
  readonly fuelFraction: number;
  readonly system: UnitSystem;
  readonly from: string | undefined;
  readonly json: boolean;
}

/** A command line that cannot be followed, or a file that cannot be read; the message is for the person. */
class Refused extends Error {}

/** Balances the file that the arguments name. Reads that file and does nothing else. */
export function balanceCommand(args: readonly string[]): Outcome {
  try {
    const wish = wishOf(args);
    if (wish === 'help') return { status: 0, out: HELP, err: '' };
    const aircraft = aircraftIn(wish.path);
    const from = wish.from === undefined ? null : pointNamed(aircraft, wish.from);
    const answer: StabilityAnswer = estimateStability(stabilityInput(aircraft), 'fine');
    const [estimate, fault] = answer && 'fault' in answer ? [null, `${answer.fault}\n`] : [answer, ''];
    const balance: Balance = balanceAt(aircraft, { fuelFraction: wish.fuelFraction, down: LEVEL, estimate });
    const out = wish.json
      ? balanceJson(aircraft, balance, wish.fuelFraction)
      : balanceTable(aircraft, balance, { fuelFraction: wish.fuelFraction, system: wish.system, from });
    return { status: 0, out, err: fault };
  } catch (error) {
    if (error instanceof Refused) return { status: 2, out: '', err: `${error.message}\n` };
    throw error;
  }
}

function wishOf(args: readonly string[]): Wish | 'help' {
  const { values, positionals } = parsed(args);
  if (values.help) return 'help';
  const [path, ...more] = positionals;
  if (path === undefined || more.length > 0) {
    throw new Refused(`Expected one file, got ${positionals.length}. Try --help.`);
  }
  const fuelFraction = Number(values.fuel ?? '1');
  if (values.fuel?.trim() === '' || !(fuelFraction >= 0 && fuelFraction <= 1)) {
    throw new Refused(`--fuel: expected a number from 0 (dry) to 1 (full), got "${values.fuel}".`);
  }
  const system = systems[values.units ?? 'metric'];
  if (!system) throw new Refused(`--units: expected metric or inch, got "${values.units}".`);
  return { path, fuelFraction, system, from: values.from, json: values.json ?? false };
}

const systems: Readonly<Record<string, UnitSystem>> = {
  metric: 'metric',
  inch: 'inch-ounce',
  'inch-ounce': 'inch-ounce',
};

function parsed(args: readonly string[]) {
  try {
    return parseArgs({
      args: [...args],
      allowPositionals: true,
      options: {
        fuel: { type: 'string' },
        units: { type: 'string' },
        from: { type: 'string' },
        json: { type: 'boolean' },
        help: { type: 'boolean' },
      },
    });
  } catch (error) {
    if (error instanceof TypeError) throw new Refused(`${error.message} Try --help.`);
    throw error;
  }
}

function aircraftIn(path: string): Aircraft {
  const read = parseAircraft(textOf(path));
  if (read.ok) return read.aircraft;
  const count = read.faults.length === 1 ? 'a fault' : `${read.faults.length} faults`;
  throw new Refused(
    [`${path} has ${count}:`, ...read.faults.map(({ sentence }) => `  ${sentence}`)].join('\n'),
  );
}

function textOf(path: string): string {
  try {
    return readFileSync(path, 'utf8');
  } catch (error) {
    const { code, message } = error as NodeJS.ErrnoException;
    const why = { ENOENT: 'there is no such file', EISDIR: 'it is a folder', EACCES: 'it may not be read' };
    throw new Refused(`Cannot read ${path}: ${why[code as keyof typeof why] ?? message}.`);
  }
}

function pointNamed({ referencePoints }: Aircraft, wanted: string): ReferencePoint {
  const plain = (text: string) => text.trim().toLowerCase();
  const point = referencePoints.find(({ id, name }) => plain(name) === plain(wanted) || id === plain(wanted));
  if (point) return point;
  const known = referencePoints.map(({ name }) => `"${name}"`).join(', ');
  throw new Refused(`--from: there is no reference point "${wanted}"; the file has ${known || 'none'}.`);
}
