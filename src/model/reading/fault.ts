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
}

export type Path = Fault['at'];

/** A fault whose sentence is made of its three parts. */
export function fault(json: unknown, at: Path, expected: string, received: string): Fault {
  const path = pathInWords(json, at);
  return { path, at, expected, received, sentence: `${path}: expected ${expected}, got ${received}.` };
}

/** A fault with a sentence of its own behind the path. */
export function toldFault(json: unknown, at: Path, told: string, expected: string, received: string): Fault {
  const path = pathInWords(json, at);
  return { path, at, expected, received, sentence: `${path}: ${told}` };
}

/** A path as a person finds it in the file: list items carry their place and, where they have one, their name. */
export function pathInWords(json: unknown, at: Path): string {
  const steps: string[] = [];
  let value = json;
  for (const key of at) {
    value = member(value, key);
    const name = member(value, 'name');
    const suffix = typeof name === 'string' && name !== '' ? ` "${name}"` : '';
    if (typeof key === 'number') steps.push(`${steps.pop() ?? ''}[${key}]${suffix}`);
    else steps.push(key);
  }
  return steps.length > 0 ? steps.join(' › ') : 'the file';
}

/** A value from a file, short enough for a sentence. */
export function inWords(value: unknown): string {
  if (value === undefined) return 'nothing';
  if (Array.isArray(value)) return `a list of ${value.length}`;
  if (typeof value === 'object' && value !== null) return 'an object';
  const text = typeof value === 'string' ? JSON.stringify(value) : String(value);
  return text.length > 60 ? `${text.slice(0, 57)}…` : text;
}

/** The value at a path; undefined where the path leads nowhere. */
export function valueAt(json: unknown, at: Path): unknown {
  return at.reduce(member, json);
}

function member(value: unknown, key: string | number): unknown {
  if (typeof value !== 'object' || value === null || !Object.hasOwn(value, key)) return undefined;
  return (value as Record<string | number, unknown>)[key];
}
