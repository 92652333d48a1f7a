import type { Aircraft } from '../document/types';

/** Keeps an answer about one thing aboard for as long as the aircraft is the very same. */
export function perAircraft<T>(
  answer: (aircraft: Aircraft, id: string) => T,
): (aircraft: Aircraft, id: string) => T {
  const known = new WeakMap<Aircraft, Map<string, T>>();
  return (aircraft, id) => {
    let byId = known.get(aircraft);
    if (!byId) {
      byId = new Map();
      known.set(aircraft, byId);
    }
    const before = byId.get(id);
    if (before !== undefined) return before;
    const made = answer(aircraft, id);
    byId.set(id, made);
    return made;
  };
}
