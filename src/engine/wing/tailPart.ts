import type { Circulations } from './latticeSolution';

/**
 * How far the surfaces behind a station hold the neutral point aft, mm: their share of the lift times their
 * arm from it. The chain of the main wing is not among them.
 */
export function tailPartMm(
  { lattice, perRadianMm }: Circulations,
  mainSurfaceIndex: number,
  stationMm: number,
): number {
  let lift = 0;
  let moment = 0;
  for (const { surfaces, rows, strips, firstHorseshoe, firstNode } of lattice.patches) {
    let ofPatch = 0;
    for (let row = 0; row < rows; row++) {
      for (let strip = 0; strip < strips; strip++) {
        const node = 3 * (firstNode + row * (strips + 1) + strip);
        const width = (lattice.nodes[node + 4] as number) - (lattice.nodes[node + 1] as number);
        const ofLeg = width * (perRadianMm[firstHorseshoe + row * strips + strip] as number);
        const middle = ((lattice.nodes[node] as number) + (lattice.nodes[node + 3] as number)) / 2;
        lift += ofLeg;
        ofPatch += ofLeg * (middle - stationMm);
      }
    }
    if (!surfaces.includes(mainSurfaceIndex)) moment += Math.max(0, ofPatch);
  }
  return lift > 0 ? moment / lift : 0;
}
