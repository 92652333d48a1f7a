import { formatLength } from '../units';
import { dimension, extensions, runningDimensions, runningHighMm } from './dimensions';
import { type Drawing, type Rect, rectCorners, type Shape, type Spot, say } from './drawing';
import { nearLabelShapes, nearLabelSize, ROW_GAP_MM, ROW_MM, rowLabelShapes } from './labelShapes';
import { nearLabels } from './nearLabels';
import type { Numbered } from './numbered';
import type { Size } from './paper';
import { type Projection, projection, type SeenBox, type SheetView } from './projection';
import { type LabelRows, rowLabels } from './rowLabels';
import { chooseScale } from './scale';
import { figureOf, type ViewInput } from './viewInput';
import { airframeShapes, itemShapes, markShapes } from './viewShapes';

/** The two rows of labels in a drawing of a width, its height or any. */
export const labelRowsIn = (wideMm: number, highMm = 0): LabelRows => ({
  fromMm: ROW_GAP_MM,
  toMm: wideMm - ROW_GAP_MM,
  gapMm: ROW_GAP_MM,
  topMm: ROW_MM,
  bottomMm: highMm - ROW_MM,
});

interface WholeOptions {
  readonly all: SeenBox;
  readonly room: Size;
  readonly labelled: readonly Numbered[];
  /** What a detail shows; without one, labels stand in rows. */
  readonly window: SeenBox | null;
  readonly at?: number;
}

export interface Whole {
  readonly drawing: Drawing;
  readonly scale: number;
  readonly notes: readonly string[];
}

/** What stands under or beside a view, mm: running dimensions, or the span. */
const below: Readonly<Record<Exclude<SheetView, 'side'>, number>> = { top: 2, front: 13 };
const belowOf = (view: SheetView, { stations }: ViewInput['marks']): number =>
  view === 'side' ? runningHighMm(stations) : below[view];
const beside: Readonly<Record<SheetView, number>> = { side: 8, top: 14, front: 8 };
const EDGE_MM = 6;

/** The scale of a whole view in a room, and how high its drawing is. */
export function wholeFrame(
  { marks }: Pick<ViewInput, 'marks'>,
  view: SheetView,
  { all, room, window }: Pick<WholeOptions, 'all' | 'room' | 'window'>,
): { readonly scale: number; readonly rowsMm: number; readonly highMm: number } {
  const rowsMm = window ? EDGE_MM : ROW_MM + EDGE_MM;
  const belowMm = belowOf(view, marks);
  const highMm = room.highMm - 2 * rowsMm - belowMm;
  const scale = Math.max(
    chooseScale(all.right - all.left, room.wideMm - 2 * beside[view]),
    chooseScale(all.high - all.low, Math.max(highMm, 20)),
  );
  return { scale, rowsMm, highMm: (all.high - all.low) / scale + 2 * rowsMm + belowMm };
}

/** The whole aircraft in a view. */
export function wholeDrawing(input: ViewInput, view: SheetView, options: WholeOptions): Whole {
  const { all, room, labelled, window, at = 0 } = options;
  const { scale, rowsMm, highMm } = wholeFrame(input, view, options);
  const place = projection(view, all, scale, {
    fromMm: beside[view],
    toMm: room.wideMm - beside[view],
    topMm: rowsMm,
  });
  const { area } = place;
  const bottomMm = area.bottomMm + rowsMm;
  const dims = principal(input, place, { room, bottomMm });
  const drawnSoFar: readonly Shape[] = [
    ...airframeShapes(input.aircraft, place),
    ...itemShapes(input.aircraft, input.things, place),
    ...markShapes(input.marks, place, area),
    ...(window ? windowShapes(place, window) : []),
  ];
  const labels = window
    ? near(input, place, { labelled, window, wideMm: room.wideMm, bottomMm, drawnSoFar })
    : { shapes: inRows(input, place, { labelled, wideMm: room.wideMm }), notes: [] };
  const shapes: readonly Shape[] = [...drawnSoFar, ...labels.shapes, ...dims.shapes];
  const drawing: Drawing = {
    id: `${view}-${at}`,
    title: `The aircraft, ${view === 'side' ? 'from the left' : view === 'top' ? 'from above' : 'from ahead'}`,
    wideMm: room.wideMm,
    highMm,
    shapes,
  };
  return { drawing, scale, notes: [...dims.notes, ...labels.notes] };
}

const rectOf = (place: Projection, { left, right, low, high }: SeenBox): Rect => {
  const [leftMm, topMm] = place.corner([left, high]);
  const [rightMm, bottomMm] = place.corner([right, low]);
  return { leftMm, topMm, rightMm, bottomMm };
};

/** Where the dimension line of the span stands in the top view: with room for labels before it where there is any. */
const spanLineMm = ({ area }: Projection, wideMm: number): number => Math.min(area.rightMm + 26, wideMm - 4);

/** What it and its figure take up, from top to bottom. */
const spanRects = (place: Projection, wideMm: number): readonly Rect[] => {
  if (place.view !== 'top') return [];
  const x = spanLineMm(place, wideMm);
  return [
    { leftMm: x - 4.5, rightMm: x + 2, topMm: place.area.topMm - 2, bottomMm: place.area.bottomMm + 2 },
  ];
};

