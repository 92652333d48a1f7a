import type { Corner } from '../geometry/polygon';
import { pointFromAircraft } from '../geometry/rotation';
import type { Pose, Vec3 } from '../geometry/types';
import { perShape } from '../mass/perShape';
import type { PanelShape } from '../mass/shapes';
import { panelSectionAt, panelSections } from '../mass/solids/panel';

/** A panel of a flying surface where it stands; mirrored in the plane of symmetry after it is posed. */
export interface PosedPanel {
  readonly shape: PanelShape;
  readonly pose: Pose;
  readonly mirrored: boolean;
}

const sections = perShape((shape) => panelSections(shape as PanelShape));

/** Stretches of a panel that does not run straight, each taken as the hull of its two ends. */
const warpedStretches = 4;

/** A panel's corners as convex stretches along the span, in its own frame, mm. A warped one comes out a hair too thick. */
export const panelStretches = perShape((shape): readonly (readonly Vec3[])[] => {
  const panel = shape as PanelShape;
  const { root, tip } = sections(panel);
  const flat = panel.rootThickness === panel.tipThickness && panel.rootTwistDeg === panel.tipTwistDeg;
  const cuts = flat ? 1 : warpedStretches;
  const ring = (k: number) =>
    panelSectionAt(root, tip, k / cuts).map(([x, z]): Vec3 => [x, (panel.spanMm * k) / cuts, z]);
  return Array.from({ length: cuts }, (_, k) => [...ring(k), ...ring(k + 1)]);
});

/** A point as the panel's own frame sees it, mm. */
export const pointFromPanel = ({ pose, mirrored }: PosedPanel, [x, y, z]: Vec3): Vec3 =>
  pointFromAircraft(pose, [x, mirrored ? -y : y, z]);

/**
 * How far a point lies out of a panel, mm: 0 within it or on its skin. Measured in the section's own plane and
 * along the span, so on a strongly tapered panel a little too much, never too little.
 */
export function outOfPanel(panel: PosedPanel, pointMm: Vec3): number {
  const [x, y, z] = pointFromPanel(panel, pointMm);
  const { spanMm } = panel.shape;
  const at = Math.min(1, Math.max(0, y / spanMm));
  const { root, tip } = sections(panel.shape);
  const beyond = y - at * spanMm;
  const beside = outOfSection(panelSectionAt(root, tip, at), x, z);
  return Math.hypot(beyond, beside);
}

/** Distance of a point to a convex section counterclockwise about +y (clockwise from x to z), mm; 0 within. */
function outOfSection(outline: readonly Corner[], x: number, z: number): number {
  let least = Number.POSITIVE_INFINITY;
  let inside = true;
  for (let i = 0; i < outline.length; i += 1) {
    const [ax, az] = outline[i]!;
    const [bx, bz] = outline[(i + 1) % outline.length]!;
    const [ux, uz] = [bx - ax, bz - az];
    const [px, pz] = [x - ax, z - az];
    if (ux * pz - uz * px > 0) inside = false;
    const along = Math.min(1, Math.max(0, (px * ux + pz * uz) / (ux * ux + uz * uz || 1)));
    least = Math.min(least, Math.hypot(px - along * ux, pz - along * uz));
  }
  return inside ? 0 : least;
}

/** The outward normals of a panel's skin at its root, in its own frame: enough ways to find what pokes through it. */
export const panelNormals = perShape((shape): readonly Vec3[] => {
  const { root } = sections(shape);
  return root.map(([ax, az], i): Vec3 => {
    const [bx, bz] = root[(i + 1) % root.length]!;
    const size = Math.hypot(bx - ax, bz - az) || 1;
    return [-(bz - az) / size, 0, (bx - ax) / size];
  });
});
