import type { PackSource, PowerNet } from '../../../src/engine/power/types';

export const pack = (id: string, emfV: number, ohm: number): PackSource => ({
  id,
  fullV: emfV,
  nominalV: emfV,
  emptyV: emfV,
  ohm,
  capacityMah: 1000,
  usableShare: 1,
});

export const wire = (from: string, to: string, ohm = 0, pastRegulator = false) => ({
  from,
  to,
  ohm,
  pastRegulator,
});

export const nominal = (net: PowerNet) => (id: string) =>
  net.packs.find((source) => source.id === id)?.nominalV ?? null;
