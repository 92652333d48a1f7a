import { listed } from '../document/inWords';
import type { Aircraft } from '../document/types';
import { formatLength } from '../units';
import type { Say } from '../words/say';
import { type Balanced, isKept, type KeepBetween } from './balancing';
import { type Block, heading, words } from './blocks';
import { arrow, line, type Shape, say } from './drawing';
import { type EdgeAt, leadingEdgeAt, reachedButtline } from './leadingEdge';
import type { Size } from './paper';
import { type Template, templateBlocks } from './templates';

/** A strip of paper for each wing, mm. */
const STRIP_MM = 62;
const BETWEEN_MM = 12;
const HEAD_MM = 12;
const TAIL_MM = 16;

export interface StripInput {
  readonly aircraft: Aircraft;
  readonly say: Say;
  readonly balanced: Balanced;
  readonly keep: KeepBetween | null;
  /** Whether there is a band to keep. */
  readonly banded: boolean;
  /** Where the leading edge is measured, mm from the centre line; null for just beside the hull. */
  readonly buttlineMm: number | null;
}

/** Where the marks go, or why there are none, in a sentence. */
export type StripPlace =
  | { readonly edge: EdgeAt; readonly balanceMm: number }
  | { readonly sentence: string };

/** The balance point behind the leading edge, at the buttline that was chosen. */
export function stripPlace({ aircraft, say: words, balanced, buttlineMm }: StripInput): StripPlace {
  const at = buttlineMm ?? reachedButtline(aircraft);
  const edge = at === null ? null : leadingEdgeAt(aircraft, Math.abs(at));
  if (at === null) return { sentence: 'There is no wing to put marks under.' };
  if (!edge) return { sentence: `The wing does not reach buttline ${words.length(at)}: choose another.` };
  if (!balanced.cgMm) return { sentence: 'There is no CG to mark yet.' };
  const balanceMm = balanced.cgMm[0] - edge.stationMm;
  if (balanceMm < 0)
    return {
      sentence: `At buttline ${words.length(edge.buttlineMm)} the balance point lies ahead of the leading edge: choose a buttline nearer to the root.`,
    };
  if (balanceMm > edge.chordMm)
    return {
      sentence: `At buttline ${words.length(edge.buttlineMm)} the balance point lies behind the trailing edge: choose another.`,
    };
  return { edge, balanceMm };
}

/** The marks for under the wing, left and right, on as many pages as they need. */
export function stripBlocks(input: StripInput, room: Size): readonly Block[] {
  const place = stripPlace(input);
  if ('sentence' in place) return [heading('Marks for under the wing'), words(place.sentence, 'warn')];
  return templateBlocks(stripTemplate(input, place), room);
}

function stripTemplate(
  { say: reading, balanced, keep, banded }: StripInput,
  { edge, balanceMm }: Extract<StripPlace, { edge: EdgeAt }>,
): Template {
  const figure = (mm: number) => formatLength(mm, reading.units, { fine: true });
  // A CG that does not keep the band is shown, not offered to balance at.
  const kept = banded && isKept(keep, balanced.cgMm ?? [Number.NaN, 0, 0]);
  const label = `${kept ? 'balance' : 'as listed'}  ${figure(balanceMm)}`;
  const marks = [
    { of: 'balance', mm: balanceMm, words: label, heavy: kept },
    ...(keep
      ? [
          { of: 'foremost', mm: keep.fromMm - edge.stationMm, words: 'no farther forward', heavy: !kept },
          { of: 'aftmost', mm: keep.toMm - edge.stationMm, words: 'no farther aft', heavy: !kept },
        ]
      : []),
  ];
  const onWing = marks.filter(({ mm }) => mm >= 0 && mm <= edge.chordMm);
  const off = marks.filter((mark) => !onWing.includes(mark)).map((mark) => `“${mark.words}”`);
  const longMm = Math.max(...onWing.map(({ mm }) => mm)) + TAIL_MM;
  const strip = (side: 'LEFT' | 'RIGHT', leftMm: number): readonly Shape[] => {
    const rightMm = leftMm + STRIP_MM;
    const y = (mm: number) => HEAD_MM + mm;
    const middle = (leftMm + rightMm) / 2;
    return [
      {
        kind: 'polygon',
        points: [
          [leftMm, y(0)],
          [rightMm, y(0)],
          [rightMm, y(longMm)],
          [leftMm, y(longMm)],
        ],
        line: 'thin',
        of: `strip ${side}`,
      },
      line([leftMm, y(0)], [rightMm, y(0)], 'heavy', `edge ${side}`),
      say([middle, y(0) - 6.5], `${side} wing, leading edge here`, { anchor: 'middle', bold: true }),
      say([middle, y(0) - 2.2], `at buttline ${figure(edge.buttlineMm)}`, { anchor: 'middle' }),
      line([leftMm + 6, y(3)], [leftMm + 6, y(longMm - 3)], 'faint'),
      arrow([leftMm + 6, y(1)], [leftMm + 6, y(longMm)], 3),
      ...onWing.flatMap(({ of, mm, words, heavy }): readonly Shape[] => [
        line([leftMm, y(mm)], [rightMm, y(mm)], heavy ? 'heavy' : 'chain', `${of} ${side}`),
        // The balance mark has its words at the right, the other two at the left: they may lie close together.
        of === 'balance'
          ? say([rightMm - 1.5, y(mm) - 1.2], words, { anchor: 'end', sizeMm: 2.8, bold: true })
          : say([leftMm + 9, y(mm) + (of === 'foremost' ? -1.2 : 3.2)], words, { sizeMm: 2.2, bold: heavy }),
      ]),
    ];
  };
  return {
    id: 'cg-strips',
    title: 'Marks for under the wing',
    hint: `${balanced.words}. Hold the heavy edge to the leading edge of ${edge.name} at that buttline, the arrow forward, parallel to the centre line with the wing level.${off.length > 0 ? ` Off the wing there, so not marked: ${listed(off)}.` : ''}`,
    wideMm: 2 * STRIP_MM + BETWEEN_MM + 1,
    highMm: HEAD_MM + longMm + 0.5,
    shapes: [...strip('LEFT', 0.5), ...strip('RIGHT', STRIP_MM + BETWEEN_MM + 0.5)],
  };
}
