/** A range of static margins that a picture shows, % MAC. */
export interface MarginSpan {
  readonly leastPct: number;
  readonly mostPct: number;
}

const STEP_PCT = 5;
/** Kept free at the far end, where its figure stands. */
const SPARE_PCT = 3;

/** The span of a picture of margins: whole steps, with 0, the neutral point, always in it. */
export function marginSpan(marginsPct: readonly number[]): MarginSpan {
  const least = Math.min(0, ...marginsPct);
  const most = Math.max(0, ...marginsPct);
  return {
    leastPct: Math.floor(least / STEP_PCT) * STEP_PCT,
    mostPct: Math.ceil((most + SPARE_PCT) / STEP_PCT) * STEP_PCT,
  };
}

/** Where a margin falls across a picture: aft is to the right, as on the axis, so a margin grows leftward. */
export const marginToPx = ({ leastPct, mostPct }: MarginSpan, pct: number, widthPx: number): number =>
  ((mostPct - pct) / (mostPct - leastPct)) * widthPx;

/** Of the burn's picture what is taken up at each side, px. */
export interface PlotRoom {
  readonly widthPx: number;
  /** Where the CG travel runs. */
  readonly cgPx: number;
  /** The enlarged detail stands on the left, on the right, or not at all. */
  readonly detail: 'left' | 'right' | null;
  readonly detailPx: number;
  /** The least that the reading beside the disc takes up. */
  readonly labelPx: number;
}

/** What the picture of the margins takes up with its words, px. */
export const PLOT_PX = 200;
/** The names of the lines at the left end. */
const NAMES_PX = 76;
const APART_PX = 24;

/**
 * Where the picture of the margins stands, on the side away from the detail: clear of the travel, and with
 * room left for the reading on one side or the other. Null where that cannot be.
 */
export function plotLeft({ widthPx, cgPx, detail, detailPx, labelPx }: PlotRoom): number | null {
  const atLeft = {
    leftPx: NAMES_PX,
    fromPx: NAMES_PX + PLOT_PX,
    toPx: widthPx - (detail ? detailPx : 0),
  };
  const rightPx = widthPx - 16 - PLOT_PX;
  const atRight = { leftPx: rightPx, fromPx: NAMES_PX + (detail ? detailPx : 0), toPx: rightPx };
  const places = [...(detail === 'left' ? [] : [atLeft]), ...(detail === 'right' ? [] : [atRight])];
  const fits = places.find(
    ({ fromPx, toPx }) =>
      Math.min(cgPx - fromPx, toPx - cgPx) >= APART_PX &&
      Math.max(cgPx - fromPx, toPx - cgPx) >= APART_PX + labelPx,
  );
  return fits?.leftPx ?? null;
}

/** Off the middle of the disc, px. */
const LABEL_OFF_PX = 18;

/** The side of the disc that has room for its reading, the right one first; null where neither has. */
export function labelSide(
  discPx: number,
  labelPx: number,
  fromPx: number,
  toPx: number,
): 'right' | 'left' | null {
  if (discPx + LABEL_OFF_PX + labelPx <= toPx) return 'right';
  return discPx - LABEL_OFF_PX - labelPx >= fromPx ? 'left' : null;
}
