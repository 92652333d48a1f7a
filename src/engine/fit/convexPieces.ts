import { type Corner, counterclockwise, polygonArea, turnOf } from '../geometry/polygon';
import { triangulate } from '../geometry/triangulate';
import type { Vec3 } from '../geometry/types';
import type { LoftSection, LoftShape, PrismShape, Shape, TubeShape } from '../mass/shapes';
import { sectionBetween } from '../mass/solids/loft';
import { perObject } from '../memory/memory';
import type { ConvexPiece } from './convex';
import { meshPieces } from './meshPieces';

/**
 * A shape as convex solids whose union it is, in its own frame. Exact for all but: a tube, taken as its
 * outside; a loft whose roundness changes, within 0.01 mm up to the size of a model; a mesh that is neither convex nor
 * seen whole from the middle of its corners, or has many triangles: covered (`convexCover`). Throws for a panel, which fit
 * does not deal with.
 */
export const convexPieces: (shape: Shape) => readonly ConvexPiece[] = perObject((shape: Shape) => {
  switch (shape.kind) {
    case 'box':
      return [between(shape.lengthMm, [shape.widthMm, shape.heightMm], [shape.widthMm, shape.heightMm], 0)];
    case 'taperedBox': {
      const { lengthMm, frontWidthMm, frontHeightMm, rearWidthMm, rearHeightMm } = shape;
      return [between(lengthMm, [frontWidthMm, frontHeightMm], [rearWidthMm, rearHeightMm], 0)];
    }
    case 'cylinder':
      return [round(shape.lengthMm, shape.diameterMm, shape.diameterMm)];
    case 'tube':
      return [round(shape.lengthMm, shape.outerDiameterMm, shape.outerDiameterMm)];
    case 'frustum':
      return [round(shape.lengthMm, shape.frontDiameterMm, shape.rearDiameterMm)];
    case 'sphere':
      return [{ kind: 'points', pointsMm: [[0, 0, 0]], radiusMm: shape.diameterMm / 2 }];
    case 'ellipsoid':
      return [{ kind: 'ellipsoid', semiMm: [shape.lengthMm / 2, shape.widthMm / 2, shape.heightMm / 2] }];
    case 'capsule': {
      const half = (shape.lengthMm - shape.diameterMm) / 2;
      const pointsMm: Vec3[] = [
        [-half, 0, 0],
        [half, 0, 0],
      ];
      return [{ kind: 'points', pointsMm, radiusMm: shape.diameterMm / 2 }];
    }
    case 'prism':
      return prismPieces(shape);
    case 'loft':
      return loftPieces(shape);
    case 'mesh':
      return meshPieces(shape);
    case 'panel':
      throw new Error('convexPieces: a flying-surface panel has no convex pieces.');
  }
});

type Size = readonly [widthMm: number, heightMm: number];

/** The hull of two sections half a length either side of the origin; square ones are a polyhedron. */
function between(lengthMm: number, front: Size, rear: Size, roundness: number): ConvexPiece {
  const section = (xMm: number, [widthMm, heightMm]: Size): LoftSection => {
    return { xMm, widthMm, heightMm, centreYMm: 0, centreZMm: 0, roundness };
  };
  return hullOf(section(-lengthMm / 2, front), section(lengthMm / 2, rear));
}

const round = (lengthMm: number, front: number, rear: number): ConvexPiece =>
  between(lengthMm, [front, front], [rear, rear], 1);

function hullOf(from: LoftSection, to: LoftSection): ConvexPiece {
  if (from.roundness > 0 || to.roundness > 0) return { kind: 'sections', from, to };
  const pointsMm = [from, to].flatMap(({ xMm, widthMm, heightMm, centreYMm, centreZMm }) =>
    [1, -1].flatMap((y) =>
      [1, -1].map((z): Vec3 => [xMm, centreYMm + (y * widthMm) / 2, centreZMm + (z * heightMm) / 2]),
    ),
  );
  return { kind: 'points', pointsMm, radiusMm: 0 };
}

/** How far a corner radius may bow off the straight line between two sections, mm. */
const bowMm = 0.01;

/** However large a loft is: from about 160 mm of change on, the bow grows with its size. */
const mostStretches = 64;

