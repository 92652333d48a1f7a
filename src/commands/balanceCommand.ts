import { type Balance, balanceAt } from '../model/balance/balance';
import { shownText } from '../model/document/names';
import type { Aircraft, ReferencePoint } from '../model/document/types';
import { downOf } from '../model/loads/attitude';
import { faultCount, shortened } from '../model/reading/fault';
import { readFileBytes } from '../model/reading/fileText';
import { estimateStability } from '../model/stability/estimateStability';
import { type StabilityAnswer, stabilityInput } from '../model/stability/stability';
import { balanceJson } from './balanceJson';
import { balanceTable } from './balanceTable';
import { Refused, type Wish, wishOf } from './balanceWish';
import { bytesOf, reasonOf } from './readableBytes';

const HELP = `Balances an aircraft file.

  npm run --silent balance -- FILE [options]

  --fuel 0.5       usable fuel left, 1 full to 0 dry; full when left out
  --attitude climb how the aircraft is held: level, climb, dive, knife-edge,
                   inverted, launch, braking; or nose up in degrees, right
                   wing down in degrees and g forward, as in 12,0,0.5
  --units inch     inches and ounces in the table; metric when left out
  --from NAME      show places from this reference point instead of the datum
  --json           print JSON, with the load states at the ends of the range:
                   always mm and g, from the datum; products of inertia
                   are tensor elements, xy = -∫xy dm
  --help           print this

The exit code is 0; 2 when the command or the file cannot be read; 1 when the
file is sound and its balance cannot be worked out.
`;

/** What a command leaves behind: its exit code and what it prints. */
export interface Outcome {
  readonly status: number;
  readonly out: string;
  readonly err: string;
}

/** Balances the file that the arguments name. Reads that file and does nothing else; never throws. */
export function balanceCommand(args: readonly string[]): Outcome {
  try {
    const wish = wishOf(args);
    return wish === 'help' ? { status: 0, out: HELP, err: '' } : balanced(wish);
  } catch (error) {
    if (error instanceof Refused) return { status: 2, out: '', err: `${error.message}\n` };
    const sentence = `The balance could not be worked out: ${reasonOf(error)}.\n`;
    return { status: 1, out: '', err: sentence };
  }
}

function balanced(wish: Wish): Outcome {
  const aircraft = aircraftIn(wish.path);
  const from = wish.from === undefined ? null : pointNamed(aircraft, wish.from);
  const [estimate, err] = estimateOf(aircraft);
  const { fuelFraction, attitude, system } = wish;
  const balance: Balance = balanceAt(aircraft, { fuelFraction, down: downOf(attitude), estimate });
  const estimating = err === '' ? 'done' : 'failed';
  const out = wish.json
    ? balanceJson(aircraft, balance, { fuelFraction, attitude, estimating })
    : balanceTable(aircraft, balance, { fuelFraction, attitude, system, from, estimating });
  return { status: 0, out, err };
}

/** The estimate of the neutral point; without one, why not. The balance stands either way. */
function estimateOf(aircraft: Aircraft) {
  try {
    const answer: StabilityAnswer = estimateStability(stabilityInput(aircraft), 'fine');
    return answer && 'fault' in answer ? ([null, `${answer.fault}\n`] as const) : ([answer, ''] as const);
  } catch (error) {
    return [null, `The neutral point could not be estimated: ${reasonOf(error)}.\n`] as const;
  }
}

function aircraftIn(path: string): Aircraft {
  const read = readFileBytes(bytesOf(path));
  if (read.ok) return read.aircraft;
  const count = faultCount(read.faults);
  throw new Refused(
    [
      `${shownText(path)} has ${count === 1 ? 'a fault' : `${count} faults`}:`,
      ...read.faults.map(({ sentence }) => `  ${sentence}`),
    ].join('\n'),
  );
}

function pointNamed({ referencePoints }: Aircraft, wanted: string): ReferencePoint {
  const plain = (text: string) => text.trim().toLowerCase();
  const point = referencePoints.find(({ id, name }) => plain(name) === plain(wanted) || id === plain(wanted));
  if (point) return point;
  const names = referencePoints.map(({ name }) => `"${shownText(name)}"`).join(', ');
  throw new Refused(
    `--from: there is no reference point "${shortened(wanted)}"; the file has ${names || 'none'}.`,
  );
}
