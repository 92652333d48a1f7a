import type { Fault, Path } from './fault';

interface Node {
  ends: boolean;
  readonly next: Map<string | number, Node>;
}

/** The places of many faults, asked quickly whether any lies at, above or below a path. */
export function placesOf(faults: readonly Fault[]): { readonly touches: (at: Path) => boolean } {
  const root: Node = { ends: false, next: new Map() };
  for (const { at } of faults) {
    let node = root;
    for (const key of at) {
      const next = node.next.get(key) ?? { ends: false, next: new Map() };
      node.next.set(key, next);
      node = next;
    }
    node.ends = true;
  }
  return {
    touches: (at) => {
      if (faults.length === 0) return false;
      let node = root;
      for (const key of at) {
        if (node.ends) return true;
        const next = node.next.get(key);
        if (!next) return false;
        node = next;
      }
      return true;
    },
  };
}
