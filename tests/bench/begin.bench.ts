import { LuDecomposition, Matrix } from 'ml-matrix';
import { arrangementIds } from '../../src/model/begin/arrangements';
import { type Beginning, beginAircraft } from '../../src/model/begin/beginAircraft';
import { type BenchRow, compare } from './measure';

const wishOf = (arrangement: Beginning['arrangement'], spanMm: number): Beginning => ({
  arrangement,
  typed: { spanMm },
  construction: 'balsa',
  motor: 'electric',
  massG: null,
  kit: null,
  band: null,
});

/** The unknowns of the lattice that a new aircraft's own neutral point takes, or more. */
const UNKNOWNS = 430;

/**
 * Ours makes a whole aircraft of every arrangement in turn: structure, outfit, balance, neutral point, and the pack where it
 * belongs. Theirs is the factorisation of one lattice's matrix alone.
 */
export default async function rows(): Promise<BenchRow[]> {
  const matrix = new Matrix(UNKNOWNS, UNKNOWNS);
  for (let i = 0; i < UNKNOWNS; i++) {
    for (let j = 0; j < UNKNOWNS; j++) matrix.set(i, j, 1 / (1 + Math.abs(i - j)) + (i === j ? 1 : 0));
  }
  let made = 0;
  return [
    compare({
      name: 'a whole aircraft from its span, pack placed, arrangements in turn',
      against: `ml-matrix, LU of ${UNKNOWNS} unknowns alone`,
      ours: () => {
        made += 1;
        const arrangement = arrangementIds[made % arrangementIds.length]!;
        // Another span each time: what is remembered of one aircraft is of no use to the next.
        return beginAircraft(wishOf(arrangement, 1500 + (made % 997))).parts.length;
      },
      theirs: () => new LuDecomposition(matrix).isSingular(),
      batches: 15,
    }),
  ];
}