/** Where the letter of a detail stands. */
const letterRect = ({ leftMm, topMm }: Rect): Rect => ({
  leftMm: leftMm - 4.5,
  rightMm: leftMm,
  topMm: topMm - 4.5,
  bottomMm: topMm,
});

function windowShapes(place: Projection, window: SeenBox): readonly Shape[] {
  const rect = rectOf(place, window);
  return [
    { kind: 'polygon', points: rectCorners(rect), line: 'chain', of: 'detail' },
    say([rect.leftMm - 1, rect.topMm - 0.8], 'A', { sizeMm: 3.5, bold: true, anchor: 'end' }),
  ];
}

function inRows(
  { things, say: words }: ViewInput,
  place: Projection,
  { labelled, wideMm }: { readonly labelled: readonly Numbered[]; readonly wideMm: number },
): readonly Shape[] {
  const rows = {
    ...labelRowsIn(wideMm),
    topMm: place.area.topMm - EDGE_MM,
    bottomMm: place.area.bottomMm + EDGE_MM,
  };
  const spots = labelled.map(({ id, cgMm }) => ({ id, at: place.spot(cgMm) }));
  const labels = rowLabels(spots, rows) ?? [];
  return labels.flatMap((label) => {
    const thing = things.find(({ id }) => id === label.id)!;
    return rowLabelShapes(label, { number: thing.number, figure: figureOf(thing.cgMm, place.view, words) });
  });
}

function near(
  { things, say: words }: ViewInput,
  place: Projection,
  more: {
    readonly labelled: readonly Numbered[];
    readonly window: SeenBox;
    readonly wideMm: number;
    readonly bottomMm: number;
    readonly drawnSoFar: readonly Shape[];
  },
): Drawn {
  const { labelled, window, wideMm, bottomMm, drawnSoFar } = more;
  const tried = labelled.slice(0, MOST_NEAR);
  const figures = tried.map(({ cgMm }) => figureOf(cgMm, place.view, words));
  const spots = tried.map(({ id, cgMm }) => ({ id, at: place.spot(cgMm) }));
  const { placed } = nearLabels(spots, {
    ...nearLabelSize(figures),
    lines: outlineLines(drawnSoFar),
    within: { leftMm: 0, topMm: 0, rightMm: wideMm, bottomMm },
    keepOff: [rectOf(place, window), letterRect(rectOf(place, window)), ...spanRects(place, wideMm)],
  });
  const shapes = placed.flatMap((label) => {
    const thing = things.find(({ id }) => id === label.id)!;
    return nearLabelShapes(label, { number: thing.number, figure: figureOf(thing.cgMm, place.view, words) });
  });
  const missing = labelled.filter(({ id }) => !placed.some((label) => label.id === id));
  if (missing.length === 0) return { shapes, notes: [] };
  const numbers = missing.map(({ number }) => number).join(', ');
  return { shapes, notes: [`No room here for the labels of ${numbers}: the table has their figures.`] };
}

/** The lines of what is drawn already. */
const outlineLines = (shapes: readonly Shape[]): readonly (readonly [Spot, Spot])[] =>
  shapes.flatMap((shape) => {
    if ((shape.kind !== 'polygon' && shape.kind !== 'polyline') || shape.line === null) return [];
    const { points, kind } = shape;
    return points
      .slice(kind === 'polygon' ? 0 : 1)
      .map((to, at) => [kind === 'polygon' ? points.at(at - 1)! : points[at]!, to] as const);
  });

/** More than so many are not tried. */
const MOST_NEAR = 60;

interface Drawn {
  readonly shapes: readonly Shape[];
  readonly notes: readonly string[];
}

/** The stations that matter under the side elevation; the span in the other two. */
function principal(
  { marks, say: words }: ViewInput,
  place: Projection,
  { room, bottomMm }: { readonly room: Size; readonly bottomMm: number },
): Drawn {
  const { view, area, scale } = place;
  if (view === 'side') {
    const { shapes, left, originDrawn } = runningDimensions(marks.stations, {
      xOf: (stationMm) => place.spot([stationMm, 0, 0])[0],
      originMm: place.spot([words.fromMm, 0, 0])[0],
      axisMm: bottomMm + 3,
      fromMm: 4,
      toMm: room.wideMm - 4,
    });
    const notes = [
      ...(left > 0 ? [`${left} more stations had no room in the drawing.`] : []),
      ...(originDrawn ? [] : ['The point that stations are counted from lies off the drawing.']),
    ];
    return { shapes, notes };
  }
  const spanMm = (view === 'top' ? area.bottomMm - area.topMm : area.rightMm - area.leftMm) * scale;
  const figure = formatLength(spanMm, words.units, { fine: true, unit: false });
  if (view === 'top') {
    const x = spanLineMm(place, room.wideMm);
    const ends = [area.topMm, area.bottomMm] as const;
    return {
      shapes: [
        ...extensions(
          ends.map((y) => [area.rightMm - 2, y]),
          x,
          true,
        ),
        ...dimension([x, ends[0]], [x, ends[1]], figure, 'span'),
      ],
      notes: [],
    };
  }
  const y = area.bottomMm + EDGE_MM + 6;
  return {
    shapes: [
      ...extensions(
        [
          [area.leftMm, area.bottomMm],
          [area.rightMm, area.bottomMm],
        ],
        y,
        false,
      ),
      ...dimension([area.leftMm, y], [area.rightMm, y], figure, 'span'),
    ],
    notes: [],
  };
}
