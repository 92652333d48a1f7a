import type { FactKey } from '../words/verdict';
import { balanceEntries } from './balanceEntries';
import { benchEntries } from './benchEntries';
import type { Entry } from './entry';
import { fuelEntries } from './fuelEntries';
import { wingEntries } from './wingEntries';

const all = [...balanceEntries, ...wingEntries, ...fuelEntries, ...benchEntries] as const;

export type WordId = (typeof all)[number]['id'];

/** A word of the glossary. */
export interface GlossaryWord extends Entry {
  readonly id: WordId;
  readonly related: readonly WordId[];
}

/** All words, in the order of the alphabet. */
export const glossary: readonly GlossaryWord[] = [...all].sort((a, b) => a.word.localeCompare(b.word, 'en'));

/** The word that each figure of the answer is about. */
const factWords: Readonly<Record<FactKey, WordId>> = {
  'cg-full': 'cg',
  'cg-dry': 'cg',
  band: 'band',
  travel: 'travel',
  margin: 'margin',
  sideways: 'sideways',
  worst: 'load-state',
  fit: 'fit',
  power: 'wiring',
  mass: 'ready-to-fly',
  sure: 'plus-minus',
};

/** What can be asked for where it stands on the screen: a word, or a figure of the answer. */
export type Asked = WordId | FactKey;

/** The word behind what is asked for. */
export function wordOf(asked: Asked): GlossaryWord {
  const id: string = asked in factWords ? factWords[asked as FactKey] : asked;
  const found = glossary.find((each) => each.id === id);
  if (!found) throw new Error(`The glossary has no word "${asked}"`);
  return found;
}

/** The words in whose name, other names or sentences the typed text stands; those so called first. */
export function wordsWith(typed: string): readonly GlossaryWord[] {
  const sought = typed.trim().toLowerCase();
  if (sought === '') return glossary;
  const holds = (text: string) => text.toLowerCase().includes(sought);
  const rank = ({ word, also, parts = [], says }: GlossaryWord) => {
    const names = [word, ...also, ...parts];
    if (names.some((name) => name.toLowerCase() === sought)) return 0;
    if (names.some(holds)) return 1;
    return says.some(holds) ? 2 : 3;
  };
  return glossary.filter((each) => rank(each) < 3).sort((a, b) => rank(a) - rank(b));
}
