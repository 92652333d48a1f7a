import { formatLength } from '../units';
import { dimension, extensions, RUNNING_MM, runningDimensions } from './dimensions';
import { type Drawing, rectCorners, type Rect, say, type Shape } from './drawing';
import {
  nearLabelShapes,
  nearLabelSize,
  ROW_GAP_MM,
  ROW_MM,
  rowLabelShapes,
} from './labelShapes';
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
const below: Readonly<Record<SheetView, number>> = { side: RUNNING_MM, top: 2, front: 13 };
const beside: Readonly<Record<SheetView, number>> = { side: 8, top: 14, front: 8 };
const EDGE_MM = 6;

/** The whole aircraft in a view. */
export function wholeDrawing(input: ViewInput, view: SheetView, options: WholeOptions): Whole {
  const { all, room, labelled, window, at = 0 } = options;
  const rowsMm = window ? EDGE_MM : ROW_MM + EDGE_MM;
  const wideMm = room.wideMm - 2 * beside[view];
  const highMm = room.highMm - 2 * rowsMm - below[view];
  const scale = Math.max(
    chooseScale(all.right - all.left, wideMm),
    chooseScale(all.high - all.low, Math.max(highMm, 20)),
  );
  const place = projection(view, all, scale, { fromMm: beside[view], toMm: room.wideMm - beside[view], topMm: rowsMm });
  const { area } = place;
  const bottomMm = area.bottomMm + rowsMm;
  const dims = principal(input, place, { room, bottomMm });
  const labels = window
    ? near(input, place, { labelled, window, wideMm: room.wideMm, bottomMm })
    : { shapes: inRows(input, place, { labelled, wideMm: room.wideMm }), notes: [] };
  const shapes: readonly Shape[] = [
    ...airframeShapes(input.aircraft, place),
    ...itemShapes(input.aircraft, input.things, place),
    ...markShapes(input.marks, place, area),
    ...(window ? windowShapes(place, window) : []),
    ...labels.shapes,
    ...dims.shapes,
  ];
  const drawing: Drawing = {
    id: `${view}-${at}`,
    title: `The aircraft, ${view === 'side' ? 'from the left' : view === 'top' ? 'from above' : 'from ahead'}`,
    wideMm: room.wideMm,
    highMm: bottomMm + below[view],
    shapes,
  };
  return { drawing, scale, notes: [...dims.notes, ...labels.notes] };
}

const rectOf = (place: Projection, { left, right, low, high }: SeenBox): Rect => {
  const [leftMm, topMm] = place.corner([left, high]);
  const [rightMm, bottomMm] = place.corner([right, low]);
  return { leftMm, topMm, rightMm, bottomMm };
};

function windowShapes(place: Projection, window: SeenBox): readonly Shape[] {
  const rect = rectOf(place, window);
  return [
    { kind: 'polygon', points: rectCorners(rect), line: 'chain', of: 'detail' },
    say([rect.rightMm + 1, rect.topMm - 0.6], 'A', { sizeMm: 3.5, bold: true }),
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
  },
): Drawn {
  const { labelled, window, wideMm, bottomMm } = more;
  const tried = labelled.slice(0, MOST_NEAR);
  const figures = tried.map(({ cgMm }) => figureOf(cgMm, place.view, words));
  const spots = tried.map(({ id, cgMm }) => ({ id, at: place.spot(cgMm) }));
  const { placed } = nearLabels(spots, {
    ...nearLabelSize(figures),
    within: { leftMm: 0, topMm: 0, rightMm: wideMm, bottomMm },
    keepOff: [rectOf(place, window)],
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
    const { shapes, left } = runningDimensions(marks.stations, {
      xOf: (stationMm) => place.spot([stationMm, 0, 0])[0],
      originMm: place.spot([words.fromMm, 0, 0])[0],
      axisMm: bottomMm + 3,
      fromMm: 4,
      toMm: room.wideMm - 4,
    });
    const notes = left > 0 ? [`${left} more stations had no room in the drawing.`] : [];
    return { shapes, notes };
  }
  const spanMm = (view === 'top' ? area.bottomMm - area.topMm : area.rightMm - area.leftMm) * scale;
  const figure = formatLength(spanMm, words.units, { fine: true, unit: false });
  if (view === 'top') {
    const x = area.rightMm + 9;
    const ends = [area.topMm, area.bottomMm] as const;
    return {
      shapes: [
        ...extensions(ends.map((y) => [area.rightMm - 2, y]), x, true),
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
