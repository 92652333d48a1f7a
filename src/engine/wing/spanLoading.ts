import type { Circulations } from './latticeSolution';

/** The loading of one strip of a right half; the left half carries the same. */
export interface StripLoad {
  readonly surfaceId: string;
  /** On the strip's foremost bound leg, at its control line; aircraft frame, mm. */
  readonly buttlineMm: number;
  readonly waterlineMm: number;
  /** Chord on the control line. */
  readonly chordMm: number;
  /** Local lift coefficient, square to the surface, at zero alpha and its slope per rad. */
  readonly clAtZero: number;
  readonly clPerRad: number;
  /** cl·c over the reference mean chord. */
  readonly loadAtZero: number;
  readonly loadPerRad: number;
}

/** Spanwise loading, chain by chain, from start to end: local cl = 2·ΣΓ/(V·c) over the strip's rows. */
export function spanLoading(
  { lattice, atZeroMm, perRadianMm }: Circulations,
  surfaceIds: readonly string[],
  meanChordMm: number,
): StripLoad[] {
  return lattice.patches.flatMap(
    ({ surfaces, along, rows, strips, firstHorseshoe, firstNode, chordsMm, controlShares }) =>
      chordsMm.map((chordMm, strip) => {
        const side = along[strip] as number;
        let zero = 0;
        let slope = 0;
        for (let row = 0; row < rows; row++) {
          zero += 2 * side * (atZeroMm[firstHorseshoe + row * strips + strip] as number);
          slope += 2 * side * (perRadianMm[firstHorseshoe + row * strips + strip] as number);
        }
        const node = 3 * (firstNode + strip);
        const onLine = (axis: 1 | 2) => {
          const inner = lattice.nodes[node + axis] as number;
          return (
            inner + (controlShares[strip] as number) * ((lattice.nodes[node + 3 + axis] as number) - inner)
          );
        };
        return {
          surfaceId: surfaceIds[surfaces[strip] as number] ?? '',
          buttlineMm: onLine(1),
          waterlineMm: onLine(2),
          chordMm,
          clAtZero: zero / chordMm,
          clPerRad: slope / chordMm,
          loadAtZero: zero / meanChordMm,
          loadPerRad: slope / meanChordMm,
        };
      }),
  );
}
