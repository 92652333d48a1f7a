import type { TextStorage } from '../../src/files/storage';

/** Storage in memory with room for so many characters, refusing like a browser's when it is full. */
export function mapStorage(
  room = Number.POSITIVE_INFINITY,
): TextStorage & { readonly map: Map<string, string> } {
  const map = new Map<string, string>();
  return {
    map,
    getItem: (key) => map.get(key) ?? null,
    setItem: (key, value) => {
      const others = [...map]
        .filter(([other]) => other !== key)
        .reduce((sum, [, text]) => sum + text.length, 0);
      if (others + value.length > room)
        throw new DOMException('The quota has been exceeded.', 'QuotaExceededError');
      map.set(key, value);
    },
    removeItem: (key) => {
      map.delete(key);
    },
    keys: () => [...map.keys()],
  };
}
