import { LuDecomposition, Matrix } from 'ml-matrix';
import { powerFlow } from '../../src/engine/power/powerFlow';
import type { PowerNet } from '../../src/engine/power/types';
import { type BenchRow, compare } from './measure';

const UNITS = 60;
const EVERY = 10;

/** Two packs on one switch, and sixty units behind it in a tree, one in ten of them a regulator. */
const net: PowerNet = {
  packs: [0, 1].map((at) => ({
    id: `pack-${at}`,
    fullV: 25.2,
    nominalV: 22.2,
    emptyV: 19.8,
    ohm: 0.02,
    capacityMah: 5000,
    usableShare: 0.8,
  })),
  units: Array.from({ length: UNITS }, (_, at) => ({
    id: `unit-${at}`,
    regulator: at % EVERY === 1 ? { outputV: 6, dropoutV: 0.5, efficiency: 0.85 } : null,
  })),
  feeds: [
    ...[0, 1].map((at) => ({ from: `pack-${at}`, to: 'unit-0', ohm: 0.003, pastRegulator: false })),
    ...Array.from({ length: UNITS - 1 }, (_, at) => ({
      from: `unit-${(at + 1) % EVERY <= 1 ? 0 : at + 1 - ((at + 1) % EVERY) + 1}`,
      to: `unit-${at + 1}`,
      ohm: 0.01,
      pastRegulator: false,
    })),
  ],
};

/** Volts and amperes of it all, regulators settled over several rounds, against one factorisation of as many nodes. */
export default async function rows(): Promise<BenchRow[]> {
  const nodes = net.packs.length + UNITS + net.units.filter(({ regulator }) => regulator).length;
  const matrix = new Matrix(nodes, nodes);
  for (let i = 0; i < nodes; i++) {
    for (let j = 0; j < nodes; j++) matrix.set(i, j, 1 / (1 + Math.abs(i - j)) + (i === j ? 1 : 0));
  }
  let step = 0;
  return [
    compare({
      name: 'volts and amperes of 60 units, 6 regulators',
      against: `ml-matrix, LU of ${nodes} unknowns, once`,
      ours: () => {
        step = (step + 1) % 97;
        return powerFlow(
          net,
          () => 22.2,
          () => 0.1 + step / 1000,
        ).unitV.size;
      },
      theirs: () => new LuDecomposition(matrix).isSingular(),
    }),
  ];
}
