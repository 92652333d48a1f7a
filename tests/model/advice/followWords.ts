import type { Remedy } from '../../../src/model/advice/remedy';
import type { Aircraft, Part } from '../../../src/model/document/types';

/** What one printed unit is in mm or g. 1 in = 25.4 mm, 1 lb = 453.59237 g exactly (agreement of 1959), 16 oz to the lb. */
const UNITS: Readonly<Record<string, number>> = { mm: 1, g: 1, in: 25.4, oz: 453.59237 / 16 };
const WAYS: Readonly<Record<string, readonly [0 | 1 | 2, 1 | -1]>> = {
  forward: [0, -1],
  aft: [0, 1],
  left: [1, -1],
  right: [1, 1],
  down: [2, -1],
  up: [2, 1],
};
const NUMBER = '(−?[\\d.\\s]+)\\s(mm|in|g|oz)';

function figure(number: string, unit: string): number {
  const value = Number(number.replace(/[\s\u202f]/g, '').replace('−', '-'));
  if (!Number.isFinite(value)) throw new Error(`“${number}” is no number`);
  if (value === 0) throw new Error('nothing is to be done by 0');
  return value * UNITS[unit]!;
}

/**
 * Carries a remedy out as a person would who reads nothing but its words, and ballast where the words leave the height
 * open at the remedy's own. Throws where the words are not understood.
 */
export function followWords(aircraft: Aircraft, remedy: Remedy, fromMm = 0): Aircraft {
  const { words } = remedy;
  if (words.startsWith('Move ')) return moved(aircraft, words.slice(5));
  const reduced = new RegExp(`^Reduce “(.+)” from ${NUMBER} to ${NUMBER}$`).exec(words);
  if (reduced)
    return change(aircraft, reduced[1]!, (part) => ({ ...part, massG: figure(reduced[4]!, reduced[5]!) }));
  const taken = new RegExp(`^Take out “(.+)”, ${NUMBER}$`).exec(words);
  if (taken) return without(aircraft, taken[1]!);
  const both = new RegExp(
    `^Take out ((?:“.+?” and )+)(?:reduce “(.+)” from ${NUMBER} to ${NUMBER}|“(.+?)”)$`,
  ).exec(words);
  if (both) {
    const out = [...both[1]!.matchAll(/“(.+?)”/g)].map((match) => match[1]!);
    const cleared = [...out, ...(both[7] === undefined ? [] : [both[7]])].reduce(without, aircraft);
    return both[2] === undefined
      ? cleared
      : change(cleared, both[2], (part) => ({ ...part, massG: figure(both[5]!, both[6]!) }));
  }
  const added = new RegExp(`^(?:Take out (.+) and add|Add) ${NUMBER} (.+)$`).exec(words);
  if (!added) throw new Error(`not understood: ${words}`);
  const names = [...(added[1] ?? '').matchAll(/“(.+?)”/g)].map((match) => match[1]!);
  const cleared = names.reduce(without, aircraft);
  const edit = remedy.edits.find((one) => one.do === 'add');
  if (edit?.do !== 'add') throw new Error('the words add what the edits do not');
  const massG = figure(added[2]!, added[3]!);
  const station = new RegExp(`at station ${NUMBER}`).exec(added[4]!);
  const [x, y, z] = edit.part.positionMm;
  const atMm = station ? figure(station[1]!, station[2]!) + fromMm : x;
  const part: Part = { ...edit.part, id: 'followed-ballast', massG, positionMm: [atMm, y, z] } as Part;
  return { ...cleared, parts: [...cleared.parts, part] };
}

function moved(aircraft: Aircraft, words: string): Aircraft {
  const each = new RegExp(`(“.+?”(?: and “.+?”)?) ${NUMBER} (forward|aft|left|right|up|down)(?:, |$)`, 'g');
  let [after, read] = [aircraft, ''];
  for (const [whole, names, number, unit, way] of words.matchAll(each)) {
    read += whole;
    const [axis, sign] = WAYS[way!]!;
    const byMm = sign * figure(number!, unit!);
    for (const [, name] of names!.matchAll(/“(.+?)”/g)) {
      after = change(after, name!, (item) => ({
        ...item,
        positionMm: item.positionMm.map((v, i) =>
          i === axis ? v + byMm : v,
        ) as unknown as Part['positionMm'],
      }));
    }
  }
  if (read !== words) throw new Error(`not understood: ${words}`);
  return after;
}

type Placed = Part | Aircraft['tanks'][number];

function change(aircraft: Aircraft, name: string, edit: <T extends Placed>(item: T) => T): Aircraft {
  const found = [...aircraft.parts, ...aircraft.tanks].filter((item) => item.name === name);
  if (found.length !== 1) throw new Error(`${found.length} things are called “${name}”`);
  const each = <T extends Placed>(item: T): T => (item.name === name ? edit(item) : item);
  return { ...aircraft, parts: aircraft.parts.map(each), tanks: aircraft.tanks.map(each) };
}

const without = (aircraft: Aircraft, name: string): Aircraft => ({
  ...aircraft,
  parts: aircraft.parts.filter((part) => part.name !== name),
});
