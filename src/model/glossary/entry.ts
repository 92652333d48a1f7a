/** A word of the trade, or of this bench, in our own words. */
export interface Entry {
  readonly id: string;
  readonly word: string;
  /** Other ways in which it is written or said. */
  readonly also: readonly string[];
  /** What it is, in a few short sentences, each for itself. */
  readonly says: readonly string[];
  /** Ids of words that stand close to it. */
  readonly related: readonly string[];
}
