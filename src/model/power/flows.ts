import { perObject } from '../../engine/memory/memory';
import { islandsOf } from '../../engine/power/islands';
import { powerFlow } from '../../engine/power/powerFlow';
import type { PackSource, PowerFlow } from '../../engine/power/types';
import type { Part } from '../document/types';
import { meanAt } from './draws';
import type { Wiring } from './wiring';

/** How far packs are charged. */
export type Emf = 'fullV' | 'nominalV' | 'emptyV';

/** So little is a rounding, V and A. */
export const TOUCH = 1e-3;

/** The most that is drawn on the mean: at full throttle. */
const FULL_PCT = 100;
export const atFull = (part: Part): number => meanAt(part, FULL_PCT);

/** The wiring in the pieces that no wire joins; what is too much for one of them is nothing to the others. */
export const wiringIslands = perObject((wiring: Wiring): readonly Wiring[] =>
  islandsOf(wiring.net).map((net) => {
    const ids = new Set([...net.packs, ...net.units].map(({ id }) => id));
    const isHere = ({ id }: Part) => ids.has(id);
    return {
      packs: wiring.packs.filter(isHere),
      units: wiring.units.filter(isHere),
      feeds: wiring.feeds.filter(({ to }) => isHere(to)),
      net,
    };
  }),
);

/**
 * Volts and amperes with the packs so far charged, but for one that is dead; null where the packs cannot give what is
 * drawn.
 */
export function flowAt(
  { net, units }: Wiring,
  emf: Emf,
  drawOf: (part: Part) => number,
  dead?: string,
): PowerFlow | null {
  const packs = new Map(net.packs.map((pack): [string, PackSource] => [pack.id, pack]));
  const parts = new Map(units.map((part) => [part.id, part]));
  try {
    return powerFlow(
      net,
      (id) => (id === dead ? null : (packs.get(id)?.[emf] ?? null)),
      (id) => {
        const part = parts.get(id);
        return part ? drawOf(part) : 0;
      },
    );
  } catch (error) {
    if (!(error instanceof RangeError)) throw error;
    return null;
  }
}

/**
 * What is lost when a pack fails and was not lost before: left without any supply, or under the least that it works at,
 * with the other packs at their nominal voltage and full throttle.
 */
export function lostWithout(wiring: Wiring, packId: string): readonly Part[] {
  const island = wiringIslands(wiring).find(({ packs }) => packs.some(({ id }) => id === packId));
  if (!island) return [];
  const [fed, fedAfter] = [undefined, packId].map((dead) => flowAt(island, 'nominalV', () => 0, dead));
  const [works, worksAfter] = [undefined, packId].map((dead) => flowAt(island, 'nominalV', atFull, dead));
  const isFed = (flow: PowerFlow | null | undefined, { id }: Part) => flow?.unitV.get(id) != null;
  const hasEnough = (flow: PowerFlow | null | undefined, { id, power }: Part) =>
    (flow?.unitV.get(id) ?? Number.NEGATIVE_INFINITY) >= (power?.use?.minV ?? 0) - TOUCH;
  return island.units.filter(
    (part) =>
      part.power?.use &&
      ((isFed(fed, part) && !isFed(fedAfter, part)) ||
        (hasEnough(works, part) && !hasEnough(worksAfter, part))),
  );
}
