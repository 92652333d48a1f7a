/** What a cell is made of. */
export const chemistries = ['lipo', 'lihv', 'liion', 'life', 'nimh'] as const;
export type Chemistry = (typeof chemistries)[number];

/** One cell, freshly charged, in the middle of its discharge and at its end, V; and what packs of it weigh. */
export interface CellFigures {
  readonly fullV: number;
  readonly nominalV: number;
  readonly emptyV: number;
  /** The share of the capacity that is commonly used, 0 to 1. */
  readonly usableShare: number;
  /** Resistance of a cell by its capacity, ohm · mAh. */
  readonly ohmMah: number;
  /** What a pack with its wires and wrap stores by mass, Wh/kg: the lightest third, the middle, the heaviest. */
  readonly whPerKg: { readonly light: number; readonly middle: number; readonly heavy: number };
  /** The current that packs of it commonly give for a while, as a multiple of the capacity by the hour. */
  readonly lastingC: number;
}

/**
 * Nominal and end voltages of lithium-ion and NiMH cells: IEC 61960-3 and IEC 61951-2 (from memory: 3.6 to 3.7 V; 1.2 V,
 * discharged to 1.0 V); charge voltages of 4.20 V and of 3.65 V for iron phosphate: Linden's Handbook of Batteries, ch. 26
 * (from memory). Full NiMH, end voltages in flight, usable shares, resistances, specific energies of whole packs and
 * currents: common practice, no source, rounded.
 */
export const cellFigures: Readonly<Record<Chemistry, CellFigures>> = {
  lipo: cell([4.2, 3.7, 3.3], 0.8, 15, [120, 140, 165], 20),
  lihv: cell([4.35, 3.8, 3.3], 0.8, 15, [130, 150, 175], 20),
  liion: cell([4.2, 3.6, 2.8], 0.85, 90, [170, 205, 235], 4),
  life: cell([3.65, 3.2, 2.8], 0.85, 20, [80, 95, 110], 10),
  nimh: cell([1.45, 1.2, 1], 0.85, 30, [55, 70, 85], 5),
};

function cell(
  [fullV, nominalV, emptyV]: readonly [number, number, number],
  usableShare: number,
  milliohmAh: number,
  [heavy, middle, light]: readonly [number, number, number],
  lastingC: number,
): CellFigures {
  return {
    fullV,
    nominalV,
    emptyV,
    usableShare,
    ohmMah: milliohmAh,
    whPerKg: { light, middle, heavy },
    lastingC,
  };
}

/** What a pack of so many cells in series and so much capacity weighs, g: the typical figure and 95 % of its spread. */
export function typicalPackMass(
  chemistry: Chemistry,
  cells: number,
  capacityMah: number,
): { readonly massG: number; readonly plusMinusG: number } {
  const { nominalV, whPerKg } = cellFigures[chemistry];
  const wh = (cells * nominalV * capacityMah) / 1000;
  const [least, most] = [(1000 * wh) / whPerKg.light, (1000 * wh) / whPerKg.heavy];
  return { massG: (1000 * wh) / whPerKg.middle, plusMinusG: (most - least) / 2 };
}

/** Capacities that packs are commonly sold in, mAh (common practice, no source). */
export const commonCapacitiesMah: readonly number[] = [
  300, 450, 650, 850, 1000, 1300, 1600, 1800, 2200, 2500, 3000, 3300, 4000, 5000, 6000, 8000, 10_000, 12_000,
  16_000, 22_000,
];

/** Specific resistance of annealed copper at 20 °C, Ω·mm²/m. Source: IEC 60028 (1/58). */
const COPPER_OHM_MM2_PER_M = 1 / 58;

/** Resistance of a pair of copper wires there and back, ohm. */
export const pairOhm = (lengthMm: number, crossSectionMm2: number): number =>
  (2 * (lengthMm / 1000) * COPPER_OHM_MM2_PER_M) / crossSectionMm2;
