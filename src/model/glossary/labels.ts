import type { WordId } from './glossary';

/** Heads and names of tables that are words of the glossary. */
const labelWords: ReadonlyMap<string, WordId> = new Map([
  ['Arm', 'arm'],
  ['Moment', 'moment'],
  ['Station', 'station'],
  ['Buttline', 'buttline'],
  ['Waterline', 'waterline'],
  ['CG', 'cg'],
  ['CG along', 'cg'],
  ['CG across', 'sideways'],
  ['CG height', 'waterline'],
  ['Neutral point, estimated', 'neutral-point'],
  ['Mean aerodynamic chord', 'mac'],
]);

/** The word that a label is, with or without a unit behind a comma; null where it is none. */
export const wordOfLabel = (label: string): WordId | null =>
  labelWords.get(label) ?? labelWords.get(label.split(', ')[0] ?? '') ?? null;
