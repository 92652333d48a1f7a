import type { RestsOn } from '../balance/massOnScales';
import type { MassFrom, SizeFrom } from '../document/types';

/** The word beside the mark, and what it means. */
export const massFromWords: Readonly<Record<MassFrom, string>> = {
  weighed: 'weighed',
  measured: 'found from a weighing',
  typical: 'typical',
  assumed: 'assumed',
  unknown: 'unknown',
};

export const sizeFromWords: Readonly<Record<SizeFrom, string>> = {
  measured: 'measured',
  typical: 'typical',
  assumed: 'assumed',
  unknown: 'unknown',
};

export const restsOnWords: Readonly<Record<RestsOn, string>> = {
  ...massFromWords,
  liquid: 'liquid, by its density',
  'not said': 'typed in, source not said',
};
