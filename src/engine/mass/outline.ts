import { type Corner, counterclockwise, turnOf } from '../geometry/polygon';
import type { Vec3 } from '../geometry/types';
import { cross, dot, length, sub } from '../geometry/vec3';
import { perObject } from '../memory/memory';
import { aerofoilPieces } from './aerofoil';
import type { LoftSection, LoftShape, PanelShape, PrismShape, Shape } from './shapes';
import { panelSections } from './solids/panel';
import { rectangleAt, revolve, roundEnds, sectionRing } from './tessellate';
import type { Mesh } from './types';

type Line = Vec3[];

/** Points to a quarter of a circle. */
const steps = 16;
/** An edge that turns by more than this is crisp: cos 20°. */
const crisp = Math.cos((20 * Math.PI) / 180);

/**
 * The lines a draughtsman draws of a shape, as polylines in its own frame, mm: edges, end circles
 * and generators, section rings, leading and trailing edge. A closed line ends where it began.
 */
export function featureLines(shape: Shape): Vec3[][] {
  switch (shape.kind) {
    case 'box': {
      const { lengthMm: l, widthMm: w, heightMm: h } = shape;
      return ringsAndJoins([rectangleAt(-l / 2, w, h), rectangleAt(l / 2, w, h)], [0, 1, 2, 3]);
    }
    case 'taperedBox': {
      const { lengthMm: l, frontWidthMm, frontHeightMm, rearWidthMm, rearHeightMm } = shape;
      const front = rectangleAt(-l / 2, frontWidthMm, frontHeightMm);
      return ringsAndJoins([front, rectangleAt(l / 2, rearWidthMm, rearHeightMm)], [0, 1, 2, 3]);
    }
    case 'cylinder':
      return turned(shape.lengthMm / 2, shape.diameterMm / 2, shape.diameterMm / 2);
    case 'frustum':
      return turned(shape.lengthMm / 2, shape.frontDiameterMm / 2, shape.rearDiameterMm / 2);
    case 'tube': {
      const [half, outer, inner] = [shape.lengthMm / 2, shape.outerDiameterMm / 2, shape.innerDiameterMm / 2];
      const bore =
        inner > 0
          ? revolve(
              [
                [-half, inner],
                [half, inner],
              ],
              steps,
            ).map(closed)
          : [];
      return [...turned(half, outer, outer), ...bore];
    }
    case 'sphere': {
      const r = shape.diameterMm / 2;
      return [...meridians(r, r, r, 0), circle(0, r, r)];
    }
    case 'ellipsoid': {
      const [a, b, c] = [shape.lengthMm / 2, shape.widthMm / 2, shape.heightMm / 2];
      return [...meridians(a, b, c, 0), circle(0, b, c)];
    }
    case 'capsule': {
      const r = shape.diameterMm / 2;
      const half = (shape.lengthMm - shape.diameterMm) / 2;
      return [...meridians(r, r, r, half), circle(-half, r, r), circle(half, r, r)];
    }
    case 'prism':
      return prismLines(shape);
    case 'loft':
      return loftLines(shape);
    case 'panel':
      return panelLines(shape);
    case 'mesh':
      return crispEdges(shape);
  }
}

const closed = (ring: readonly Vec3[]): Line => [...ring, ring[0]!];

/** Every ring that is not a point, closed, and lines from ring to ring through the named corners. */
function ringsAndJoins(rings: readonly (readonly Vec3[])[], corners: readonly number[]): Line[] {
  const drawn = rings.filter((ring) => ring.some((point) => length(sub(point, ring[0]!)) > 0));
  return [...drawn.map(closed), ...corners.map((corner) => rings.map((ring) => ring[corner]!))];
}

/** End circles and four generators of a body of revolution with straight sides. */
function turned(half: number, front: number, rear: number): Line[] {
  const rings = revolve(
    [
      [-half, front],
      [half, rear],
    ],
    steps,
  );
  return ringsAndJoins(
    rings,
    [0, 1, 2, 3].map((quarter) => quarter * steps),
  );
}

