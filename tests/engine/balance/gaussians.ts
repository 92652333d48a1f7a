/**
 * Independent standard normal numbers from a seed: xoshiro128** (Blackman & Vigna, Scrambled linear pseudorandom number
 * generators, ACM TOMS 47, 2021) turned normal by Box & Muller (Annals of Mathematical Statistics 29, 1958).
 */
export function gaussians(seed: number): () => number {
  const uniform = xoshiro128(seed, 0x9e3779b9, 0x243f6a88, 0xb7e15162);
  return () =>
    Math.sqrt(-2 * Math.log((uniform() + 1) / 2 ** 32)) * Math.cos((2 * Math.PI * uniform()) / 2 ** 32);
}

/** Whole numbers of 32 bits; the state must not be all zero. */
export function xoshiro128(...state: [number, number, number, number]): () => number {
  let [a, b, c, d] = state;
  const turned = (x: number, k: number) => (x << k) | (x >>> (32 - k));
  return () => {
    const result = Math.imul(turned(Math.imul(b, 5), 7), 9) >>> 0;
    const shifted = b << 9;
    c ^= a;
    d ^= b;
    b ^= c;
    a ^= d;
    c ^= shifted;
    d = turned(d, 11);
    return result;
  };
}
