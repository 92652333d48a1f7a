import type { FlowStretch, FuselageStation } from './fuselage';
import { inducedVelocity } from './influence';
import type { Lattice, Patch } from './lattice';
import type { Circulations } from './latticeSolution';
import { fade } from './seamWeight';

/** Places at which the flow is asked for between the edges of two roots. */
const SAMPLES = 12;
/** Core of the vortices as felt on the axis, as a share of the root chord: no trailing leg is near, so a fine one. */
const CORE = 0.02;
/** Height of a root over the axis, in half heights of the body, up to which it turns the flow there, and from which it does not. */
const ON_BODY = 1.25;
const OFF_BODY = 2.5;

/**
 * The flow that meets the fuselage along its axis, per unit alpha, after Multhopp, NACA TM 1036, 1942 (from
 * memory). Ahead of a wing it is above 1 by the wing's upwash, along the root chord 0 because the wing turns
 * the flow its own way, and behind it rises linearly to 1 less the downwash at the rear end. Upwash and
 * downwash are those of all surfaces, by the lattice, in place of his curves. Where several surfaces cross
 * the plane of symmetry each has its say behind it by its share of the lift; one that stands clear above or
 * below the body only has its upwash and downwash.
 */
export function fuselageFlow(
  stations: readonly FuselageStation[],
  { lattice, perRadianMm }: Circulations,
): FlowStretch[] {
  const [nose, tail] = [stations[0], stations.at(-1)];
  if (nose === undefined || tail === undefined || !(tail.stationMm > nose.stationMm)) return [];
  const roots = crossingRoots(lattice, perRadianMm, stations);
  const coreMm = CORE * Math.max(0, ...roots.map(({ leadingMm, trailingMm }) => trailingMm - leadingMm));
  const inside = (mm: number) => Math.min(tail.stationMm, Math.max(nose.stationMm, mm));
  const breaks = [
    nose.stationMm,
    ...roots.flatMap(({ leadingMm, trailingMm }) => [inside(leadingMm), inside(trailingMm)]),
    tail.stationMm,
  ].sort((a, b) => a - b);
  return breaks.slice(1).flatMap((toMm, k) => {
    const fromMm = breaks[k] as number;
    if (!(toMm > fromMm)) return [];
    const stepMm = (toMm - fromMm) / SAMPLES;
    return Array.from({ length: SAMPLES }, (_, cell) => {
      const stationMm = fromMm + (cell + 0.5) * stepMm;
      const part = regained(roots, stationMm, tail.stationMm);
      const point = [stationMm, 0, axisAt(stations, stationMm).waterlineMm] as const;
      const upwash = part > 0 ? inducedVelocity(lattice, perRadianMm, point, coreMm || undefined)[2] : 0;
      const factor = (1 + upwash) * part;
      return {
        fromMm: fromMm + cell * stepMm,
        toMm: fromMm + (cell + 1) * stepMm,
        fromFactor: factor,
        toFactor: factor,
      };
    });
  });
}

interface Root {
  readonly leadingMm: number;
  readonly trailingMm: number;
  /** How far it lies on the body rather than clear of it, 0 … 1. */
  readonly onBody: number;
  /** Of the lift of all such chains, 0 … 1, as far as it lies on the body. */
  readonly share: number;
}

/** The chord lines at which chains start in the plane of symmetry. */
function crossingRoots(
  lattice: Lattice,
  perRadianMm: Float64Array,
  stations: readonly FuselageStation[],
): Root[] {
  const crossing = lattice.patches.filter(
    ({ firstNode }) => (lattice.nodes[3 * firstNode + 1] as number) === 0,
  );
  const lifts = crossing.map((patch) => Math.max(0, liftOf(lattice, patch, perRadianMm)));
  const total = lifts.reduce((sum, lift) => sum + lift, 0);
  if (!(total > 0)) return [];
  return crossing.map(({ firstNode, startMm, startChordMm }, k) => {
    const { waterlineMm, halfHeightMm } = axisAt(stations, startMm + startChordMm / 2);
    const aboveMm = Math.abs((lattice.nodes[3 * firstNode + 2] as number) - waterlineMm);
    const onBody = halfHeightMm > 0 ? fade(aboveMm / halfHeightMm, ON_BODY, OFF_BODY) : 0;
    const share = (onBody * (lifts[k] as number)) / total;
    return { leadingMm: startMm, trailingMm: startMm + startChordMm, onBody, share };
  });
}

function liftOf({ nodes }: Lattice, patch: Patch, perRadianMm: Float64Array): number {
  let lift = 0;
  for (let strip = 0; strip < patch.strips; strip++) {
    const node = 3 * (patch.firstNode + strip) + 1;
    const width = (nodes[node + 3] as number) - (nodes[node] as number);
    for (let row = 0; row < patch.rows; row++) {
      lift += width * (perRadianMm[patch.firstHorseshoe + row * patch.strips + strip] as number);
    }
  }
  return lift;
}

/** None of the flow along a root's chord; behind it Multhopp's straight line to all of it at the rear end. */
function regained(roots: readonly Root[], stationMm: number, rearMm: number): number {
  let kept = 1;
  let behind = 1;
  for (const { leadingMm, trailingMm, onBody, share } of roots) {
    if (stationMm <= leadingMm) continue;
    if (stationMm < trailingMm) kept *= 1 - onBody;
    else behind -= (share * (rearMm - stationMm)) / (rearMm - trailingMm);
  }
  return kept * behind;
}

/** The fuselage's axis at a station, linear between its sections; at its ends beyond them. */
function axisAt(
  stations: readonly FuselageStation[],
  stationMm: number,
): { waterlineMm: number; halfHeightMm: number } {
  const next = Math.max(
    1,
    stations.findIndex((rear) => rear.stationMm >= stationMm),
  );
  const rear = stationMm > (stations.at(-1)?.stationMm ?? 0) ? stations.at(-1) : stations[next];
  const front = stations[next - 1] ?? rear;
  const bay = (rear?.stationMm ?? 0) - (front?.stationMm ?? 0);
  const share = bay > 0 ? Math.min(1, Math.max(0, (stationMm - (front?.stationMm ?? 0)) / bay)) : 1;
  const at = (of: (section: FuselageStation) => number) =>
    front && rear ? of(front) + (of(rear) - of(front)) * share : 0;
  return {
    waterlineMm: at(({ waterlineMm }) => waterlineMm ?? 0),
    halfHeightMm: at(({ heightMm, widthMm }) => heightMm ?? widthMm) / 2,
  };
}
