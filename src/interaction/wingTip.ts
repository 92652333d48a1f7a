import { cosDeg } from '../engine/geometry/angle';
import { pointToAircraft } from '../engine/geometry/rotation';
import type { Vec3 } from '../engine/geometry/types';
import { surfacePose } from '../model/airframe/poses';
import type { Surface } from '../model/document/types';

/** The chord at a wing tip, by which it is dragged; aircraft frame, mm. */
export interface TipChord {
  readonly surfaceId: string;
  readonly frontMm: Vec3;
  readonly rearMm: Vec3;
}

/** The tip chords of a surface, right before left, before twist. */
export function tipChords(surface: Surface): readonly TipChord[] {
  const { id, panels, sides } = surface;
  let [x, y, z] = [0, 0, 0];
  for (const { sweepMm, spanMm, dihedralDeg } of panels) {
    x += sweepMm;
    y += spanMm;
    z += spanMm * Math.tan((dihedralDeg * Math.PI) / 180);
  }
  const pose = surfacePose(surface);
  const frontMm = pointToAircraft(pose, [x, y, z]);
  const rearMm = pointToAircraft(pose, [x + (panels.at(-1)?.tipChordMm ?? 0), y, z]);
  const right = { surfaceId: id, frontMm, rearMm };
  return sides === 'both'
    ? [right, { surfaceId: id, frontMm: mirrored(frontMm), rearMm: mirrored(rearMm) }]
    : [right];
}

const mirrored = ([x, y, z]: Vec3): Vec3 => [x, -y, z];

/** Shorter than this share of the half span, a panel at the tip is its rounding and goes along. */
const CAP_SHARE = 0.1;

/** The panel that gives way when the tip is dragged: the outermost one that is more than the tip's rounding. */
export function sweepingPanel({ panels }: Surface): number {
  const halfSpanMm = panels.reduce((sum, { spanMm }) => sum + spanMm, 0);
  return panels.findLastIndex(({ spanMm }) => spanMm >= CAP_SHARE * halfSpanMm);
}

/** No panel is swept farther than this, forward or aft, in spans of its own: 70°. */
const MOST_SWEEP = Math.tan((70 * Math.PI) / 180);

export const mostSweepMm = (spanMm: number): number => MOST_SWEEP * spanMm;

/**
 * The surface with its tip dragged aft (forward is negative) by changing the sweep of one panel, which
 * comes to whole steps of `stepMm`.
 */
export function sweepTip(surface: Surface, aftMm: number, stepMm: number): Surface {
  const index = sweepingPanel(surface);
  const panel = surface.panels[index];
  if (!panel) return surface;
  const mostMm = mostSweepMm(panel.spanMm);
  const wantedMm = panel.sweepMm + aftMm / cosDeg(surface.incidenceDeg);
  const steppedMm = Math.round(wantedMm / stepMm) * stepMm;
  const sweepMm = Math.min(mostMm, Math.max(-mostMm, steppedMm));
  return { ...surface, panels: surface.panels.with(index, { ...panel, sweepMm }) };
}

/** How far a place lies from a straight line between two others, px. */
export function distanceToLine(
  [x, y]: readonly [number, number],
  [ax, ay]: readonly [number, number],
  [bx, by]: readonly [number, number],
): number {
  const [dx, dy] = [bx - ax, by - ay];
  const length2 = dx * dx + dy * dy;
  const t = length2 > 0 ? Math.min(1, Math.max(0, ((x - ax) * dx + (y - ay) * dy) / length2)) : 0;
  return Math.hypot(x - ax - t * dx, y - ay - t * dy);
}
