import { expect, it } from 'vitest';
import { islandsOf } from '../../../src/engine/power/islands';
import type { PowerNet } from '../../../src/engine/power/types';

const pack = (id: string) => ({
  id,
  fullV: 8.4,
  nominalV: 7.4,
  emptyV: 6.6,
  ohm: 0.02,
  capacityMah: 1000,
  usableShare: 0.8,
});
const unit = (id: string) => ({ id, regulator: null });
const feed = (from: string, to: string) => ({ from, to, ohm: 0, pastRegulator: false });

it('what a wire joins is one piece, by whatever way round; each feed goes with its own', () => {
  const net: PowerNet = {
    packs: [pack('a'), pack('b'), pack('idle')],
    units: [unit('servo'), unit('switch'), unit('motor'), unit('unfed')],
    feeds: [feed('a', 'switch'), feed('b', 'motor'), feed('switch', 'servo')],
  };
  const pieces = islandsOf(net).map(({ packs, units, feeds }) => [
    [...packs, ...units].map(({ id }) => id).join(' '),
    feeds.length,
  ]);
  expect(pieces).toEqual([
    ['a servo switch', 2],
    ['b motor', 1],
    ['idle', 0],
    ['unfed', 0],
  ]);
});
