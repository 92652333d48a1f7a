import { poseRotation } from '../geometry/rotation';
import type { Mat3, Pose, Vec3 } from '../geometry/types';
import type { PanelShape } from '../mass/shapes';
import { panelSectionAt, panelSections } from '../mass/solids/panel';
import { perObject } from '../memory/memory';

/** A panel of a flying surface where it stands; mirrored in the plane of symmetry after it is posed. */
export interface PosedPanel {
  readonly shape: PanelShape;
  readonly pose: Pose;
  readonly mirrored: boolean;
}

const sections = perObject(panelSections);

/** Stretches of a panel that does not run straight, each taken as the hull of its two ends. */
const warpedStretches = 4;

/** A panel's corners as convex stretches along the span, in its own frame, mm. A warped one comes out a hair too thick. */
export const panelStretches = perObject((panel: PanelShape): readonly (readonly Vec3[])[] => {
  const { root, tip } = sections(panel);
  const flat = panel.rootThickness === panel.tipThickness && panel.rootTwistDeg === panel.tipTwistDeg;
  const cuts = flat ? 1 : warpedStretches;
  const ring = (k: number) =>
    panelSectionAt(root, tip, k / cuts).map(([x, z]): Vec3 => [x, (panel.spanMm * k) / cuts, z]);
  return Array.from({ length: cuts }, (_, k) => [...ring(k), ...ring(k + 1)]);
});

/** Root and tip corners as x, z, x, z, ... */
const outlines = perObject((shape: PanelShape) => {
  const { root, tip } = sections(shape);
  return { root: Float64Array.from(root.flat()), tip: Float64Array.from(tip.flat()) };
});

const rotationOf = perObject((panel: PosedPanel): Mat3 => poseRotation(panel.pose));

/** A point as the panel's own frame sees it, mm. */
export function pointFromPanel(panel: PosedPanel, pointMm: Vec3): Vec3 {
  const r = rotationOf(panel);
  const [px, py, pz] = panel.pose.positionMm;
  const [x, y, z] = [pointMm[0] - px, (panel.mirrored ? -pointMm[1] : pointMm[1]) - py, pointMm[2] - pz];
  return [r[0] * x + r[3] * y + r[6] * z, r[1] * x + r[4] * y + r[7] * z, r[2] * x + r[5] * y + r[8] * z];
}

/**
 * How far a point lies out of a panel, mm: 0 within it or on its skin. Measured in the section's own plane and
 * along the span, so on a strongly tapered panel a little too much, never too little.
 */
export function outOfPanel(panel: PosedPanel, pointMm: Vec3): number {
  const [x, y, z] = pointFromPanel(panel, pointMm);
  const { spanMm } = panel.shape;
  const at = Math.min(1, Math.max(0, y / spanMm));
  const beyond = y - at * spanMm;
  const beside = outOfSection(panel.shape, at, x, z);
  return beyond === 0 ? beside : Math.hypot(beyond, beside);
}

/**
 * Distance of a point to the section a share `at` of the way out, mm; 0 within. The corners run from the trailing
 * edge below to the nose, which is clockwise from x to z: what lies left of an edge is outside.
 */
function outOfSection(shape: PanelShape, at: number, x: number, z: number): number {
  const { root, tip } = outlines(shape);
  const last = root.length - 2;
  let ax = root[last]! + (tip[last]! - root[last]!) * at;
  let az = root[last + 1]! + (tip[last + 1]! - root[last + 1]!) * at;
  let least = Number.POSITIVE_INFINITY;
  let inside = true;
  for (let i = 0; i <= last; i += 2) {
    const bx = root[i]! + (tip[i]! - root[i]!) * at;
    const bz = root[i + 1]! + (tip[i + 1]! - root[i + 1]!) * at;
    const [ux, uz] = [bx - ax, bz - az];
    const [px, pz] = [x - ax, z - az];
    if (ux * pz - uz * px > 0) inside = false;
    const along = Math.min(1, Math.max(0, (px * ux + pz * uz) / (ux * ux + uz * uz || 1)));
    const [dx, dz] = [px - along * ux, pz - along * uz];
    least = Math.min(least, dx * dx + dz * dz);
    [ax, az] = [bx, bz];
  }
  return inside ? 0 : Math.sqrt(least);
}

/** Of the 80 strips of a section every so many is taken as a way to look; neighbours differ by a degree or two. */
const everyStrip = 4;

/** Ways square to a panel's skin at its root, in its own frame: enough to find what of a round item pokes through it. */
export const panelNormals = perObject((shape: PanelShape): readonly Vec3[] => {
  const { root } = sections(shape);
  return root
    .map(([ax, az], i): Vec3 => {
      const [bx, bz] = root[(i + 1) % root.length]!;
      const size = Math.hypot(bx - ax, bz - az) || 1;
      return [-(bz - az) / size, 0, (bx - ax) / size];
    })
    .filter((_, i) => i % everyStrip === 0);
});
