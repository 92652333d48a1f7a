import type { OrientedBox } from '../../engine/fit/orientedBox';
import { poseRotation } from '../../engine/geometry/rotation';
import type { Vec3 } from '../../engine/geometry/types';
import { shapeBounds } from '../../engine/mass/shapeBounds';
import type { Shape } from '../../engine/mass/shapes';
import { perObject } from '../../engine/memory/memory';
import type { Item } from '../document/edit';
import type { Aircraft } from '../document/types';
import { type Piece, pieces } from './pieces';
import { poseOf } from './poses';

/** A box square to the aircraft's axes, mm from the datum. */
export interface Extent {
  readonly minMm: Vec3;
  readonly maxMm: Vec3;
}

type Posed = Parameters<typeof poseOf>[0] & {
  readonly shape: Shape;
  readonly mirrored?: boolean | undefined;
};

/** The bounding box of a posed shape, turned with it. */
export function orientedBox(item: Posed): OrientedBox {
  const { minMm, maxMm } = shapeBounds(item.shape);
  const rotation = poseRotation(poseOf(item));
  const flip = item.mirrored ? -1 : 1;
  const [x, y, z]: Vec3 = [
    (minMm[0] + maxMm[0]) / 2,
    ((minMm[1] + maxMm[1]) / 2) * flip,
    (minMm[2] + maxMm[2]) / 2,
  ];
  const r = rotation;
  return {
    centreMm: [
      item.positionMm[0] + r[0] * x + r[1] * y + r[2] * z,
      item.positionMm[1] + r[3] * x + r[4] * y + r[5] * z,
      item.positionMm[2] + r[6] * x + r[7] * y + r[8] * z,
    ],
    rotation,
    halfMm: [(maxMm[0] - minMm[0]) / 2, (maxMm[1] - minMm[1]) / 2, (maxMm[2] - minMm[2]) / 2],
  };
}

/** The box square to the axes around an oriented one. */
export function extentOf({ centreMm: c, rotation: r, halfMm: h }: OrientedBox): Extent {
  const reach: Vec3 = [
    Math.abs(r[0]) * h[0] + Math.abs(r[1]) * h[1] + Math.abs(r[2]) * h[2],
    Math.abs(r[3]) * h[0] + Math.abs(r[4]) * h[1] + Math.abs(r[5]) * h[2],
    Math.abs(r[6]) * h[0] + Math.abs(r[7]) * h[1] + Math.abs(r[8]) * h[2],
  ];
  return {
    minMm: [c[0] - reach[0], c[1] - reach[1], c[2] - reach[2]],
    maxMm: [c[0] + reach[0], c[1] + reach[1], c[2] + reach[2]],
  };
}

/** The extent of a part or tank where it stands; worked out once for each item as it is. */
export const itemExtent = perObject((item: Item): Extent => extentOf(orientedBox(item)));

/** The extent of a solid of the airframe where it stands; worked out once for each. */
export const pieceExtent = perObject((piece: Piece): Extent => {
  const posed = extentOf(orientedBox({ ...piece.pose, shape: piece.shape }));
  return piece.mirrored ? mirrored(posed) : posed;
});

/** The extent of the airframe alone; null without one. Kept for as long as the pieces stay the same. */
const airframeExtent = perObject((all: readonly Piece[]): Extent | null =>
  all.length > 0 ? all.map(pieceExtent).reduce(union) : null,
);

const mirrored = ({ minMm, maxMm }: Extent): Extent => ({
  minMm: [minMm[0], -maxMm[1], minMm[2]],
  maxMm: [maxMm[0], -minMm[1], maxMm[2]],
});

const union = (a: Extent, b: Extent): Extent => ({
  minMm: [
    Math.min(a.minMm[0], b.minMm[0]),
    Math.min(a.minMm[1], b.minMm[1]),
    Math.min(a.minMm[2], b.minMm[2]),
  ],
  maxMm: [
    Math.max(a.maxMm[0], b.maxMm[0]),
    Math.max(a.maxMm[1], b.maxMm[1]),
    Math.max(a.maxMm[2], b.maxMm[2]),
  ],
});

/** A bench with nothing on it shows a metre around the datum. */
const EMPTY_BENCH: Extent = { minMm: [-100, -500, -200], maxMm: [900, 500, 200] };

/** Everything there is: airframe, tanks and parts. */
export function aircraftExtent(aircraft: Aircraft): Extent {
  const airframe = airframeExtent(pieces(aircraft));
  const all = [...(airframe ? [airframe] : []), ...[...aircraft.parts, ...aircraft.tanks].map(itemExtent)];
  return all.length > 0 ? all.reduce(union) : EMPTY_BENCH;
}

/** What dragged items may catch on: other parts, tanks, and formers. */
export function neighboursOf(aircraft: Aircraft, movedIds: readonly string[]): Extent[] {
  const items = [...aircraft.parts, ...aircraft.tanks]
    .filter(({ id }) => !movedIds.includes(id))
    .map(itemExtent);
  const formers = pieces(aircraft)
    .filter(({ kind }) => kind === 'block')
    .map(pieceExtent);
  return [...items, ...formers];
}
