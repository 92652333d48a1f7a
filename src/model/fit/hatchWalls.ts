import { hullHolds, hullOf } from '../../engine/fit/hull';
import { clipped, type Plane } from '../../engine/fit/polyhedron';
import { type Triangle, type TriangleTree, triangleTree } from '../../engine/fit/triangleTree';
import type { Vec3 } from '../../engine/geometry/types';
import { add, addScaled, cross, dot, normalise, scale, sub } from '../../engine/geometry/vec3';
import type { LoftShape } from '../../engine/mass/shapes';
import { perObject, perObjects } from '../../engine/memory/memory';
import { shrunkMesh } from '../../engine/mesh/shrunkMesh';
import { hulls, type NamedHull } from '../airframe/solids';
import type { Aircraft, Hatch } from '../document/types';

/** The hatch's own axes: out of the hull, along its length (as near fore and aft as it can be), and across. */
export function hatchAxes({ normal }: Hatch): {
  readonly normal: Vec3;
  readonly along: Vec3;
  readonly across: Vec3;
} {
  const out = normalise(normal) ?? [0, 0, 1];
  const ahead: Vec3 = Math.abs(out[0]) < 0.9 ? [1, 0, 0] : [0, 1, 0];
  const along = normalise(sub(ahead, scale(out, dot(ahead, out)))) ?? [1, 0, 0];
  return { normal: out, along, across: cross(out, along) };
}

/** The four corners of the opening, in order, aircraft frame, mm. */
export function hatchCorners(hatch: Hatch): Vec3[] {
  const { along, across } = hatchAxes(hatch);
  const [u, v] = [scale(along, hatch.lengthMm / 2), scale(across, hatch.widthMm / 2)];
  const corner = (a: number, b: number) => add(add(hatch.centreMm, scale(u, a)), scale(v, b));
  return [corner(-1, -1), corner(1, -1), corner(1, 1), corner(-1, 1)];
}

/** What a part may stand nearer the wall's inner face than it should, mm: facets and slopes are not exact. */
const leewayMm = 0.1;

/** The inner face of a hull, to be asked what is near it. */
export interface OpenedWall {
  readonly name: string;
  readonly tree: TriangleTree;
}

/**
 * The inner faces of the hulls, without what the hatch opens: all of the wall over its rectangle, on its side.
 * Of other hulls than the item's own, what reaches into that one is no wall either.
 */
export const wallsWithout = (aircraft: Aircraft, hatch: Hatch, around: NamedHull | null): OpenedWall[] =>
  hulls(aircraft).map((hull) => wallWithout(hull, hatch, around));

/** Hulls and hatches stay the same while parts are moved. */
const wallWithout = perObjects((hull: NamedHull, hatch: Hatch, around: NamedHull | null): OpenedWall => {
  const planes = sidePlanes(hatch);
  const { normal } = hatchAxes(hatch);
  const deepest = Math.max(hatch.lengthMm, hatch.widthMm) / 2;
  const atHatch = (facet: Triangle) => {
    const outward = cross(sub(facet[1], facet[0]), sub(facet[2], facet[0]));
    return (
      dot(outward, normal) > 0 && facet.some((p) => Math.abs(dot(sub(p, hatch.centreMm), normal)) < deepest)
    );
  };
  const joined = (facet: Triangle) => around && hull !== around && facet.some((p) => hullHolds(around, p));
  const facets = innerFacets(hull).filter((facet) => !joined(facet));
  const left = facets.flatMap((facet) => (atHatch(facet) ? outsideOf(facet, planes) : [facet]));
  return { name: hull.name, tree: triangleTree(left) };
});

/** The hull's inner face: every section smaller by the skin all round, the ends set in. */
const innerFacets = perObject((hull: NamedHull): readonly Triangle[] => {
  const skin = Math.max(0, hull.skinMm - leewayMm);
  const last = hull.shape.sections.length - 1;
  const shape: LoftShape = {
    ...hull.shape,
    sections: hull.shape.sections.map((section, i) => ({
      ...section,
      xMm: section.xMm + (i === 0 ? skin : i === last ? -skin : 0),
      widthMm: Math.max(0, section.widthMm - 2 * skin),
      heightMm: Math.max(0, section.heightMm - 2 * skin),
    })),
  };
  const mesh = hull.mesh && { ...hull.mesh, shape: shrunkMesh(hull.mesh.shape, skin) };
  return hullOf({ ...hull, shape, mesh }).facets;
});

/** The planes of the opening's four sides, outward. */
function sidePlanes(hatch: Hatch): Plane[] {
  const { along, across } = hatchAxes(hatch);
  const side = (normal: Vec3, half: number): Plane => ({
    normal,
    offsetMm: dot(addScaled(hatch.centreMm, normal, half), normal),
  });
  const back = (v: Vec3) => scale(v, -1);
  return [
    side(along, hatch.lengthMm / 2),
    side(back(along), hatch.lengthMm / 2),
    side(across, hatch.widthMm / 2),
    side(back(across), hatch.widthMm / 2),
  ];
}

/** What of a facet lies outside the opening: what each side cuts off in turn. */
function outsideOf(facet: Triangle, planes: readonly Plane[]): Triangle[] {
  const left: Triangle[] = [];
  let rest: readonly Vec3[] | null = facet;
  for (const { normal, offsetMm } of planes) {
    if (!rest) break;
    const off = flatClip(rest, { normal: scale(normal, -1), offsetMm: -offsetMm });
    if (off) for (let i = 2; i < off.length; i += 1) left.push([off[0]!, off[i - 1]!, off[i]!]);
    rest = flatClip(rest, { normal, offsetMm });
  }
  return left;
}

const flatClip = (face: readonly Vec3[], plane: Plane): readonly Vec3[] | null =>
  clipped({ faces: [face], sign: 1 }, [plane])?.faces[0] ?? null;
