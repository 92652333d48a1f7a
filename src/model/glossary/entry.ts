/** A word of the trade, or of this bench, in our own words. */
export interface Entry {
  readonly id: string;
  readonly word: string;
  /** Other ways in which the same is written or said. */
  readonly also: readonly string[];
  /** What is explained with it and is not the same: it is found here, and is no other name. */
  readonly parts?: readonly string[];
  /** What it is, in a few short sentences, each for itself. */
  readonly says: readonly string[];
  /** Ids of words that stand close to it. */
  readonly related: readonly string[];
}
