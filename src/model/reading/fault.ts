import { shownText } from '../document/names';

/** One thing wrong with a document: where, what was expected there, and what came. */
export interface Fault {
  /** For people: `parts[3] "Receiver" › massG`. */
  readonly path: string;
  /** For machines: `['parts', 3, 'massG']`. */
  readonly at: readonly (string | number)[];
  readonly expected: string;
  readonly received: string;
  /** The whole of it in one sentence. */
  readonly sentence: string;
  /** How many faults this line stands for; one when left out. */
  readonly standsFor?: number;
}

export type Path = Fault['at'];

/** At most so many faults are listed; the rest are counted. */
export const MOST_FAULTS = 100;

/** A fault whose sentence is made of its three parts. */
export function fault(json: unknown, at: Path, expected: string, received: string): Fault {
  const path = pathInWords(json, at);
  return { path, at, expected, received, sentence: `${path}: expected ${expected}, got ${received}.` };
}

/** A fault with a sentence of its own behind the path. */
export function toldFault(json: unknown, at: Path, words: string, expected: string, received: string): Fault {
  const path = pathInWords(json, at);
  return { path, at, expected, received, sentence: `${path}: ${words}` };
}

/** The first hundred faults, then a line that stands for the others. */
export function cappedFaults(faults: readonly Fault[]): readonly Fault[] {
  const more = faults.length - MOST_FAULTS;
  if (more <= 0) return faults;
  const path = `and ${more} more`;
  const rest = { path, at: [], expected: '', received: '', sentence: `${path}.`, standsFor: more };
  return [...faults.slice(0, MOST_FAULTS), rest];
}

/** How many faults a list stands for. */
export const faultCount = (faults: readonly Pick<Fault, 'standsFor'>[]): number =>
  faults.reduce((sum, { standsFor = 1 }) => sum + standsFor, 0);

/** A path as a person finds it in the file: list items carry their place and, where they have one, their name. */
function pathInWords(json: unknown, at: Path): string {
  const steps: string[] = [];
  let value = json;
  for (const key of at) {
    value = member(value, key);
    const name = member(value, 'name');
    const suffix = typeof name === 'string' && name !== '' ? ` "${shortened(name)}"` : '';
    if (typeof key === 'number') steps.push(`${steps.pop() ?? ''}[${key}]${suffix}`);
    else steps.push(shortened(key));
  }
  return steps.length > 0 ? steps.join(' › ') : 'the file';
}

/** A value from a file, short enough for a sentence. */
export function inWords(value: unknown): string {
  if (value === undefined) return 'nothing';
  if (Array.isArray(value)) return `a list of ${value.length}`;
  if (typeof value === 'object' && value !== null) return 'an object';
  return shortened(typeof value === 'string' ? JSON.stringify(value.slice(0, LONGEST)) : String(value));
}

const LONGEST = 60;

/** A text of somebody else's, short enough for a sentence and with nothing in it that would spoil one. */
export function shortened(text: string): string {
  const shown = shownText(text.length > LONGEST ? text.slice(0, LONGEST - 3) : text);
  return text.length > LONGEST ? `${shown}…` : shown;
}

/** The value at a path; undefined where the path leads nowhere. */
export function valueAt(json: unknown, at: Path): unknown {
  return at.reduce(member, json);
}

function member(value: unknown, key: string | number): unknown {
  if (typeof value !== 'object' || value === null || !Object.hasOwn(value, key)) return undefined;
  return (value as Record<string | number, unknown>)[key];
}
