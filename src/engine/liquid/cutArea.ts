import { roundedArea } from '../mass/roundedRectangle';
import { type SectionMoments, segmentArea } from './sectionCut';

/**
 * Writes area and chord, and nothing else, of the part of the unit section (see sectionCut.ts) with n · p ≥ delta,
 * n = (ny, nz) a unit vector, for a waterline that crosses it.
 */
export function cutArea(roundness: number, ny: number, nz: number, delta: number, out: SectionMoments): void {
  if (roundness === 1) {
    const c = Math.min(Math.max(delta, -1), 1);
    const s = Math.sqrt((1 - c) * (1 + c));
    out.area = segmentArea(Math.atan2(s, c));
    out.chord = 2 * s;
    return;
  }
  // The section is its own mirror image four ways, so the normal may be turned into the first quadrant and the
  // smaller part taken. Split where it is deepest, its two halves are the same sum with y and z exchanged.
  const a = Math.abs(ny);
  const b = Math.abs(nz);
  const d = Math.abs(delta);
  out.area = 0;
  out.chord = 0;
  addHalf(roundness, a, b, d, out);
  addHalf(roundness, b, a, d, out);
  out.chord = Math.max(0, out.chord);
  if (delta < 0) out.area = roundedArea(roundness) - out.area;
}

/**
 * Adds ½∫(p − q) × dp along the edge of the section, anticlockwise from its deepest point to the waterline
 * a y + b z = d (a, b, d ≥ 0), with q the waterline's point nearest the centre; and how far from q that end is.
 */
function addHalf(r: number, a: number, b: number, d: number, out: SectionMoments): void {
  const inner = 1 - r;
  const qy = d * a;
  const qz = d * b;
  let twice = 0;

  // The arc about (inner, inner), from the direction of the normal to that of z.
  if (a * inner + b < d) {
    endOnArc({ radius: r, y: inner, z: inner }, { a, b, d }, { y: a, z: b, twice: 0 }, out);
    return;
  }
  twice += r * ((inner - qy) * (1 - b) + (inner - qz) * a) + r * r * Math.atan2(a, b);

  // The edge z = 1, run towards −y.
  if (b - a * inner < d) {
    const y = Math.min(Math.max((d - b) / a, -inner), inner);
    out.area += (twice + (1 - qz) * (inner - y)) / 2;
    out.chord += a - b * y;
    return;
  }
  twice += (1 - qz) * 2 * inner;

  // The arc about (−inner, inner), from z to −y.
  if (b * inner - a < d) {
    endOnArc({ radius: r, y: -inner, z: inner }, { a, b, d }, { y: 0, z: 1, twice }, out);
    return;
  }
  twice += r * ((-inner - qy) * -1 + (inner - qz)) + (r * r * Math.PI) / 2;

  // The edge y = −1, run towards −z; the waterline is above the middle, so it ends here.
  const z = Math.min((d + a) / b, inner);
  out.area += (twice + (1 + qy) * (inner - z)) / 2;
  out.chord += b + a * z;
}

interface Arc {
  readonly radius: number;
  /** Its centre. */
  readonly y: number;
  readonly z: number;
}

/** a y + b z = d, (a, b) a unit vector. */
interface Waterline {
  readonly a: number;
  readonly b: number;
  readonly d: number;
}

/** Where a walk stands: the direction from the arc's centre, and twice the area summed up to there. */
interface Walked {
  readonly y: number;
  readonly z: number;
  readonly twice: number;
}

/** Ends the walk where the waterline meets the arc. */
function endOnArc(
  { radius: r, y: cy, z: cz }: Arc,
  { a, b, d }: Waterline,
  from: Walked,
  out: SectionMoments,
): void {
  // `cos` along the normal, `sin` across it.
  const cos = Math.min(Math.max((d - a * cy - b * cz) / r, -1), 1);
  const sin = Math.sqrt((1 - cos) * (1 + cos));
  const ey = a * cos - b * sin;
  const ez = b * cos + a * sin;
  const turned = Math.atan2(from.y * ez - from.z * ey, from.y * ey + from.z * ez);
  const swept = r * ((cy - d * a) * (ez - from.z) - (cz - d * b) * (ey - from.y)) + r * r * turned;
  out.area += (from.twice + swept) / 2;
  out.chord += a * (cz + r * ez) - b * (cy + r * ey);
}
