import { massSourceOf } from '../balance/measurements';
import type { Aircraft, MassFrom } from '../document/types';
import { massFromWords, restsOnWords } from '../words/sourceWords';

/** Where a mass in the list comes from; `not said` where it was typed in and nobody said. */
export type MassMark = MassFrom | 'not said';

/** One letter for each, told apart without colour. */
export const markLetters: Readonly<Record<MassMark, string>> = {
  weighed: 'W',
  measured: 'F',
  typical: 'T',
  assumed: 'A',
  unknown: 'U',
  'not said': 'N',
};

const MARKS = [...Object.keys(massFromWords), 'not said'] as readonly MassMark[];

/** "From: W weighed; F found from a weighing; ...". */
export const MARK_KEY = `From: ${MARKS.map((mark) => `${markLetters[mark]} ${restsOnWords[mark]}`).join('; ')}.`;

/** The source of a part’s, a tank’s, the bare airframe’s or a piece of structure’s mass. */
export const massMark = (aircraft: Aircraft, id: string): MassMark =>
  massSourceOf(aircraft, id) ?? 'not said';
