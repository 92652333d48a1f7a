import { ownUnit } from '../units';
import { type Block, BREAK, drawn, heading, words } from './blocks';
import { detailDrawing } from './detailDrawing';
import type { Numbered } from './numbered';
import type { Size } from './paper';
import { boxAbout, grown, type SeenBox, type SheetView, seen, seenAirframe, seenItem } from './projection';
import { rowsTake } from './rowLabels';
import { chooseScale, scaleWords } from './scale';
import type { ViewInput } from './viewInput';
import { labelRowsIn, wholeDrawing, wholeFrame } from './wholeDrawing';

const viewNames: Readonly<Record<SheetView, string>> = {
  side: 'Side elevation, from the left',
  top: 'Top view',
  front: 'Front elevation',
};

/** What the figures of a view are, and what its lines and marks mean. */
function keyOf(view: SheetView, { say, from, marks }: ViewInput): string {
  const unit = ownUnit('length', say.units).symbol;
  const figures = {
    side: `stations from ${from}, aft +`,
    top: 'buttlines from the centre line, right +',
    front: 'waterlines from the datum, up +',
  }[view];
  const at = marks.cgState ? ` (${marks.cgState})` : '';
  const cg = marks.cgDryMm ? `Disc in quarters: CG full; diamond: CG dry${at}` : `Disc in quarters: CG${at}`;
  const band = marks.band && view !== 'front' ? '; chain lines: the limits' : '';
  return `Figures: ${figures}, ${unit}, each part’s own CG. Dashed: hidden. ${cg}${band}.`;
}

/** A detail is drawn where it is so much larger than the whole. */
const WORTH_IT = 1.4;
/** More drawings of one view than this are not made: the table has the rest. */
const MOST_DRAWINGS = 4;
/** What headings and the key take of a page, mm. */
const HEADINGS_MM = 34;

interface Split {
  readonly scale: number;
  /** The room of the whole, and what is left for the detail. */
  readonly room: Size;
  readonly detailRoom: Size;
  readonly detailScale: number;
}

/** What of a page the whole takes is tried out; the rest is the detail’s. */
const SHARES = Array.from({ length: 19 }, (_, at) => 0.3 + 0.025 * at);

/** The whole counts twice: it is what is recognised. */
const costOf = ({ scale, detailScale }: Split): number => scale ** 2 * detailScale;

/** The split of a page that shows the whole and the inside largest together; null where a detail shows hardly more. */
function bestSplit(input: ViewInput, view: SheetView, { all, room, window }: SplitOptions): Split | null {
  const freeMm = room.highMm - HEADINGS_MM;
  const splits = SHARES.map((share): Split => {
    const wholeRoom: Size = { wideMm: room.wideMm, highMm: freeMm * share };
    const { scale, highMm } = wholeFrame(input, view, { all, room: wholeRoom, window });
    const detailRoom: Size = { wideMm: room.wideMm, highMm: freeMm - highMm };
    return { scale, room: wholeRoom, detailRoom, detailScale: scaleIn(window, detailRoom) };
  });
  return splits
    .filter(({ scale, detailScale }) => detailScale * WORTH_IT <= scale)
    .reduce<Split | null>((best, split) => (best && costOf(best) <= costOf(split) ? best : split), null);
}

interface SplitOptions {
  readonly all: SeenBox;
  readonly room: Size;
  readonly window: SeenBox;
}

