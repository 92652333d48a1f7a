/** A pack as its two poles show it. Volts, ohms, mAh. */
export interface PackSource {
  readonly id: string;
  /** Electromotive force freshly charged, in the middle of its discharge, and at the end of what is to be used. */
  readonly fullV: number;
  readonly nominalV: number;
  readonly emptyV: number;
  /** Internal resistance, ohm. */
  readonly ohm: number;
  readonly capacityMah: number;
  /** The share of the capacity that is to be used, 0 to 1. */
  readonly usableShare: number;
}

/** What gives one steady voltage from a higher one. */
export interface Regulator {
  readonly outputV: number;
  /** How much more than its output it needs at its input, V. */
  readonly dropoutV: number;
  /** Output power by input power, 0 to 1; null for a linear one, which lets through what current it gives. */
  readonly efficiency: number | null;
}

/** Whatever is fed: it may use current, feed others, or regulate for them. */
export interface PowerUnit {
  readonly id: string;
  readonly regulator: Regulator | null;
}

/** A pair of wires from a pack or a unit to a unit. */
export interface Feed {
  readonly from: string;
  readonly to: string;
  /** There and back, ohm. */
  readonly ohm: number;
  /** Taken before the regulator of the unit that it comes from. */
  readonly pastRegulator: boolean;
}

export interface PowerNet {
  readonly packs: readonly PackSource[];
  readonly units: readonly PowerUnit[];
  readonly feeds: readonly Feed[];
}

/** Volts and amperes everywhere, at one moment. */
export interface PowerFlow {
  /** At the input of each unit, V; null for one that no live pack reaches. */
  readonly unitV: ReadonlyMap<string, number | null>;
  /** Out of each pack, A; never below 0: what would flow back into it is taken to be held off. */
  readonly packA: ReadonlyMap<string, number>;
  /** Along each feed, in the order of the net, A. */
  readonly feedA: readonly number[];
  /** Out of each regulator, A. */
  readonly regulatorA: ReadonlyMap<string, number>;
  /** At the output of each regulator, V; null where it is not fed. */
  readonly regulatorV: ReadonlyMap<string, number | null>;
}
