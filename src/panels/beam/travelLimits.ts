/** From an edge of the band to its figure, px. */
const BESIDE_PX = 6;
/** The dot that ends the curve, and a little air, px. */
const DOT_PX = 8;

/** Where a figure begins or ends on the travel's picture. */
export interface FigurePlace {
  readonly xPx: number;
  readonly anchor: 'start' | 'end';
}

interface LimitRoom {
  /** The band as far as it is in the picture. */
  readonly fromPx: number;
  readonly toPx: number;
  readonly pictureWidthPx: number;
  /** How wide the figures of its ends are, px; 0 where one is not shown. */
  readonly foreWidthPx: number;
  readonly aftWidthPx: number;
  /** Where the curve ends, in the row of the figures; null without one. */
  readonly dryPx: number | null;
}

/**
 * Where the limits' figures stand: within the band where both have room in it, else either side of it; a figure that the
 * curve would end on goes to the other side of its edge, if there is room.
 */
export function limitPlaces(room: LimitRoom): readonly [fore: FigurePlace, aft: FigurePlace] {
  const { fromPx, toPx, pictureWidthPx, foreWidthPx, aftWidthPx, dryPx } = room;
  const inBand = foreWidthPx + aftWidthPx + 3 * BESIDE_PX <= toPx - fromPx;
  const choose = (widthPx: number, within: FigurePlace, beside: FigurePlace): FigurePlace => {
    const isClear = ({ xPx, anchor }: FigurePlace) => {
      const [left, right] = anchor === 'start' ? [xPx, xPx + widthPx] : [xPx - widthPx, xPx];
      const isMet = dryPx !== null && dryPx > left - DOT_PX && dryPx < right + DOT_PX;
      return left >= 0 && right <= pictureWidthPx && !isMet;
    };
    const wanted = inBand ? within : beside;
    const other = inBand ? beside : within;
    return !isClear(wanted) && isClear(other) ? other : wanted;
  };
  return [
    choose(
      foreWidthPx,
      { xPx: fromPx + BESIDE_PX, anchor: 'start' },
      { xPx: fromPx - BESIDE_PX, anchor: 'end' },
    ),
    choose(aftWidthPx, { xPx: toPx - BESIDE_PX, anchor: 'end' }, { xPx: toPx + BESIDE_PX, anchor: 'start' }),
  ];
}