/** One view on a page of its own: the whole at a scale, and the inside enlarged where that shows more. */
export function viewBlocks(input: ViewInput, view: SheetView, room: Size): readonly Block[] {
  const { things } = input;
  const all = boxOfAll(input, view);
  if (!all) return [];
  const window = windowOf(input, view);
  const split = window && bestSplit(input, view, { all, room, window });
  if (!window || !split) return wholeBlocks(input, view, { all, room });
  const { detailRoom, detailScale } = split;
  const within = (at: Numbered) => holds(window, seen(at.cgMm, view));
  const core = things.filter(within);
  const labelled = things.filter((at) => !within(at));
  const small = wholeDrawing(input, view, { all, room: split.room, labelled, window });
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
    words(keyOf(view, input), 'note'),
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
      const { drawing, scale, notes } = wholeDrawing(input, view, {
        all,
        room: size,
        labelled: lot,
        window: null,
        at,
      });
      return [
        heading(`${viewNames[view]}, ${scaleWords(scale)}${lotWords(lots, lot)}`),
        drawn(drawing),
        ...[...notes, keyOf(view, input)].map((note) => words(note, 'note')),
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

/**
 * What lies in the hulls and what stands right beside it, with the hull about it and some room; null where nothing lies in a
 * hull.
 */
function windowOf({ things, aircraft }: ViewInput, view: SheetView): SeenBox | null {
  const boxes = things.flatMap(({ item, inHull }) => {
    const box = boxAbout(seenItem(item, view));
    return box ? [{ box, inHull }] : [];
  });
  let found = boxes
    .filter(({ inHull }) => inHull)
    .reduce<SeenBox | null>((all, { box }) => about(all, box), null);
  if (!found) return null;
  found = evenly(found, view);
  const nearMm = Math.max(20, NEAR_SHARE * longest(found));
  for (let before: SeenBox | null = null; before !== found; ) {
    before = found;
    const reach = grown(found, nearMm);
    const touching = boxes.filter(({ box }) => meet(reach, box) && !contains(before!, box));
    for (const { box } of touching) found = evenly(about(found, box), view);
  }
  const { left, right } = found;
  const hullsThere = seenAirframe(aircraft, view)
    .filter(({ piece }) => piece.kind === 'hull')
    .flatMap(({ corners }) => boxAbout(corners) ?? [])
    .filter((box) => meet(box, found!))
    .map((box) =>
      view === 'front' ? box : { ...box, left: Math.max(box.left, left), right: Math.min(box.right, right) },
    );
  const whole = hullsThere.reduce<SeenBox>((all, box) => about(all, box), found);
  return grown(whole, Math.max(8, 0.03 * longest(whole)));
}

/** So much of the inside’s length still counts as right beside it. */
const NEAR_SHARE = 0.12;

/** As far to one side of the centre line as to the other, where a view shows both. */
function evenly(box: SeenBox, view: SheetView): SeenBox {
  const { left, right, low, high } = box;
  const [wide, tall] = [Math.max(-left, right), Math.max(-low, high)];
  if (view === 'top') return { left, right, low: -tall, high: tall };
  return view === 'front' ? { left: -wide, right: wide, low, high } : box;
}

const longest = ({ left, right, low, high }: SeenBox): number => Math.max(right - left, high - low);

const about = (a: SeenBox | null, b: SeenBox): SeenBox =>
  a
    ? {
        left: Math.min(a.left, b.left),
        right: Math.max(a.right, b.right),
        low: Math.min(a.low, b.low),
        high: Math.max(a.high, b.high),
      }
    : b;

const meet = (a: SeenBox, b: SeenBox): boolean =>
  a.left <= b.right && b.left <= a.right && a.low <= b.high && b.low <= a.high;

const contains = (a: SeenBox, b: SeenBox): boolean =>
  a.left <= b.left && a.right >= b.right && a.low <= b.low && a.high >= b.high;

const holds = ({ left, right, low, high }: SeenBox, [a, b]: readonly [number, number]): boolean =>
  a >= left && a <= right && b >= low && b <= high;

/** The scale of a detail with its two rows of labels. */
function scaleIn({ left, right, low, high }: SeenBox, room: Size): number {
  const { topMm, bottomMm, fromMm, toMm } = labelRowsIn(room.wideMm, room.highMm);
  return Math.max(chooseScale(right - left, toMm - fromMm), chooseScale(high - low, bottomMm - topMm - 10));
}
