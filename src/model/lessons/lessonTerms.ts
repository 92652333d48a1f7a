import type { WordId } from '../glossary/glossary';
import { type Stretch, stretchesOf } from '../glossary/spellings';

/**
 * Words of the glossary that a lesson lets one ask for where they stand. Those whose other names are everyday words, as "burn", "full"
 * and "height", are not among them.
 */
const TERMS: ReadonlySet<WordId> = new Set<WordId>([
  'arm',
  'ballast',
  'band',
  'buttline',
  'cg',
  'datum',
  'decalage',
  'gyro',
  'header-tank',
  'inertia',
  'mac',
  'margin',
  'moment',
  'neutral-point',
  'reserve',
  'station',
  'tail-heavy',
  'thrust-line',
]);

/** A sentence of a lesson, cut where its words can be asked for. */
export const termsIn = (text: string): readonly Stretch[] => stretchesOf(text, TERMS);
