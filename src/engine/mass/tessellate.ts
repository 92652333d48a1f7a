import { type Corner, counterclockwise } from '../geometry/polygon';
import { fan, type Triple, triangulate } from '../geometry/triangulate';
import type { Vec3 } from '../geometry/types';
import { aerofoilPieces } from './aerofoil';
import { quarterTurn, roundedOutline } from './roundedRectangle';
import type { LoftSection, LoftShape, PanelShape, PrismShape, Shape } from './shapes';
import { sectionBetween } from './solids/loft';
import { panelSectionAt, panelSections } from './solids/panel';
import { stitch } from './stitch';
import type { Mesh } from './types';

export interface TessellateOptions {
  /** Straight pieces to a full circle, rounded up to a multiple of 4; 48 by default. */
  readonly segments?: number;
}

/**
 * A closed, outward, watertight mesh of a shape in its own frame, corners on the true surface.
 * Exact for flat-faced shapes; otherwise it misses the true volume by a share that falls as 1/segments².
 */
export function tessellate(shape: Shape, { segments = 48 }: TessellateOptions = {}): Mesh {
  const steps = Math.max(1, Math.ceil(segments / 4));
  switch (shape.kind) {
    case 'box': {
      const { lengthMm, widthMm: w, heightMm: h } = shape;
      return slab(lengthMm, w, h, w, h);
    }
    case 'taperedBox': {
      const { lengthMm, frontWidthMm, frontHeightMm, rearWidthMm, rearHeightMm } = shape;
      return slab(lengthMm, frontWidthMm, frontHeightMm, rearWidthMm, rearHeightMm);
    }
    case 'cylinder': {
      const r = shape.diameterMm / 2;
      return cone(shape.lengthMm / 2, r, r, steps);
    }
    case 'frustum':
      return cone(shape.lengthMm / 2, shape.frontDiameterMm / 2, shape.rearDiameterMm / 2, steps);
    case 'tube': {
      const [half, outer, inner] = [shape.lengthMm / 2, shape.outerDiameterMm / 2, shape.innerDiameterMm / 2];
      const profile: Corner[] = [
        [-half, outer],
        [half, outer],
        [half, inner],
        [-half, inner],
      ];
      return stitch(revolve(profile, steps), 'loop');
    }
    case 'sphere': {
      const r = shape.diameterMm / 2;
      return stitch(revolve(roundEnds(r, r, 0, steps), steps), []);
    }
    case 'ellipsoid': {
      const [a, b, c] = [shape.lengthMm / 2, shape.widthMm / 2, shape.heightMm / 2];
      const rings = revolve(roundEnds(a, 1, 0, steps), steps);
      return stitch(
        rings.map((ring) => ring.map(([x, y, z]): Vec3 => [x, b * y, c * z])),
        [],
      );
    }
    case 'capsule': {
      const r = shape.diameterMm / 2;
      return stitch(revolve(roundEnds(r, r, (shape.lengthMm - shape.diameterMm) / 2, steps), steps), []);
    }
    case 'prism':
      return prismMesh(shape);
    case 'loft':
      return loftMesh(shape, steps);
    case 'panel':
      return panelMesh(shape, steps);
    case 'mesh':
      return { verticesMm: shape.verticesMm, triangles: shape.triangles };
  }
}

/** Corners of a rectangle across x, counterclockwise about +x. */
export const rectangleAt = (x: number, width: number, height: number): Vec3[] => [
  [x, width / 2, -height / 2],
  [x, width / 2, height / 2],
  [x, -width / 2, height / 2],
  [x, -width / 2, -height / 2],
];

const slab = (length: number, w0: number, h0: number, w1: number, h1: number): Mesh =>
  stitch([rectangleAt(-length / 2, w0, h0), rectangleAt(length / 2, w1, h1)], fan(4));

function cone(half: number, front: number, rear: number, steps: number): Mesh {
  const profile: Corner[] = [
    [-half, 0],
    [-half, front],
    [half, rear],
    [half, 0],
  ];
  return stitch(revolve(profile, steps), []);
}

/** Rings about the x axis through [x, radius] points taken from front to rear over the outside. */
export function revolve(profile: readonly Corner[], steps: number): Vec3[][] {
  const circle = roundedOutline(1, 1, 1, steps).filter(([y, z], i, all) => {
    const [py, pz] = all.at(i - 1)!;
    return y !== py || z !== pz;
  });
  return profile.map(([x, r]) => circle.map(([y, z]): Vec3 => [x, r * y, r * z]));
}

/** Half-ellipse ends (semi-axes a along x, r across) set ±half from the middle, front to rear. */
export function roundEnds(a: number, r: number, half: number, steps: number): Corner[] {
  const arc = quarterTurn(steps);
  const front = arc.map(([c, s]): Corner => [-half - a * c, r * s]);
  const rear = arc.toReversed().map(([c, s]): Corner => [half + a * c, r * s]);
  return [...front, ...(half === 0 ? rear.slice(1) : rear)];
}

function prismMesh({ lengthMm, outlineMm }: PrismShape): Mesh {
  const outline = counterclockwise(outlineMm);
  const ring = (x: number) => outline.map(([y, z]): Vec3 => [x, y, z]);
  return stitch([ring(-lengthMm / 2), ring(lengthMm / 2)], triangulate(outline));
}

/** A loft section's outline in place. */
export const sectionRing = (section: LoftSection, steps: number): Vec3[] =>
  roundedOutline(section.widthMm / 2, section.heightMm / 2, section.roundness, steps).map(
    ([y, z]): Vec3 => [section.xMm, section.centreYMm + y, section.centreZMm + z],
  );

/** True when every straight line joining like points of the two sections lies in flat facets. */
const runsStraight = (a: LoftSection, b: LoftSection): boolean =>
  a.roundness === b.roundness && (a.roundness === 0 || a.widthMm * b.heightMm === b.widthMm * a.heightMm);

function loftMesh({ sections }: LoftShape, steps: number): Mesh {
  const rings = [sectionRing(sections[0]!, steps)];
  sections.slice(1).forEach((to, i) => {
    const from = sections[i]!;
    const cuts = runsStraight(from, to) ? 1 : 2 * Math.ceil(steps / 4);
    for (let k = 1; k <= cuts; k += 1) {
      rings.push(sectionRing(k === cuts ? to : sectionBetween(from, to, k / cuts), steps));
    }
  });
  return stitch(rings, fan(rings[0]!.length));
}

/** Triangles across an aerofoil polygon, lower side to upper; corner 0 the trailing edge, `aerofoilPieces` the nose. */
function aerofoilCap(): Triple[] {
  const n = aerofoilPieces;
  const triangles: Triple[] = [[0, 1, 2 * n - 1]];
  for (let i = 1; i < n - 1; i += 1) {
    triangles.push([i, i + 1, 2 * n - i - 1], [i, 2 * n - i - 1, 2 * n - i]);
  }
  triangles.push([n - 1, n, n + 1]);
  return triangles;
}

function panelMesh(shape: PanelShape, steps: number): Mesh {
  const { root, tip } = panelSections(shape);
  const flat = shape.rootThickness === shape.tipThickness && shape.rootTwistDeg === shape.tipTwistDeg;
  const cuts = flat ? 1 : 2 * Math.ceil(steps / 2);
  const rings = Array.from({ length: cuts + 1 }, (_, k) =>
    (k === cuts ? tip : panelSectionAt(root, tip, k / cuts)).map(
      ([x, z]): Vec3 => [x, (shape.spanMm * k) / cuts, z],
    ),
  );
  return stitch(rings, aerofoilCap());
}
