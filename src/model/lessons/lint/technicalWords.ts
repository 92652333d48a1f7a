/**
 * The trade's words that a lesson may use: each is explained on the bench, or says itself what it is. A term of several words
 * stands here with spaces.
 */
export const EXPLAINED: readonly string[] = [
  'CG',
  'MAC',
  'arm',
  'ballast',
  'balance',
  'band',
  'beam',
  'climb',
  'datum',
  'gyro',
  'header tank',
  'inertia',
  'mass',
  'moment',
  'neutral point',
  'margin',
  'nose-heavy',
  'tail-heavy',
  'station',
  'yaw',
];

/** Abbreviations among them, as they are written. */
export const EXPLAINED_SHORT: ReadonlySet<string> = new Set(
  EXPLAINED.filter((word) => /^[A-Z]{2,}$/.test(word)),
);

/** Words of the trade that are not said without being explained; an instructor is asked for a plainer one. */
export const UNEXPLAINED: readonly string[] = [
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

/** A word longer than this is a hard one, unless it is in the list below. */
export const LONGEST_PLAIN = 12;

/** Long words that everybody knows. */
export const LONG_BUT_PLAIN: ReadonlySet<string> = new Set(['experimental', 'everything', 'nevertheless']);
