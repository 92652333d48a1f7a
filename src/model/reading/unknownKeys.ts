import { aircraft } from '../document/schema/aircraft';
import { type Fault, type Path, shortened, toldFault } from './fault';

/** What is read of a schema here; whatever wraps another holds it in `wrapped`. */
interface Schema {
  readonly type: string;
  readonly entries?: Readonly<Record<string, Schema>>;
  readonly item?: Schema;
  readonly wrapped?: Schema;
  readonly options?: readonly Schema[];
  readonly literal?: unknown;
}

/**
 * Keys that nobody knows but that look like one that is missing there, or that are one that is there but for capitals:
 * a slip, and whoever made it thinks that the figure counts. Keys that look like none are a person's own, and kept.
 */
export function misspeltKeys(json: unknown): readonly Fault[] {
  const faults: Fault[] = [];
  visit(aircraft as unknown as Schema, json, []);
  return faults;

  function visit(schema: Schema, value: unknown, at: Path): void {
    if (schema.wrapped) {
      visit(schema.wrapped, value, at);
      return;
    }
    if (typeof value !== 'object' || value === null) return;
    if (schema.options) {
      const option = schema.options.find((choice) => fits(choice, value));
      if (option) visit(option, value, at);
      return;
    }
    if (schema.item && Array.isArray(value)) {
      for (const [index, entry] of value.entries()) visit(schema.item, entry, [...at, index]);
    }
    const { entries } = schema;
    if (!entries || Array.isArray(value)) return;
    for (const [key, member] of Object.entries(value)) {
      if (Object.hasOwn(entries, key)) visit(entries[key] as Schema, member, [...at, key]);
      else tell(key, Object.keys(entries), value, at);
    }
  }

  function tell(key: string, wanted: readonly string[], value: object, at: Path): void {
    const unknown = `unknown key "${shortened(key)}"`;
    const twice = wanted.find((name) => Object.hasOwn(value, name) && plain(key) === plain(name));
    const meant = twice ?? wanted.find((name) => !Object.hasOwn(value, name) && alike(key, name));
    if (meant === undefined) return;
    const sentence = twice ? `${unknown} beside "${meant}"` : `${unknown}, did you mean "${meant}"?`;
    faults.push(toldFault(json, at, sentence, `"${meant}"`, unknown));
  }
}

/** Whether an object is of one choice of several: its tag, `kind` or `by`, says so. */
const fits = ({ entries = {} }: Schema, value: object): boolean =>
  Object.entries(entries).every(
    ([key, { literal }]) => literal === undefined || (value as Record<string, unknown>)[key] === literal,
  );

/** Whether two keys differ by no more than a slip: capitals, or one letter in four wrong, missing, too many or swapped. */
function alike(typed: string, wanted: string): boolean {
  const slips = Math.max(1, Math.floor(wanted.length / 4));
  if (Math.abs(typed.length - wanted.length) > slips) return false;
  const [a, b] = [plain(typed), plain(wanted)];
  return a === b || (wanted.length > 2 && distance(a, b) <= Math.min(slips, 3));
}

/** A key without what capitals and separators make of it. */
const plain = (key: string): string => key.toLowerCase().replace(/[_\s-]/g, '');

/** The fewest single letters to change, put in, take out or swap with the next (optimal string alignment). */
function distance(a: string, b: string): number {
  let before: number[] = [];
  let above = Array.from({ length: b.length + 1 }, (_, i) => i);
  for (let i = 1; i <= a.length; i++) {
    const row = [i];
    for (let j = 1; j <= b.length; j++) {
      const same = a[i - 1] === b[j - 1] ? 0 : 1;
      let least = Math.min(above[j]! + 1, row[j - 1]! + 1, above[j - 1]! + same);
      if (i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1])
        least = Math.min(least, before[j - 2]! + 1);
      row.push(least);
    }
    before = above;
    above = row;
  }
  return above[b.length]!;
}
