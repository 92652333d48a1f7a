import type { ViewState } from '../../store/viewStore';

/** The heights of the strip's rows, px from its top. */
export interface Rows {
  readonly labels: number;
  /** Where the name of what is selected stands. */
  readonly tag: number;
  readonly weightsTop: number;
  readonly beam: number;
  readonly ruler: number;
  readonly numerals: number;
  /** Where the weights end and the travel begins. */
  readonly strip: number;
  /** The travel's picture: its top and foot, from the top of its own drawing. */
  readonly travelTop: number;
  readonly travelFoot: number;
  readonly travelHeight: number;
}

const roomy: Rows = {
  labels: 16,
  tag: 33,
  weightsTop: 40,
  beam: 108,
  ruler: 146,
  numerals: 162,
  strip: 168,
  travelTop: 26,
  travelFoot: 102,
  travelHeight: 116,
};

/** For windows that are not high, or hold all in one column: the stage keeps its share of them. */
const low: Rows = {
  labels: 12,
  tag: 26,
  weightsTop: 28,
  beam: 71,
  ruler: 95,
  numerals: 109,
  strip: 113,
  travelTop: 14,
  travelFoot: 50,
  travelHeight: 61,
};

/** For a phone that lies, where the strip has the screen with the facts over it. */
const lowest: Rows = {
  labels: 11,
  tag: 23,
  weightsTop: 25,
  beam: 59,
  ruler: 81,
  numerals: 94,
  strip: 97,
  travelTop: 13,
  travelFoot: 42,
  travelHeight: 53,
};

const byHeight = { roomy, low, lowest } as const;

export const rowsOf = ({ strip }: ViewState): Rows => byHeight[strip];