/** How many stretches to cut the way between two sections into, so that each is the hull of its ends. */
export function straightStretches(from: LoftSection, to: LoftSection): number {
  const size = Math.max(Math.abs(to.widthMm - from.widthMm), Math.abs(to.heightMm - from.heightMm)) / 2;
  // Size and roundness each run linearly, so the radius is a parabola: it bows by Δsize·Δroundness/4.
  const stretches = Math.ceil(Math.sqrt((size * Math.abs(to.roundness - from.roundness)) / 4 / bowMm));
  return Math.min(mostStretches, Math.max(1, stretches));
}

const loftPieces = ({ sections }: LoftShape): ConvexPiece[] =>
  sections.slice(1).flatMap((to, i) => {
    const from = sections[i]!;
    const cuts = straightStretches(from, to);
    return Array.from({ length: cuts }, (_, k) =>
      hullOf(sectionBetween(from, to, k / cuts), sectionBetween(from, to, (k + 1) / cuts)),
    );
  });

const drawnOut = (outline: readonly Corner[], lengthMm: number): ConvexPiece => ({
  kind: 'points',
  pointsMm: [-lengthMm / 2, lengthMm / 2].flatMap((x) => outline.map(([y, z]): Vec3 => [x, y, z])),
  radiusMm: 0,
});

const prismPieces = ({ lengthMm, outlineMm }: PrismShape): ConvexPiece[] =>
  convexParts(counterclockwise(outlineMm)).map((part) => drawnOut(part, lengthMm));

/**
 * A simple counterclockwise polygon in convex parts: its triangles, joined over every diagonal that can go.
 * S. Hertel, K. Mehlhorn, Fast triangulation of simple polygons, FCT 1983: at most four times the fewest.
 */
export function convexParts(outline: readonly Corner[]): (readonly Corner[])[] {
  const parts: (readonly number[])[] = triangulate(outline);
  const join = (): boolean => {
    for (const a of parts) {
      for (const b of parts) {
        const joined = a === b ? null : joinedPart(outline, a, b);
        if (!joined) continue;
        parts.splice(parts.indexOf(a), 1, joined);
        parts.splice(parts.indexOf(b), 1);
        return true;
      }
    }
    return false;
  };
  while (join());
  return parts.map((part) => part.map((i) => outline[i]!)).filter((part) => polygonArea(part) > 0);
}

function joinedPart(
  outline: readonly Corner[],
  a: readonly number[],
  b: readonly number[],
): readonly number[] | null {
  for (const [i, p] of a.entries()) {
    const q = a[(i + 1) % a.length]!;
    const at = b.findIndex((corner, k) => corner === q && b[(k + 1) % b.length] === p);
    if (at < 0) continue;
    const ours = [...a.slice(i + 1), ...a.slice(0, i + 1)];
    const theirs = [...b.slice(at), ...b.slice(0, at)].slice(2);
    const joined = [...ours, ...theirs];
    return isConvex(joined.map((k) => outline[k]!)) ? joined : null;
  }
  return null;
}

const isConvex = (corners: readonly Corner[]): boolean =>
  corners.every((b, i) => turnOf(corners.at(i - 1)!, b, corners[(i + 1) % corners.length]!) >= 0);

const sectors = 48;

/**
 * A tube with its bore open, in its own frame: flat-faced sectors of the wall. Both circles are taken as the
 * polygons around them, so a round item lying along the bore's axis has its exact distance to the wall.
 */
export function openTubePieces({ lengthMm, outerDiameterMm, innerDiameterMm }: TubeShape): ConvexPiece[] {
  const half = Math.PI / sectors;
  const corner = (diameter: number, n: number): Corner => {
    const r = diameter / 2 / Math.cos(half);
    return [r * Math.cos((2 * n - 1) * half), r * Math.sin((2 * n - 1) * half)];
  };
  return Array.from({ length: sectors }, (_, n) => {
    const [o, p] = [corner(outerDiameterMm, n), corner(outerDiameterMm, n + 1)];
    const [i, j] = [corner(innerDiameterMm, n + 1), corner(innerDiameterMm, n)];
    return drawnOut([o, p, i, j], lengthMm);
  });
}
