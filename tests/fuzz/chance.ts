/** Seeded chance: the same seed, the same run. */
export interface Chance {
  /** 0 up to 1. */
  readonly next: () => number;
  /** A whole number from 0 up to a limit, which it does not reach. */
  readonly below: (limit: number) => number;
  readonly pick: <T>(list: readonly T[]) => T;
}

/** Mulberry32, a public-domain generator of 32 bits (from memory). */
export function chanceOf(seed: number): Chance {
  let state = seed >>> 0;
  const next = () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = state;
    t = Math.imul(t ^ (t >>> 15), t | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
  const below = (limit: number) => Math.floor(next() * limit);
  return { next, below, pick: (list) => list[below(list.length)]! };
}
