import type { Vec3 } from '../../engine/geometry/types';
import { sub } from '../../engine/geometry/vec3';
import { shapeBounds } from '../../engine/mass/shapeBounds';
import type { LoftSection } from '../../engine/mass/shapes';
import { meshHolds } from '../../engine/mesh/meshHolds';
import type { Extent } from '../airframe/extent';
import { type Piece, pieces } from '../airframe/pieces';
import type { Aircraft } from '../document/types';

/** Skin and a little air, mm, where the hull does not say. */
const WALL_MM = 2;
/** The hull is looked at every so many mm. */
const STEP_MM = 1;

/** A straight way along x that a box can take, mm: the stations of its front and of its rear. */
export interface Rail {
  readonly frontMm: number;
  readonly rearMm: number;
}

/**
 * How far forward and aft a box can slide from where it is, inside a hull, without leaving it; null when it is not inside
 * one. Its four edges along x are held against the sections, linear between them, or against the hull's own mesh.
 */
export function hullRail(aircraft: Aircraft, { minMm, maxMm }: Extent): Rail | null {
  for (const piece of pieces(aircraft)) {
    const hull = piece.kind === 'hull' ? insideOf(piece) : null;
    if (!hull) continue;
    const { noseMm, tailMm, holds } = hull;
    const inside = (stationMm: number) =>
      [minMm[1], maxMm[1]].every((y) => [minMm[2], maxMm[2]].every((z) => holds([stationMm, y, z])));
    let [frontMm, rearMm] = [minMm[0], maxMm[0]];
    let sound = frontMm >= noseMm && rearMm <= tailMm;
    for (let at = frontMm; sound && at <= rearMm; at += STEP_MM) sound = inside(at);
    if (!sound || !inside(rearMm)) continue;
    while (frontMm - STEP_MM >= noseMm && inside(frontMm - STEP_MM)) frontMm -= STEP_MM;
    while (rearMm + STEP_MM <= tailMm && inside(rearMm + STEP_MM)) rearMm += STEP_MM;
    return { frontMm, rearMm };
  }
  return null;
}

interface Inside {
  readonly noseMm: number;
  readonly tailMm: number;
  /** Whether a point of the aircraft lies within, a wall's thickness in. */
  readonly holds: (pointMm: Vec3) => boolean;
}

function insideOf({ shape, pose }: Piece): Inside | null {
  const toHull = (p: Vec3): Vec3 => sub(p, pose.positionMm);
  const [at] = pose.positionMm;
  if (shape.kind === 'mesh') {
    const { minMm, maxMm } = shapeBounds(shape);
    const beside = [-WALL_MM, WALL_MM];
    const holds = (p: Vec3) => {
      const [x, y, z] = toHull(p);
      return beside.every((dy) => beside.every((dz) => meshHolds(shape, [x, y + dy, z + dz])));
    };
    return { noseMm: at + minMm[0], tailMm: at + maxMm[0], holds };
  }
  if (shape.kind !== 'loft') return null;
  const { sections } = shape;
  const [noseMm, tailMm] = [at + (sections[0]?.xMm ?? 0), at + (sections.at(-1)?.xMm ?? 0)];
  return { noseMm, tailMm, holds: (p) => insideSection(sections, ...toHull(p)) };
}

/** Whether a point lies inside the rounded rectangle that the hull is at a station, a wall's thickness in. */
function insideSection(sections: readonly LoftSection[], x: number, y: number, z: number): boolean {
  const next = sections.findIndex(({ xMm }) => xMm >= x);
  const [a, b] = [sections[Math.max(0, next - 1)], sections[next]];
  if (!a || !b) return false;
  const share = b.xMm > a.xMm ? (x - a.xMm) / (b.xMm - a.xMm) : 0;
  const between = (key: 'widthMm' | 'heightMm' | 'centreYMm' | 'centreZMm' | 'roundness') =>
    a[key] + share * (b[key] - a[key]);
  const u = Math.abs(y - between('centreYMm')) / (between('widthMm') / 2 - WALL_MM);
  const v = Math.abs(z - between('centreZMm')) / (between('heightMm') / 2 - WALL_MM);
  if (!(u >= 0 && u <= 1 && v >= 0 && v <= 1)) return false;
  const round = between('roundness');
  const [p, q] = [u - (1 - round), v - (1 - round)];
  return p <= 0 || q <= 0 || p * p + q * q <= round * round;
}