const circle = (x: number, b: number, c: number): Line =>
  closed(revolve([[x, 1]], steps)[0]!.map(([, y, z]): Vec3 => [x, b * y, c * z]));

/** The outlines seen from above and from the side. */
function meridians(a: number, b: number, c: number, half: number): Line[] {
  const over = roundEnds(a, 1, half, steps);
  const loop = [
    ...over,
    ...over
      .toReversed()
      .slice(1, -1)
      .map(([x, r]): Corner => [x, -r]),
  ];
  return [
    closed(loop.map(([x, r]): Vec3 => [x, b * r, 0])),
    closed(loop.map(([x, r]): Vec3 => [x, 0, c * r])),
  ];
}

function prismLines({ lengthMm, outlineMm }: PrismShape): Line[] {
  const outline = counterclockwise(outlineMm);
  const n = outline.length;
  const sharp = outline.flatMap((corner, i) => {
    const before = outline[(i + n - 1) % n]!;
    const after = outline[(i + 1) % n]!;
    const ahead =
      (corner[0] - before[0]) * (after[0] - corner[0]) + (corner[1] - before[1]) * (after[1] - corner[1]);
    const turnBy = Math.atan2(turnOf(before, corner, after), ahead);
    return Math.cos(turnBy) < crisp ? [i] : [];
  });
  const ring = (x: number) => outline.map(([y, z]): Vec3 => [x, y, z]);
  return ringsAndJoins([ring(-lengthMm / 2), ring(lengthMm / 2)], sharp);
}

/** Section rings; top, bottom and side lines; and the edges where square corners run. */
function loftLines({ sections }: LoftShape): Line[] {
  const rings = sections.map((section) => sectionRing(section, steps));
  const halfY = (s: LoftSection, side: number): Vec3 => [
    s.xMm,
    s.centreYMm + (side * s.widthMm) / 2,
    s.centreZMm,
  ];
  const halfZ = (s: LoftSection, side: number): Vec3 => [
    s.xMm,
    s.centreYMm,
    s.centreZMm + (side * s.heightMm) / 2,
  ];
  const along = [halfY, halfZ].flatMap((at) => [1, -1].map((side) => sections.map((s) => at(s, side))));
  return [...ringsAndJoins(rings, []), ...along, ...squareCorners(sections)];
}

/** The corner lines of the stretches that are square at both ends. */
function squareCorners(sections: readonly LoftSection[]): Line[] {
  return sections.slice(1).flatMap((to, i) => {
    const from = sections[i]!;
    if (from.roundness > 0 || to.roundness > 0) return [];
    const ends = [from, to].map((section) => sectionRing(section, 1));
    return [0, 2, 4, 6].map((corner) => ends.map((ring) => ring[corner]!));
  });
}

/** Root and tip sections, leading edge and trailing edge. */
function panelLines(shape: PanelShape): Line[] {
  const { root, tip } = panelSections(shape);
  const at =
    (y: number) =>
    ([x, z]: Corner): Vec3 => [x, y, z];
  return ringsAndJoins([root.map(at(0)), tip.map(at(shape.spanMm))], [0, aerofoilPieces]);
}

/** Mesh edges where the two facets differ by more than 20°, or one is missing. */
const crispEdges = perObject(({ verticesMm, triangles }: Mesh): Line[] => {
  const count = verticesMm.length;
  const facing = new Map<number, Vec3>();
  for (const [a, b, c] of triangles) {
    const normal = cross(sub(verticesMm[b]!, verticesMm[a]!), sub(verticesMm[c]!, verticesMm[a]!));
    for (const [from, to] of [
      [a, b],
      [b, c],
      [c, a],
    ] as const)
      facing.set(from * count + to, normal);
  }
  const lines: Line[] = [];
  for (const [edge, normal] of facing) {
    const [from, to] = [Math.floor(edge / count), edge % count];
    const other = facing.get(to * count + from);
    if (other && from > to) continue;
    if (!other || dot(normal, other) < crisp * length(normal) * length(other)) {
      lines.push([verticesMm[from]!, verticesMm[to]!]);
    }
  }
  return lines;
});
