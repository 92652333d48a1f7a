import { line, type Rect, rectCorners, type Shape, type Spot, say, wordsWide } from './drawing';
import type { NearLabel } from './nearLabels';
import type { PlacedLabel } from './rowLabels';

/** The number of a part in a circle, as part references are written (ISO 6433). */
export const BALLOON_MM = 4.8;
export const FIGURE_MM = 2.5;
/** From label to label in a row, mm. */
export const ROW_GAP_MM = 5.4;
/** Of the figure in a row, mm: so much is kept free for it. */
export const ROW_MM = 20;

/** What a label says: the number, and a dimension from the reference. */
export interface LabelWords {
  readonly number: number;
  readonly figure: string;
}

export const nearLabelSize = (figures: readonly string[]): { wideMm: number; highMm: number } => ({
  wideMm: BALLOON_MM + 1.4 + Math.max(0, ...figures.map((figure) => wordsWide(figure, FIGURE_MM))),
  highMm: BALLOON_MM + 0.4,
});

/** The box that a row's label takes up. */
export function rowBox({ to: [x, y], row }: Pick<PlacedLabel, 'to' | 'row'>): Rect {
  const half = ROW_GAP_MM / 2;
  return row === 'top'
    ? { leftMm: x - half, rightMm: x + half, topMm: y - ROW_MM, bottomMm: y }
    : { leftMm: x - half, rightMm: x + half, topMm: y, bottomMm: y + ROW_MM };
}

/** A leader that ends in a dot on the thing (ISO 128-2), the number in its circle, and the figure read from the right. */
export function rowLabelShapes(label: PlacedLabel, { number, figure }: LabelWords): readonly Shape[] {
  const { id, to, row } = label;
  const [x, y] = to;
  const way = row === 'top' ? -1 : 1;
  const middle: Spot = [x, y + (way * BALLOON_MM) / 2];
  const textAt: Spot = [x + FIGURE_MM * 0.36, y + way * (BALLOON_MM + 1)];
  return [
    ...leader(label),
    ...balloon(middle, number, id),
    say(textAt, figure, { sizeMm: FIGURE_MM, anchor: row === 'top' ? 'start' : 'end', turned: true }),
  ];
}

/** The same beside its thing, the figure level. */
export function nearLabelShapes(label: NearLabel, { number, figure }: LabelWords): readonly Shape[] {
  const { id, to, box, at } = label;
  const right = to[0] >= at[0];
  const middle: Spot = [right ? box.leftMm + BALLOON_MM / 2 : box.rightMm - BALLOON_MM / 2, to[1]];
  const textAt: Spot = [
    right ? box.leftMm + BALLOON_MM + 1 : box.rightMm - BALLOON_MM - 1,
    to[1] + FIGURE_MM * 0.36,
  ];
  return [
    { kind: 'polygon', points: rectCorners(box), line: null, fill: 'paper' },
    ...leader(label),
    ...balloon(middle, number, id),
    say(textAt, figure, { sizeMm: FIGURE_MM, anchor: right ? 'start' : 'end' }),
  ];
}

const leader = ({ id, at, to }: Pick<PlacedLabel, 'id' | 'at' | 'to'>): readonly Shape[] => [
  line(at, to, 'faint', `leader ${id}`),
  { kind: 'circle', at, radiusMm: 0.5, line: null, fill: 'ink' },
];

const balloon = (at: Spot, number: number, id: string): readonly Shape[] => [
  { kind: 'circle', at, radiusMm: BALLOON_MM / 2, line: 'thin', fill: 'paper', of: `number ${id}` },
  say([at[0], at[1] + 0.9], String(number), {
    sizeMm: number > 99 ? 1.9 : 2.6,
    anchor: 'middle',
    bold: true,
  }),
];
