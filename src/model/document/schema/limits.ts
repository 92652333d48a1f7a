/**
 * The largest figures that a file or an entry may hold: some ten times what the largest models have, so that nobody
 * who measures meets them, and small enough that no sum of products of them leaves the range of a number. Model
 * aircraft are flown up to 150 kg (from memory: the limit of the "large model" classes in Europe) and some 10 m of span.
 */
export const most = {
  massG: 1e6,
  lengthMm: 1e5,
  volumeMl: 1e6,
  timeS: 3.6e5,
  flowMlPerMin: 1e6,
  gPerM2: 1e6,
  percentOfMac: 1e4,
  loadFactor: 1e3,
  rank: 1e6,
  /** The largest mass at the largest distance, squared: g·mm². */
  inertiaGmm2: 1e16,
  /** A direction may be of any length, within reason. */
  direction: 1e6,
} as const;

/** Nothing that is made is smaller, mm: a thousandth of a millimetre. */
export const leastSizeMm = 1e-3;

/** The most entries of a list. The bench is measured with 2000 parts. */
export const mostOf = {
  parts: 5000,
  structure: 1000,
  tanks: 200,
  leads: 2000,
  switches: 64,
  positions: 20,
  variants: 24,
  sections: 500,
  panels: 100,
  corners: 1000,
  vertices: 20_000,
  triangles: 40_000,
  /** Any other list. */
  entries: 1000,
} as const;

/** The most characters of an id, and of a note. */
export const longestId = 100;
export const longestNote = 100_000;

/** A schema stops telling faults of a list after so many; who has read a hundred has read enough. */
export const mostFaultsOfList = 1000;
