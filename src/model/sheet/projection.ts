import type { Corner } from '../../engine/geometry/polygon';
import type { Vec3 } from '../../engine/geometry/types';
import { perObject } from '../../engine/memory/memory';
import { pieceExtent } from '../airframe/extent';
import { type Piece, pieces } from '../airframe/pieces';
import { poseOf } from '../airframe/poses';
import { hullsAround, itemSolid } from '../airframe/solids';
import { surfaceSolids } from '../airframe/surfaceSolids';
import type { Item } from '../document/edit';
import type { Aircraft } from '../document/types';
import { type OutlineView, outlineOf, outlinesOf } from '../weigh/outlines';
import type { Rect, Spot } from './drawing';

/** From the left with the nose to the left, from above with the nose to the left, and from ahead. */
export type SheetView = 'side' | 'top' | 'front';

const outlineView: Readonly<Record<SheetView, OutlineView>> = { side: 'side', top: 'top', front: 'behind' };

/** Seen from ahead the right wing is to the left. */
const flip = (view: SheetView): 1 | -1 => (view === 'front' ? -1 : 1);

/** A point as a view shows it, mm: to the right and up. */
export function seen([x, y, z]: Vec3, view: SheetView): Corner {
  switch (view) {
    case 'side':
      return [x, z];
    case 'top':
      return [x, y];
    case 'front':
      return [-y, z];
  }
}

const turned = (corners: readonly Corner[], view: SheetView): readonly Corner[] =>
  flip(view) === 1 ? corners : corners.map(([a, b]): Corner => [-a, b]);

/** A solid of the airframe as a view shows it. */
export interface SeenPiece {
  readonly piece: Piece;
  readonly corners: readonly Corner[];
}

/** How far a solid is from whoever looks, mm: the farthest is drawn first, and what is nearer covers it. */
function depth(piece: Piece, view: SheetView): number {
  const { minMm, maxMm } = pieceExtent(piece);
  switch (view) {
    case 'side':
      return (minMm[1] + maxMm[1]) / 2;
    case 'top':
      return -maxMm[2];
    case 'front':
      return minMm[0];
  }
}

/** The airframe in a view, the farthest first. */
export function seenAirframe(aircraft: Aircraft, view: SheetView): readonly SeenPiece[] {
  const outlines = outlinesOf(aircraft, outlineView[view]);
  return pieces(aircraft)
    .map((piece, at) => ({ piece, corners: turned(outlines[at]?.corners ?? [], view) }))
    .sort((a, b) => depth(b.piece, view) - depth(a.piece, view));
}

/** A part or tank in a view. */
export const seenItem = (item: Item, view: SheetView): readonly Corner[] =>
  turned(itemOutlines(item)[view], view);

const itemOutlines = perObject((item: Item) => {
  const posed = {
    shape: item.shape,
    pose: poseOf(item),
    mirrored: false,
  };
  const of = (view: OutlineView) => outlineOf(posed, view);
  return { side: of('side'), top: of('top'), front: of('behind') };
});

/** Whether something covers it: its middle lies in a hull or in a flying surface, and it is not meant to stand outside. */
export function isHidden(aircraft: Aircraft, item: Item): boolean {
  if (item.inTheOpen) return false;
  return hullsAround(aircraft, itemSolid(item)).length > 0 || surfaceAround(aircraft, item) !== null;
}

/** The flying surface whose box about a panel holds an item's middle; null for none. */
export function surfaceAround(aircraft: Aircraft, item: Item): string | null {
  const { minMm, maxMm } = itemSolid(item);
  const middle = minMm.map((least, axis) => (least + maxMm[axis]!) / 2);
  const holds = (box: { readonly minMm: Vec3; readonly maxMm: Vec3 }) =>
    middle.every((at, axis) => at >= box.minMm[axis]! && at <= box.maxMm[axis]!);
  return surfaceSolids(aircraft).find(({ panelBoxes }) => panelBoxes.some(holds))?.name ?? null;
}

/** The box about points of a view, mm: its left and right, its low and high. */
export interface SeenBox {
  readonly left: number;
  readonly right: number;
  readonly low: number;
  readonly high: number;
}

export function boxAbout(corners: readonly Corner[]): SeenBox | null {
  if (corners.length === 0) return null;
  let [left, right, low, high] = [Infinity, -Infinity, Infinity, -Infinity];
  for (const [a, b] of corners) {
    left = Math.min(left, a);
    right = Math.max(right, a);
    low = Math.min(low, b);
    high = Math.max(high, b);
  }
  return { left, right, low, high };
}

export const grown = ({ left, right, low, high }: SeenBox, by: number): SeenBox => ({
  left: left - by,
  right: right + by,
  low: low - by,
  high: high + by,
});

/** From mm of the aircraft to mm of paper. */
export interface Projection {
  readonly view: SheetView;
  readonly scale: number;
  readonly area: Rect;
  /** Where a point of the aircraft lies on paper. */
  spot(at: Vec3): Spot;
  corner(at: Corner): Spot;
}

/** Puts a box of a view at a scale into the middle of a stretch of paper that begins at `topMm`. */
export function projection(
  view: SheetView,
  box: SeenBox,
  scale: number,
  { fromMm, toMm, topMm }: { readonly fromMm: number; readonly toMm: number; readonly topMm: number },
): Projection {
  const [wide, high] = [(box.right - box.left) / scale, (box.high - box.low) / scale];
  const leftMm = (fromMm + toMm - wide) / 2;
  const corner = ([a, b]: Corner): Spot => [leftMm + (a - box.left) / scale, topMm + (box.high - b) / scale];
  return {
    view,
    scale,
    area: { leftMm, rightMm: leftMm + wide, topMm, bottomMm: topMm + high },
    corner,
    spot: (at) => corner(seen(at, view)),
  };
}
