import { readFileSync } from 'node:fs';
import type { Chance } from './chance';

const read = (path: string) => readFileSync(new URL(path, import.meta.url), 'utf8');

/** The files that are spoilt: the demo aircraft and the kept files of each version. */
export const sources: readonly string[] = [
  ...['sandmartin', 'fieldfare', 'whimbrel', 'corncrake'].map((name) => read(`../../demo-data/${name}.json`)),
  ...[1, 2].map((version) => read(`../model/reading/files/v${version}.json`)),
];

/** Values that people, editors and other programs leave in files. */
const odd: readonly unknown[] = [
  ...[null, true, false, '', ' ', 'constructor', '__proto__', 'toString', 'outlet', '12'],
  ...['\u202eg 874', 'a\u0000b', 'a\nb', '\ud800', 'ж', 'מקלט', 'x'.repeat(300), 'box', 'centre', 'both'],
  ...[0, 1, -1, 0.1, -0.001, 1e-9, 1e-3, 5e-324, 1e308, -1e308, 1e15, 99999, 100000, 1e6, 360, -89, 2 ** 53],
  ...[[], {}, [null], [[]], [0, 0, 0], [1, 2], [1e5, -1e5, 1e5], { kind: 'box' }, { id: 'x', name: 'y' }],
];

/** One file, spoilt at one to four places, by bytes, by words or by what it says. */
export function mutant(chance: Chance, files: readonly string[] = sources): Uint8Array {
  const text = chance.pick(files);
  const kind = chance.next();
  if (kind < 0.15) return spoiltBytes(new TextEncoder().encode(text), chance);
  if (kind < 0.3) return new TextEncoder().encode(spoiltTokens(text, chance));
  return new TextEncoder().encode(spoiltTree(text, chance));
}

const times = (chance: Chance, work: () => void) => {
  for (let left = 1 + chance.below(4); left > 0; left -= 1) work();
};

function spoiltBytes(bytes: Uint8Array, chance: Chance): Uint8Array {
  let list = [...bytes];
  times(chance, () => {
    const at = chance.below(list.length + 1);
    const long = 1 + chance.below(40);
    const kind = chance.below(5);
    if (kind === 0) list[at] = chance.below(256);
    else if (kind === 1) list.splice(at, 0, chance.below(256));
    else if (kind === 2) list.splice(at, long);
    else if (kind === 3) list.splice(at, 0, ...list.slice(at, at + long));
    else if (chance.next() < 0.2) list = list.slice(0, at);
    else list[at] = (list[at] ?? 0) ^ (1 << chance.below(8));
  });
  return Uint8Array.from(list);
}

const TOKEN = /"(?:[^"\\]|\\.)*"|-?\d[\d.eE+-]*|true|false|null|[[\]{},:]/g;

function spoiltTokens(text: string, chance: Chance): string {
  const tokens = text.match(TOKEN) ?? [];
  times(chance, () => {
    const at = chance.below(tokens.length);
    const kind = chance.below(4);
    if (kind === 0) tokens.splice(at, 1);
    else if (kind === 1) tokens.splice(at, 0, chance.pick(tokens));
    else if (kind === 2) tokens[at] = chance.pick(tokens);
    else tokens[at] = JSON.stringify(chance.pick(odd));
  });
  return tokens.join(' ');
}

type Holder = Record<string | number, unknown>;

/** Every place in a document that holds something: its holder and its key there. */
function placesIn(root: Holder): readonly { readonly holder: Holder; readonly key: string | number }[] {
  const places: { holder: Holder; key: string | number }[] = [];
  const left: Holder[] = [root];
  for (let holder = left.pop(); holder; holder = left.pop()) {
    for (const key of Array.isArray(holder) ? holder.keys() : Object.keys(holder)) {
      places.push({ holder, key });
      const value = holder[key];
      if (typeof value === 'object' && value !== null) left.push(value as Holder);
    }
  }
  return places;
}

function spoiltTree(text: string, chance: Chance): string {
  const root: Holder = JSON.parse(text);
  times(chance, () => {
    const places = placesIn(root);
    if (places.length === 0) return;
    // Figures first: a file in which only they are changed reads more often, and then all must come out.
    const figures = places.filter((place) => typeof place.holder[place.key] === 'number');
    const { holder, key } = chance.pick(chance.next() < 0.8 && figures.length > 0 ? figures : places);
    const other = chance.pick(places);
    const value = holder[key];
    const kind = chance.next();
    if (typeof value === 'number' && kind < 0.9) holder[key] = turned(value, chance);
    else if (kind < 0.3) holder[key] = chance.pick(odd);
    else if (kind < 0.5) remove(holder, key);
    else if (kind < 0.7) holder[key] = structuredClone(other.holder[other.key]);
    else if (Array.isArray(value)) value.push(structuredClone(value.at(chance.below(value.length + 1) - 1)));
    else holder[`${key}${chance.pick(['', 's', 'x', 'Mm'])}`] = structuredClone(value);
  });
  return JSON.stringify(root);
}

function turned(value: number, chance: Chance): number {
  const turns = [0, -value, value * 10, value / 10, value * 1000, value + 1, value - 1, value * 1.0001];
  const near = [
    value * (0.5 + chance.next()),
    value * 1.5,
    value * 0.9,
    Math.round(value),
    value + chance.next(),
  ];
  return chance.pick([...turns, ...near, ...near, chance.pick(odd.filter((one) => typeof one === 'number'))]);
}

function remove(holder: Holder, key: string | number): void {
  if (Array.isArray(holder)) holder.splice(Number(key), 1);
  else delete holder[key];
}
