import { pointFromAircraft, pointToAircraft } from '../geometry/rotation';
import type { Vec3 } from '../geometry/types';
import { stepsUp } from '../geometry/wholeSteps';
import type { LoftSection } from '../mass/shapes';
import { sectionBetween } from '../mass/solids/loft';
import type { HullShape } from './hull';

/** A section's inner outline about its own centre: half sizes, and semi-axes of its quarter-ellipse corners, mm. */
interface InnerFace {
  readonly centre: readonly [yMm: number, zMm: number];
  readonly half: readonly [aMm: number, bMm: number];
  readonly corner: readonly [aMm: number, bMm: number];
}

type Flat = readonly [number, number];

export interface WallSteps {
  /** The longest stretch along the hull without a point, mm. */
  readonly stepMm?: number;
  /** The widest turn round the section without a point, degrees. */
  readonly stepDeg?: number;
}

/** Nearer to a centre line, or to another choice, than this counts as on it, mm. */
const sameMm = 1e-6;

/**
 * The way from one point to another along the hull's inner face, aircraft frame, mm: each end goes square
 * to the hull's axis to the nearest point of the face; between those the way runs through the hull's own
 * sections and evenly spaced stations, its angle about the section's centre growing evenly along the hull,
 * the shorter way round. The first and last points are the ends, the second and last but one their feet.
 * The skin is measured in the section. Null when an end is not between the first section and the last, or
 * the hull has no room within its skin on the way.
 */
export function wallPath(
  { shape: { sections }, pose, skinMm }: HullShape,
  fromMm: Vec3,
  toMm: Vec3,
  { stepMm = 20, stepDeg = 5 }: WallSteps = {},
): Vec3[] | null {
  const [from, to] = [pointFromAircraft(pose, fromMm), pointFromAircraft(pose, toMm)];
  const faceAt = (x: number) => innerFace(sections, x, skinMm);
  const [first, last] = [faceAt(from[0]), faceAt(to[0])];
  if (!first || !last) return null;
  const start = nearestAngle(first, [from[1], from[2]]);
  const round = wrapped(nearestAngle(last, [to[1], to[2]]) - start);
  const alongMm = to[0] - from[0];
  const sectionsAt = sections.map(({ xMm }) => (xMm - from[0]) / alongMm).filter((t) => t > 0 && t < 1);
  const shares = [0, ...sectionsAt.sort((p, q) => p - q), 1];
  const way: Vec3[] = [];
  for (const t of spaced(shares, Math.abs(alongMm) / stepMm, Math.abs(round) / ((stepDeg * Math.PI) / 180))) {
    const x = from[0] + alongMm * t;
    const face = t === 1 ? last : faceAt(x);
    if (!face) return null;
    way.push(pointToAircraft(pose, [x, ...onFace(face, start + round * t)]));
  }
  return [fromMm, ...way, toMm];
}

/** The shares of the way, with even ones put between where they stand too far apart. */
function spaced(shares: readonly number[], stepsAlong: number, stepsRound: number): number[] {
  return shares.flatMap((t, i) => {
    if (i === 0) return [t];
    const before = shares[i - 1]!;
    const count = Math.max(1, stepsUp((t - before) * Math.max(stepsAlong, stepsRound)));
    return Array.from({ length: count }, (_, k) =>
      k === count - 1 ? t : before + ((t - before) * (k + 1)) / count,
    );
  });
}

function innerFace(sections: readonly LoftSection[], x: number, skinMm: number): InnerFace | null {
  const at = sections.findIndex(({ xMm }) => xMm >= x);
  const to = sections[at];
  const from = sections[Math.max(0, at - 1)];
  if (!from || !to || x < from.xMm) return null;
  const stretch = to.xMm - from.xMm;
  const { widthMm, heightMm, roundness, centreYMm, centreZMm } = sectionBetween(
    from,
    to,
    stretch > 0 ? (x - from.xMm) / stretch : 0,
  );
  const inner = (sizeMm: number) => sizeMm / 2 - skinMm;
  const half = [inner(widthMm), inner(heightMm)] as const;
  if (Math.min(...half) <= 0) return null;
  const rounded = (sizeMm: number) => Math.max(0, (roundness * sizeMm) / 2 - skinMm);
  return { centre: [centreYMm, centreZMm], half, corner: [rounded(widthMm), rounded(heightMm)] };
}

/** The angle, radians from +y towards +z, at which the face is nearest to a point of its plane. */
function nearestAngle({ centre, half: [a, b], corner: [ra, rb] }: InnerFace, point: Flat): number {
  const [y, z] = [point[0] - centre[0], point[1] - centre[1]].map((v) => (Math.abs(v) < sameMm ? 0 : v)) as [
    number,
    number,
  ];
  const [u, v] = [Math.abs(y), Math.abs(z)];
  const t = nearestOnEllipse([ra, rb], [u - (a - ra), v - (b - rb)]);
  const feet: readonly Flat[] = [
    [a, Math.min(v, b - rb)],
    [Math.min(u, a - ra), b],
    [a - ra + ra * Math.cos(t), b - rb + rb * Math.sin(t)],
  ];
  const far = (foot: Flat) => Math.hypot(foot[0] - u, foot[1] - v);
  const foot = feet.reduce((best, next) => (far(next) < far(best) - sameMm ? next : best));
  return Math.atan2(z < 0 ? -foot[1] : foot[1], y < 0 ? -foot[0] : foot[0]);
}

/**
 * The parameter of the point of a quarter ellipse that is nearest to a point of its plane, its ends left to what adjoins
 * them. From within the quadrant the squared distance falls along the quarter and then rises, so halving finds where its
 * slope turns; from below it rises first, and from the left it falls once more at last, up to or from the steepest place,
 * where tan³ t = |rb·q / (ra·p)|.
 */
function nearestOnEllipse([ra, rb]: Flat, [p, q]: Flat): number {
  const steepest = Math.atan2(Math.cbrt(Math.abs(rb * q)), Math.cbrt(Math.abs(ra * p)));
  let [low, high] = [q < 0 ? steepest : 0, p < 0 ? steepest : Math.PI / 2];
  for (let i = 0; i < 52; i += 1) {
    const t = (low + high) / 2;
    const [c, s] = [Math.cos(t), Math.sin(t)];
    if ((rb * rb - ra * ra) * s * c + ra * p * s - rb * q * c < 0) low = t;
    else high = t;
  }
  return (low + high) / 2;
}

/** Where a ray from the section's centre meets the face. */
function onFace({ centre, half: [a, b], corner: [ra, rb] }: InnerFace, angle: number): [number, number] {
  const [c, s] = [Math.cos(angle), Math.sin(angle)];
  const [cu, cv] = [Math.abs(c), Math.abs(s)];
  let reach = Math.min(a / cu, b / cv);
  const [mu, mv] = [a - ra, b - rb];
  if (ra > 0 && rb > 0 && reach * cu > mu && reach * cv > mv) {
    // ((k cu − mu)/ra)² + ((k cv − mv)/rb)² = 1, the further k.
    const square = (cu / ra) ** 2 + (cv / rb) ** 2;
    const middle = (cu * mu) / ra ** 2 + (cv * mv) / rb ** 2;
    const rest = (mu / ra) ** 2 + (mv / rb) ** 2 - 1;
    reach = (middle + Math.sqrt(Math.max(0, middle * middle - square * rest))) / square;
  }
  return [centre[0] + reach * c, centre[1] + reach * s];
}

/** An angle within −π … π. */
const wrapped = (angle: number): number => angle - 2 * Math.PI * Math.round(angle / (2 * Math.PI));
