import { type Linear, polynomialRoots } from './polynomialRoots';

/** Below this the cut passes through the section within a millionth of the piece; its ends are then linear in u. */
const ABRUPT = 1e-6;

/**
 * Where along a loft piece (u = 0…1) the cut through its section changes kind: the waterline touches the section, or
 * passes a point at which a straight edge and a corner arc meet. `eta` is the waterline's height above the section's
 * centre, along down; `sizeY` and `sizeZ` are the section's half sizes as seen along down; `round` its roundness.
 */
export function waterlineBreaks(eta: Linear, sizeY: Linear, sizeZ: Linear, round: Linear): number[] {
  const crossing = -eta[0] / eta[1];
  const y = sizeY[0] + crossing * sizeY[1];
  const z = sizeZ[0] + crossing * sizeZ[1];
  if (Math.abs(y) + Math.abs(z) < ABRUPT * Math.abs(eta[1])) {
    const r = round[0] + crossing * round[1];
    const half = ((1 - r) * (y + z) + r * Math.hypot(y, z)) / Math.abs(eta[1]);
    return [crossing - half, crossing, crossing + half];
  }
  if (round[0] === 1 && round[1] === 0) return touches(eta, [0], squares(sizeY, sizeZ));
  if (round[0] === 0 && round[1] === 0) return passes(eta, sizeY, sizeZ);
  const square: Linear = [1 - round[0], -round[1]];
  const straight = product(square, sum(sizeY, sizeZ));
  const curved = product(product(round, round), squares(sizeY, sizeZ));
  return [
    ...touches(eta, straight, curved),
    ...touches(eta, scaled(straight, -1), curved),
    ...passes(eta, sizeY, product(square, sizeZ)),
    ...passes(eta, product(square, sizeY), sizeZ),
  ];
}

/** Where (η − straight)² = curved: the section reaches `straight` plus the root of `curved` to either side. */
function touches(eta: Linear, straight: readonly number[], curved: readonly number[]): number[] {
  const rest = sum(eta, scaled(straight, -1));
  return polynomialRoots(sum(product(rest, rest), scaled(curved, -1)), 0, 1);
}

/** Where the waterline passes the corners of a rectangle of these half sizes. */
function passes(eta: Linear, y: readonly number[], z: readonly number[]): number[] {
  return [sum(y, z), sum(y, scaled(z, -1))].flatMap((corner) => [
    ...polynomialRoots(sum(eta, corner), 0, 1),
    ...polynomialRoots(sum(eta, scaled(corner, -1)), 0, 1),
  ]);
}

const squares = (y: Linear, z: Linear): number[] => sum(product(y, y), product(z, z));

function product(p: readonly number[], q: readonly number[]): number[] {
  const out = new Array<number>(p.length + q.length - 1).fill(0);
  for (let i = 0; i < p.length; i++) for (let j = 0; j < q.length; j++) out[i + j]! += p[i]! * q[j]!;
  return out;
}

function sum(p: readonly number[], q: readonly number[]): number[] {
  const out = p.length >= q.length ? [...p] : [...q];
  const shorter = p.length >= q.length ? q : p;
  for (let k = 0; k < shorter.length; k++) out[k]! += shorter[k]!;
  return out;
}

const scaled = (p: readonly number[], factor: number): number[] => p.map((c) => factor * c);
