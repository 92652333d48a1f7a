import { arrow, line, type Shape, type Spot, say, wordsWide } from './drawing';
import type { StationMark } from './marks';
import { fitsRow, spread } from './spread';

const GAP_MM = 4.4;
/** Words longer than this are cut, with a mark that they are. */
const LONGEST = 24;
const JOG_MM = 8;
const ORIGIN_MM = 1.1;
const WORDS_MM = 2.4;

const labelOf = ({ label, figure }: StationMark): string => `${shortened(label, LONGEST)}  ${figure}`;

/** Height of the whole strip of running dimensions, mm. */
export const runningHighMm = (marks: readonly StationMark[]): number =>
  marks.length === 0 ? 6 : JOG_MM + 6 + Math.max(...marks.map((mark) => wordsWide(labelOf(mark), WORDS_MM)));

export const shortened = (text: string, longest: number): string =>
  text.length > longest ? `${text.slice(0, longest - 1)}…` : text;

interface Strip {
  /** Station to mm on paper. */
  readonly xOf: (stationMm: number) => number;
  /** Where the reference point lies: the origin of the dimensions. */
  readonly originMm: number;
  readonly axisMm: number;
  readonly fromMm: number;
  readonly toMm: number;
}

/**
 * Superimposed running dimensions (ISO 129-1): all from one origin, which has a circle, along one line; every figure at the end
 * of its extension line, which is bent where figures would meet. How many had no room comes with it, and whether the origin did: a
 * reference point may lie far from all that is drawn.
 */
export function runningDimensions(
  marks: readonly StationMark[],
  { xOf, originMm, axisMm, fromMm, toMm }: Strip,
): { readonly shapes: readonly Shape[]; readonly left: number; readonly originDrawn: boolean } {
  const shown = marks.slice(0, fitsRow(fromMm, toMm, GAP_MM));
  const along = [...shown].sort((a, b) => a.stationMm - b.stationMm);
  const places = spread(
    along.map(({ stationMm }) => xOf(stationMm)),
    { gapMm: GAP_MM, fromMm, toMm },
  );
  const xs = along.map(({ stationMm }) => xOf(stationMm));
  const ends = [...xs, originMm].map((x) => Math.min(Math.max(x, fromMm - 6), toMm + 6));
  const shapes: Shape[] = [
    line([Math.min(...ends), axisMm], [Math.max(...ends), axisMm], 'thin', 'dimension line'),
  ];
  const originDrawn = originMm >= fromMm - ORIGIN_MM && originMm <= toMm + ORIGIN_MM;
  if (originDrawn)
    shapes.push(
      {
        kind: 'circle',
        at: [originMm, axisMm],
        radiusMm: ORIGIN_MM,
        line: 'thin',
        fill: 'paper',
        of: 'origin',
      },
      say([originMm, axisMm - 2], '0', { anchor: 'middle' }),
    );
  let lastArrowMm = originMm;
  along.forEach((mark, at) => {
    const [x, X] = [xs[at]!, places?.[at] ?? xs[at]!];
    if (Math.abs(x - lastArrowMm) > 3) {
      shapes.push(arrow([x, axisMm], [originMm, axisMm], 2));
      lastArrowMm = x;
    }
    shapes.push({
      kind: 'polyline',
      points: [
        [x, axisMm - 2],
        [x, axisMm + 1.5],
        [X, axisMm + JOG_MM],
      ],
      line: 'faint',
      of: `station ${mark.kind}`,
    });
    const y = axisMm + JOG_MM + 1;
    shapes.push(say([X + 0.9, y], labelOf(mark), { anchor: 'end', turned: true, sizeMm: WORDS_MM }));
  });
  return { shapes, left: marks.length - shown.length, originDrawn };
}

/** One dimension between two points on a level or an upright line, its figure in the middle above the line. */
export function dimension(from: Spot, to: Spot, figure: string, of: string): readonly Shape[] {
  const upright = from[0] === to[0];
  const middle: Spot = upright ? [from[0] - 1, (from[1] + to[1]) / 2] : [(from[0] + to[0]) / 2, from[1] - 1];
  return [
    line(from, to, 'thin', of),
    arrow(from, to),
    arrow(to, from),
    say(middle, figure, { anchor: 'middle', turned: upright }),
  ];
}

/** The level lines from the ends of what is measured to its dimension line. */
export const extensions = (points: readonly Spot[], to: number, upright: boolean): readonly Shape[] =>
  points.map(([x, y]) =>
    upright ? line([x, y], [to + 1.5, y], 'faint') : line([x, y], [x, to + 1.5], 'faint'),
  );
