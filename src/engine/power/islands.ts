import type { PowerNet } from './types';

/** A net in the pieces that no wire joins, packs first; what happens in one of them is nothing to the others. */
export function islandsOf(net: PowerNet): readonly PowerNet[] {
  const ids = [...net.packs, ...net.units].map(({ id }) => id);
  const joined = new Map<string, string[]>(ids.map((id) => [id, []]));
  for (const { from, to } of net.feeds) {
    joined.get(from)?.push(to);
    joined.get(to)?.push(from);
  }
  const seen = new Set<string>();
  return ids.flatMap((first) => {
    if (seen.has(first)) return [];
    const island = new Set<string>();
    const open = [first];
    while (open.length > 0) {
      const id = open.pop() as string;
      if (island.has(id)) continue;
      island.add(id);
      open.push(...(joined.get(id) ?? []));
    }
    for (const id of island) seen.add(id);
    return [
      {
        packs: net.packs.filter(({ id }) => island.has(id)),
        units: net.units.filter(({ id }) => island.has(id)),
        feeds: net.feeds.filter(({ to }) => island.has(to)),
      },
    ];
  });
}
