import type { Vec3 } from '../geometry/types';
import type { LoftSection } from '../mass/shapes';
import type { Linear } from './polynomialRoots';
import { waterlineBreaks } from './waterlineBreaks';

/** A section across x: a rounded rectangle, by its station, centre, half sizes (mm) and roundness. */
export interface Section {
  xMm: number;
  /** Change of x with the piece's parameter. */
  xPerU: number;
  centreY: number;
  centreZ: number;
  halfY: number;
  halfZ: number;
  roundness: number;
}

export function emptySectionPlace(): Section {
  return { xMm: 0, xPerU: 0, centreY: 0, centreZ: 0, halfY: 0, halfZ: 0, roundness: 1 };
}

/** A stretch of a vessel along x over which its section changes smoothly with a parameter u; x increases with u. */
export interface StackPiece {
  readonly fromU: number;
  readonly toU: number;
  /** Gauss points that integrate whole sections to the last digit. */
  readonly wholePoints: number;
  section(u: number, out: Section): void;
  /** The parameter of a station, mm, within the piece; else a value outside fromU…toU. */
  atStation(xMm: number): number;
  /** Where the free surface enters or leaves the section, or passes from its edges to its corner arcs. */
  breaks(down: Vec3, offsetMm: number): number[];
  /** Bounds on down · p over the stretch: [least, greatest]. */
  reach(down: Vec3): readonly [number, number];
}

/** Part of a ball about (centreMm, 0, 0); u is the latitude, from −π/2 at its front to π/2 at its rear. */
export function ballPiece(fromU: number, toU: number, centreMm: number, radiusMm: number): StackPiece {
  return {
    fromU,
    toU,
    wholePoints: 12,
    section(u, out) {
      const half = radiusMm * Math.cos(u);
      out.xMm = centreMm + radiusMm * Math.sin(u);
      out.xPerU = half;
      out.centreY = 0;
      out.centreZ = 0;
      out.halfY = half;
      out.halfZ = half;
      out.roundness = 1;
    },
    atStation(x) {
      const sine = (x - centreMm) / radiusMm;
      return Math.abs(sine) <= 1 ? Math.asin(sine) : sine * Math.PI;
    },
    breaks([dx, dy, dz], offset) {
      // On the great circle through x and down the plane is at latitude χ of down, and down at angle γ from x.
      const sine = (offset - dx * centreMm) / radiusMm;
      if (Math.abs(sine) >= 1) return [];
      const chi = Math.asin(sine);
      const gamma = Math.atan2(Math.hypot(dy, dz), dx);
      return [latitude(chi + gamma), latitude(chi - gamma)];
    },
    reach: ([dx]) => [dx * centreMm - radiusMm, dx * centreMm + radiusMm],
  };
}

/** The angle of the same sine between −π/2 and π/2. */
function latitude(angle: number): number {
  if (angle > Math.PI / 2) return Math.PI - angle;
  if (angle < -Math.PI / 2) return -Math.PI - angle;
  return angle;
}

/** Between two neighbouring sections of a loft; everything runs linearly with x, and u from 0 to 1. */
export function loftPiece(a: LoftSection, b: LoftSection): StackPiece {
  const length = b.xMm - a.xMm;
  const halfY: Linear = [a.widthMm / 2, (b.widthMm - a.widthMm) / 2];
  const halfZ: Linear = [a.heightMm / 2, (b.heightMm - a.heightMm) / 2];
  const centreY: Linear = [a.centreYMm, b.centreYMm - a.centreYMm];
  const centreZ: Linear = [a.centreZMm, b.centreZMm - a.centreZMm];
  const round: Linear = [a.roundness, b.roundness - a.roundness];

  return {
    fromU: 0,
    toU: 1,
    wholePoints: 5,
    section(u, out) {
      out.xMm = a.xMm + u * length;
      out.xPerU = length;
      out.centreY = centreY[0] + u * centreY[1];
      out.centreZ = centreZ[0] + u * centreZ[1];
      out.halfY = halfY[0] + u * halfY[1];
      out.halfZ = halfZ[0] + u * halfZ[1];
      out.roundness = round[0] + u * round[1];
    },
    atStation: (x) => (x - a.xMm) / length,
    breaks([dx, dy, dz], offset) {
      const eta: Linear = [
        offset - dx * a.xMm - dy * centreY[0] - dz * centreZ[0],
        -dx * length - dy * centreY[1] - dz * centreZ[1],
      ];
      const sizeY: Linear = [Math.abs(dy) * halfY[0], Math.abs(dy) * halfY[1]];
      const sizeZ: Linear = [Math.abs(dz) * halfZ[0], Math.abs(dz) * halfZ[1]];
      return waterlineBreaks(eta, sizeY, sizeZ, round);
    },
    reach([dx, dy, dz]) {
      const ends = [a, b].map((s) => {
        const middle = dx * s.xMm + dy * s.centreYMm + dz * s.centreZMm;
        const y = (Math.abs(dy) * s.widthMm) / 2;
        const z = (Math.abs(dz) * s.heightMm) / 2;
        // Roundness that changes can bulge in between, so there the bounding rectangle is taken.
        const r = round[1] === 0 ? s.roundness : 0;
        const out = (1 - r) * (y + z) + r * Math.hypot(y, z);
        return [middle - out, middle + out] as const;
      });
      return [Math.min(ends[0]![0], ends[1]![0]), Math.max(ends[0]![1], ends[1]![1])];
    },
  };
}
