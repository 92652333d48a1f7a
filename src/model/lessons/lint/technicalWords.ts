import { isExplained, spellings } from '../../glossary/spellings';

/** Abbreviations that the glossary explains, as they are written. */
export const EXPLAINED_SHORT: ReadonlySet<string> = new Set(
  spellings.filter((word) => /^\p{Lu}{2,}$/u.test(word)),
);

/** Hard words of the trade. */
const HARD: readonly string[] = [
  'aerodynamic centre',
  'anhedral',
  'aspect ratio',
  'buttline',
  'centroid',
  'decalage',
  'dihedral',
  'downwash',
  'empennage',
  'geodesic',
  'LEMAC',
  'lever arm',
  'longitudinal',
  'oscillation',
  'parallel axis',
  'phugoid',
  'planform',
  'principal axis',
  'radius of gyration',
  'root-sum-square',
  'standard deviation',
  'standard uncertainty',
  'Steiner',
  'tensor',
  'variance',
  'waterline',
];

/** Those that the glossary does not explain; an instructor is asked for a plainer one. */
export const UNEXPLAINED: readonly string[] = HARD.filter((word) => !isExplained(word));

/** A word longer than this is a hard one, unless it is in the list below. */
export const LONGEST_PLAIN = 12;

/** Long words that everybody knows. */
export const LONG_BUT_PLAIN: ReadonlySet<string> = new Set(['experimental', 'everything', 'nevertheless']);
