import fc from 'fast-check';

const FINE = 2 ** 32;

/**
 * A number from `min` to `max`, any as likely as any other; now and then one of the ends, nothing at all, or next to
 * nothing. fast-check's own doubles are spread evenly over their exponents, so that of those from −360 to 360 nearly all
 * are smaller than a millionth: what is asked of them alone is asked of nothing.
 */
export function between(min: number, max: number): fc.Arbitrary<number> {
  const evenly = fc.integer({ min: 0, max: FINE }).map((share) => min + (max - min) * (share / FINE));
  const ends = fc.constantFrom(min, max, ...(min < 0 && max > 0 ? [0] : []));
  return fc.oneof(
    { weight: 10, arbitrary: evenly },
    { weight: 1, arbitrary: ends },
    { weight: 1, arbitrary: fc.double({ min, max, noNaN: true }) },
  );
}
