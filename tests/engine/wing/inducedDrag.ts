import type { Lattice } from '../../../src/engine/wing/lattice';

/** One strip's trace in the Trefftz plane: strength Γ/V and the ends of the trace, mm. */
interface Trace {
  strengthMm: number;
  y1: number;
  z1: number;
  y2: number;
  z2: number;
  /** Where the wash is taken, 0 … 1 along the trace. */
  share: number;
}

/**
 * Drag area CDi·S (mm²) that the wakes far downstream stand for, for circulations Γ/V in mm, both halves.
 * With wakes along x it does not depend on where along x the surfaces are (Munk's stagger theorem).
 * Span efficiency is CL²/(π·AR·CDi): at most 1 for a planar wing, 1 when the loading is elliptic.
 * Source: Trefftz-plane integral, Katz & Plotkin, Low-Speed Aerodynamics, sec. 8.2 (from memory).
 */
export function inducedDragAreaMm2(lattice: Lattice, circulationsMm: Float64Array): number {
  const traces = wakeTraces(lattice, circulationsMm);
  let sum = 0;
  for (const { strengthMm, y1, z1, y2, z2, share } of traces) {
    const y = y1 + share * (y2 - y1);
    const z = z1 + share * (z2 - z1);
    let across = 0;
    for (const trace of traces) {
      across +=
        trace.strengthMm *
        (washOf(trace, y, z, y2 - y1, z2 - z1, 1) + washOf(trace, y, z, y2 - y1, z2 - z1, -1));
    }
    sum -= strengthMm * across;
  }
  return 2 * sum;
}

/** Velocity square to (dy, dz) times its length, at (y, z), of a unit trace; `side` −1 takes its image. */
function washOf(trace: Trace, y: number, z: number, dy: number, dz: number, side: 1 | -1): number {
  const leg = (legY: number, legZ: number) => {
    const ry = y - side * legY;
    const rz = z - legZ;
    // a leg aft along +x turns y into z: (v_y, v_z) = (−r_z, r_y)/(2π r²), square to the trace v_z·dy − v_y·dz
    return (ry * dy + rz * dz) / (2 * Math.PI * (ry * ry + rz * rz));
  };
  return side * (leg(trace.y2, trace.z2) - leg(trace.y1, trace.z1));
}

function wakeTraces(lattice: Lattice, circulationsMm: Float64Array): Trace[] {
  const at = (index: number) => lattice.nodes[index] as number;
  return lattice.patches.flatMap(({ rows, strips, firstHorseshoe, firstNode, controlShares }) =>
    Array.from({ length: strips }, (_, strip) => {
      const node = 3 * (firstNode + strip);
      let strengthMm = 0;
      for (let row = 0; row < rows; row++) {
        strengthMm += circulationsMm[firstHorseshoe + row * strips + strip] as number;
      }
      return {
        strengthMm,
        y1: at(node + 1),
        z1: at(node + 2),
        y2: at(node + 4),
        z2: at(node + 5),
        share: controlShares[strip] as number,
      };
    }),
  );
}
