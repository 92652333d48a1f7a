import { distance } from '../../engine/geometry/vec3';
import { gapAlong } from '../../engine/place/regions';
import type { PlaceBox } from '../../engine/place/types';
import { itemExtent } from '../airframe/extent';
import type { Aircraft, Part, TankItem } from '../document/types';

type Thing = Part | TankItem;

/** An item that goes from one place to another, comes in or goes out. */
export interface Moving {
  readonly id: string;
  readonly from: Thing | null;
  readonly to: Thing | null;
}

/** Shorter than this is no move to speak of, mm. */
const SAID_MM = 0.5;

const meet = (a: PlaceBox, b: PlaceBox): boolean =>
  ([0, 1, 2] as const).every((axis) => gapAlong(a, b, axis) < -SAID_MM);

/** Why an item moves, in a few words: to make room for another, or for what its weight does. */
export function moveReason(moving: Moving, all: readonly Moving[]): string {
  const { from, to } = moving;
  if (!from) return 'as ballast';
  if (!to) return 'to start without it';
  const incoming = all.find(
    (other) => other !== moving && other.to && meet(itemExtent(other.to), itemExtent(from)),
  );
  if (incoming?.to) return `to make room for ${incoming.to.name}`;
  const [alongMm, acrossMm] = [to.positionMm[0] - from.positionMm[0], to.positionMm[1] - from.positionMm[1]];
  if (Math.abs(alongMm) < SAID_MM && Math.abs(acrossMm) < SAID_MM) return 'to stand as it fits';
  if (Math.abs(acrossMm) > Math.abs(alongMm)) return `to bring weight ${acrossMm < 0 ? 'left' : 'right'}`;
  return `to bring weight ${alongMm < 0 ? 'forward' : 'aft'}`;
}

/**
 * Moves in the order in which they are done: what comes out first, what stands in another's new place before that goes
 * there, then what stands farthest from any hatch.
 */
export function inFittingOrder<T extends Moving>(
  { hatches = [] }: Pick<Aircraft, 'hatches'>,
  moves: readonly T[],
): T[] {
  const far = ({ to, from }: Moving) => {
    const at = (to ?? from)!.positionMm;
    return Math.min(Number.POSITIVE_INFINITY, ...hatches.map(({ centreMm }) => distance(centreMm, at)));
  };
  const left = [...moves].sort((a, b) => Number(a.to !== null) - Number(b.to !== null) || far(b) - far(a));
  const order: T[] = [];
  while (left.length > 0) {
    const free = left.findIndex(
      (each) =>
        !each.to ||
        left.every(
          (other) => other === each || !other.from || !meet(itemExtent(each.to!), itemExtent(other.from)),
        ),
    );
    // Two that swap places: one of them has to be put aside.
    order.push(...left.splice(Math.max(0, free), 1));
  }
  return order;
}
