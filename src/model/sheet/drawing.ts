/** A point on paper, mm from the left edge and from the top edge of its drawing. */
export type Spot = readonly [xMm: number, yMm: number];

/**
 * Kinds of lines after ISO 128-2, wide ones 0.35 mm and narrow ones 0.18 mm: `outline` wide and continuous, `thin` narrow and
 * continuous (dimensions, leaders), `hidden` narrow and dashed, `chain` narrow, long-dashed and dotted, `faint` the narrowest.
 */
export type LineStyle = 'outline' | 'thin' | 'hidden' | 'chain' | 'faint' | 'heavy';

export interface Words {
  readonly kind: 'words';
  readonly at: Spot;
  readonly text: string;
  readonly sizeMm: number;
  readonly anchor: 'start' | 'middle' | 'end';
  /** Read from the right-hand side of the page (ISO 129-1). */
  readonly turned?: boolean;
  readonly bold?: boolean;
}

export type Shape =
  | {
      readonly kind: 'polygon' | 'polyline';
      readonly points: readonly Spot[];
      readonly line: LineStyle | null;
      readonly fill?: 'paper' | 'ink' | 'hatch';
      /** What it is of, or which mark. */
      readonly of?: string;
    }
  | {
      readonly kind: 'circle';
      readonly at: Spot;
      readonly radiusMm: number;
      readonly line: LineStyle | null;
      readonly fill?: 'paper' | 'ink';
      readonly of?: string;
    }
  | Words
  /** Only what lies within a window is seen. */
  | {
      readonly kind: 'window';
      readonly at: Spot;
      readonly size: readonly [number, number];
      readonly shapes: readonly Shape[];
    };

/** Vectors on paper, in millimetres: what measures 100 in here measures 100 mm on paper. */
export interface Drawing {
  /** What it shows, for those who do not see it. */
  readonly title: string;
  /** Unique in the sheet. */
  readonly id: string;
  readonly wideMm: number;
  readonly highMm: number;
  readonly shapes: readonly Shape[];
}

export const line = (from: Spot, to: Spot, style: LineStyle = 'thin', of?: string): Shape => ({
  kind: 'polyline',
  points: [from, to],
  line: style,
  ...(of !== undefined && { of }),
});

export const say = (
  at: Spot,
  text: string,
  more: Partial<Omit<Words, 'kind' | 'at' | 'text'>> = {},
): Words => ({ kind: 'words', at, text, sizeMm: 2.5, anchor: 'start', ...more });

/** How wide a word is at the most, mm: figures and capitals of the sheet's letters are at most 0.62 of their height wide. */
export const wordsWide = (text: string, sizeMm: number): number => text.length * 0.62 * sizeMm;

/** A rectangle, by its corners. */
export interface Rect {
  readonly leftMm: number;
  readonly topMm: number;
  readonly rightMm: number;
  readonly bottomMm: number;
}

export const rectsOverlap = (a: Rect, b: Rect): boolean =>
  a.leftMm < b.rightMm && b.leftMm < a.rightMm && a.topMm < b.bottomMm && b.topMm < a.bottomMm;

export const rectCorners = ({ leftMm, topMm, rightMm, bottomMm }: Rect): readonly Spot[] => [
  [leftMm, topMm],
  [rightMm, topMm],
  [rightMm, bottomMm],
  [leftMm, bottomMm],
];

/** A solid arrowhead, 3:1 (ISO 129-1), with its point at a place and coming from a direction. */
export function arrow([x, y]: Spot, [fromX, fromY]: Spot, longMm = 2.4): Shape {
  const far = Math.hypot(fromX - x, fromY - y) || 1;
  const [ux, uy] = [(fromX - x) / far, (fromY - y) / far];
  const half = longMm / 6;
  return {
    kind: 'polygon',
    points: [
      [x, y],
      [x + ux * longMm - uy * half, y + uy * longMm + ux * half],
      [x + ux * longMm + uy * half, y + uy * longMm - ux * half],
    ],
    line: null,
    fill: 'ink',
  };
}
