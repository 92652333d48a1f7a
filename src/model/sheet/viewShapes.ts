import { hullHolds } from '../../engine/fit/hull';
import { perObjects } from '../../engine/memory/memory';
import { pieceExtent } from '../airframe/extent';
import type { Piece } from '../airframe/pieces';
import { hulls } from '../airframe/solids';
import type { Aircraft } from '../document/types';
import { line, type Rect, type Shape, type Spot } from './drawing';
import type { Marks } from './marks';
import type { Numbered } from './numbered';
import { isHidden, type Projection, seenAirframe, seenItem } from './projection';

/** Whether a hull holds the middle of a piece of structure that is no part of the outside. */
const isInside = perObjects((piece: Piece, structure: Aircraft['structure']): boolean => {
  if (piece.kind !== 'block') return false;
  const { minMm, maxMm } = pieceExtent(piece);
  const middle = [0, 1, 2].map((axis) => (minMm[axis]! + maxMm[axis]!) / 2) as [number, number, number];
  return hulls({ structure }).some((hull) => hullHolds(hull, middle));
});

/** The airframe: what is seen in continuous lines, the nearer covering the farther; what is inside it dashed. */
export function airframeShapes(aircraft: Aircraft, at: Projection): readonly Shape[] {
  const all = seenAirframe(aircraft, at.view).map(({ piece, corners }) => ({
    piece,
    points: corners.map(at.corner),
    inside: isInside(piece, aircraft.structure),
  }));
  const shape = (piece: Piece, points: readonly Spot[], inside: boolean): Shape => ({
    kind: 'polygon',
    points,
    line: inside ? 'faint' : 'outline',
    ...(!inside && { fill: 'paper' }),
    of: piece.id,
  });
  return [...all.filter(({ inside }) => !inside), ...all.filter(({ inside }) => inside)].map(
    ({ piece, points, inside }) => shape(piece, points, inside),
  );
}

/** Parts and tanks, dashed where the airframe hides them. */
export const itemShapes = (
  aircraft: Aircraft,
  things: readonly Numbered[],
  at: Projection,
): readonly Shape[] =>
  things.map(({ id, item }) => ({
    kind: 'polygon',
    points: seenItem(item, at.view).map(at.corner),
    line: isHidden(aircraft, item) ? 'hidden' : 'thin',
    of: id,
  }));

const DISC_MM = 1.7;

/** The CG with everything in the tanks: a disc in quarters. */
function quartered([x, y]: Spot): readonly Shape[] {
  const arc = (from: number): readonly Spot[] =>
    Array.from({ length: 9 }, (_, step): Spot => {
      const turn = from + (step / 8) * (Math.PI / 2);
      return [x + DISC_MM * Math.cos(turn), y + DISC_MM * Math.sin(turn)];
    });
  return [
    { kind: 'circle', at: [x, y], radiusMm: DISC_MM, line: 'thin', fill: 'paper', of: 'cg-full' },
    { kind: 'polygon', points: [[x, y], ...arc(0)], line: null, fill: 'ink' },
    { kind: 'polygon', points: [[x, y], ...arc(Math.PI)], line: null, fill: 'ink' },
  ];
}

/** The CG with the tanks dry: an open diamond. */
const diamond = ([x, y]: Spot): Shape => ({
  kind: 'polygon',
  points: [
    [x, y - DISC_MM],
    [x + DISC_MM, y],
    [x, y + DISC_MM],
    [x - DISC_MM, y],
  ],
  line: 'thin',
  of: 'cg-dry',
});

/** The limits as chain lines through the drawing where it shows stations, and the CG. */
export function markShapes({ band, cgFullMm, cgDryMm }: Marks, at: Projection, area: Rect): readonly Shape[] {
  const shapes: Shape[] = [];
  if (band && at.view !== 'front')
    for (const [of, stationMm] of [
      ['forward', band.forwardMm],
      ['aft', band.aftMm],
    ] as const) {
      const [x] = at.spot([stationMm, 0, 0]);
      if (x > area.leftMm && x < area.rightMm)
        shapes.push(line([x, area.topMm - 2], [x, area.bottomMm + 2], 'chain', of));
    }
  if (cgDryMm) shapes.push(diamond(at.spot(cgDryMm)));
  if (cgFullMm) shapes.push(...quartered(at.spot(cgFullMm)));
  return shapes;
}
