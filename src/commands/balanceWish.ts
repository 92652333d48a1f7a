import { parseArgs } from 'node:util';
import { shownText } from '../model/document/names';
import type { BenchAttitude } from '../model/loads/attitude';
import { shortened } from '../model/reading/fault';
import type { UnitSystem } from '../model/units';
import { attitudeWish } from './attitudeWish';

/** A command line that cannot be followed, or a file that cannot be read; the message is for the person. */
export class Refused extends Error {}

/** What a person asks of the balance. */
export interface Wish {
  readonly path: string;
  readonly fuelFraction: number;
  readonly system: UnitSystem;
  readonly from: string | undefined;
  readonly json: boolean;
  readonly attitude: BenchAttitude;
}

const options = {
  fuel: { type: 'string' },
  units: { type: 'string' },
  from: { type: 'string' },
  attitude: { type: 'string' },
  json: { type: 'boolean' },
  help: { type: 'boolean' },
} as const;

const systems: ReadonlyMap<string, UnitSystem> = new Map([
  ['metric', 'metric'],
  ['inch', 'inch-ounce'],
  ['inch-ounce', 'inch-ounce'],
]);

/** Reads the arguments; refuses what cannot be followed. */
export function wishOf(args: readonly string[]): Wish | 'help' {
  const { values, positionals } = parsed(args);
  if (values.help) return 'help';
  const [path, ...more] = positionals;
  if (path === undefined || more.length > 0) {
    throw new Refused(`Expected one file, got ${positionals.length}. Try --help.`);
  }
  const { fuel = '1', units = 'metric' } = values;
  const fuelFraction = Number(fuel);
  if (fuel.trim() === '' || !(fuelFraction >= 0 && fuelFraction <= 1)) {
    throw new Refused(`--fuel: expected a number from 0 (dry) to 1 (full), got "${shortened(fuel)}".`);
  }
  const system = systems.get(units);
  if (!system) throw new Refused(`--units: expected metric or inch, got "${shortened(units)}".`);
  const attitude = attitudeWish(values.attitude ?? 'level');
  if ('fault' in attitude) throw new Refused(attitude.fault);
  return { path, fuelFraction, system, from: values.from, json: values.json ?? false, attitude };
}

function parsed(args: readonly string[]) {
  try {
    const { values, positionals, tokens } = parseArgs({
      args: [...args],
      allowPositionals: true,
      tokens: true,
      options,
    });
    const names = tokens.flatMap((token) => (token.kind === 'option' ? [token.name] : []));
    const twice = names.find((name, at) => names.indexOf(name) < at);
    if (twice !== undefined) throw new Refused(`--${twice} is given twice. Try --help.`);
    return { values, positionals };
  } catch (error) {
    if (error instanceof TypeError) {
      throw new Refused(`${shownText(error.message).replace(/\.?$/, '.')} Try --help.`);
    }
    throw error;
  }
}
