import { type Block, BREAK, drawn, heading, words } from './blocks';
import { detailDrawing } from './detailDrawing';
import type { Size } from './paper';
import type { Numbered } from './numbered';
import { boxAbout, grown, type SeenBox, seen, seenAirframe, seenItem, type SheetView } from './projection';
import { rowsTake } from './rowLabels';
import { chooseScale, scaleWords } from './scale';
import type { ViewInput } from './viewInput';
import { labelRowsIn, wholeDrawing } from './wholeDrawing';

const viewNames: Readonly<Record<SheetView, string>> = {
  side: 'Side elevation, from the left',
  top: 'Top view',
  front: 'Front elevation',
};

/** A detail is drawn where it is so much larger than the whole. */
const WORTH_IT = 1.4;
/** More drawings of one view than this are not made: the table has the rest. */
const MOST_DRAWINGS = 4;
/** What headings take of a page, mm. */
const HEADINGS_MM = 18;

/** One view on a page of its own: the whole at a scale, and the inside enlarged where that shows more. */
export function viewBlocks(input: ViewInput, view: SheetView, room: Size): readonly Block[] {
  const { things } = input;
  const all = boxOfAll(input, view);
  if (!all) return [];
  const window = windowOf(input, view);
  const within = (at: Numbered) => window !== null && holds(window, seen(at.cgMm, view));
  const freeMm = room.highMm - HEADINGS_MM;
  const half: Size = { wideMm: room.wideMm, highMm: freeMm * 0.5 };
  const small = wholeDrawing(input, view, { all, room: half, labelled: things.filter((at) => !within(at)), window });
  const detailRoom: Size = { wideMm: room.wideMm, highMm: freeMm - small.drawing.highMm };
  const detailScale = window ? scaleIn(window, detailRoom) : Number.POSITIVE_INFINITY;
  if (!window || detailScale * WORTH_IT > small.scale) return wholeBlocks(input, view, { all, room });
  const core = things.filter(within);
  const lots = lotsOf(core, rowsTake(labelRowsIn(room.wideMm)));
  return [
    heading(`${viewNames[view]}, ${scaleWords(small.scale)}`),
    drawn(small.drawing),
    ...small.notes.map((note) => words(note, 'note')),
    ...lots.flatMap((lot, at) => {
      const drawing = detailDrawing(input, view, { window, lot, scale: detailScale, room: detailRoom, at });
      return [
        ...(at > 0 ? [BREAK] : []),
        heading(`Detail A, ${scaleWords(detailScale)}${lotWords(lots, lot)}`, 2),
        drawn(drawing),
      ];
    }),
    ...leftOut(core, lots),
    BREAK,
  ];
}

function wholeBlocks(
  input: ViewInput,
  view: SheetView,
  { all, room }: { readonly all: SeenBox; readonly room: Size },
): readonly Block[] {
  const { things } = input;
  const lots = lotsOf(things, rowsTake(labelRowsIn(room.wideMm)));
  const size: Size = { wideMm: room.wideMm, highMm: room.highMm - HEADINGS_MM };
  return [
    ...(lots.length === 0 ? [[]] : lots).flatMap((lot, at) => {
      const { drawing, scale, notes } = wholeDrawing(input, view, { all, room: size, labelled: lot, window: null, at });
      return [
        heading(`${viewNames[view]}, ${scaleWords(scale)}${lotWords(lots, lot)}`),
        drawn(drawing),
        ...notes.map((note) => words(note, 'note')),
        BREAK,
      ];
    }),
    ...leftOut(things, lots),
  ];
}

const lotsOf = (things: readonly Numbered[], most: number): readonly (readonly Numbered[])[] =>
  Array.from({ length: Math.min(MOST_DRAWINGS, Math.ceil(things.length / most)) }, (_, at) =>
    things.slice(at * most, (at + 1) * most),
  );

const lotWords = (lots: readonly unknown[], lot: readonly Numbered[]): string =>
  lots.length > 1 ? `, numbers ${lot[0]?.number} to ${lot.at(-1)?.number}` : '';

const leftOut = (things: readonly Numbered[], lots: readonly (readonly Numbered[])[]): readonly Block[] => {
  const drawnCount = lots.reduce((sum, lot) => sum + lot.length, 0);
  const first = things[drawnCount];
  return first
    ? [words(`From number ${first.number} on the parts are dimensioned in the table only.`, 'note')]
    : [];
};

function boxOfAll({ aircraft, things }: ViewInput, view: SheetView): SeenBox | null {
  return boxAbout([
    ...seenAirframe(aircraft, view).flatMap(({ corners }) => corners),
    ...things.flatMap(({ item }) => seenItem(item, view)),
  ]);
}

/** What lies in the hulls, with some room about it; null where nothing does. */
function windowOf({ things }: ViewInput, view: SheetView): SeenBox | null {
  const box = boxAbout(things.filter(({ inHull }) => inHull).flatMap(({ item }) => seenItem(item, view)));
  if (!box) return null;
  return grown(box, Math.max(12, 0.05 * Math.max(box.right - box.left, box.high - box.low)));
}

const holds = ({ left, right, low, high }: SeenBox, [a, b]: readonly [number, number]): boolean =>
  a >= left && a <= right && b >= low && b <= high;

/** The scale of a detail with its two rows of labels. */
function scaleIn({ left, right, low, high }: SeenBox, room: Size): number {
  const { topMm, bottomMm, fromMm, toMm } = labelRowsIn(room.wideMm, room.highMm);
  return Math.max(chooseScale(right - left, toMm - fromMm), chooseScale(high - low, bottomMm - topMm - 10));
}
