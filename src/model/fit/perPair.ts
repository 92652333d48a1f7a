import type { Solid } from '../../engine/fit/solid';

/** Answers about a solid and something else, kept for as long as both are. */
export function perPair<B extends object, T>(answer: (a: Solid, b: B) => T): (a: Solid, b: B) => T {
  const memory = new WeakMap<Solid, WeakMap<B, { readonly value: T }>>();
  return (a, b) => {
    let bySecond = memory.get(a);
    if (!bySecond) {
      bySecond = new WeakMap();
      memory.set(a, bySecond);
    }
    let kept = bySecond.get(b);
    if (!kept) {
      kept = { value: answer(a, b) };
      bySecond.set(b, kept);
    }
    return kept.value;
  };
}

const serials = new WeakMap<Solid, number>();
let latest = 0;

function serialOf(solid: Solid): number {
  let serial = serials.get(solid);
  if (serial === undefined) {
    latest += 1;
    serial = latest;
    serials.set(solid, serial);
  }
  return serial;
}

/** The same for two solids that may be asked for either way round: worked out one way, and turned for the other. */
export function perEitherPair<T>(
  answer: (a: Solid, b: Solid) => T,
  turned: (value: T) => T,
): (a: Solid, b: Solid) => T {
  const straight = perPair(answer);
  const back = perPair<Solid, T>((a, b) => turned(straight(b, a)));
  return (a, b) => (serialOf(a) <= serialOf(b) ? straight(a, b) : back(a, b));
}
