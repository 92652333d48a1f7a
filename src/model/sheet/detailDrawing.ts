import { type Drawing, rectCorners, type Shape } from './drawing';
import { ROW_MM, rowLabelShapes } from './labelShapes';
import type { Numbered } from './numbered';
import type { Size } from './paper';
import { projection, type SeenBox, type SheetView } from './projection';
import { rowLabels } from './rowLabels';
import { figureOf, type ViewInput } from './viewInput';
import { airframeShapes, itemShapes, markShapes } from './viewShapes';
import { labelRowsIn } from './wholeDrawing';

interface DetailOptions {
  readonly window: SeenBox;
  /** What is labelled here. */
  readonly lot: readonly Numbered[];
  readonly scale: number;
  readonly room: Size;
  readonly at: number;
}

/** From the frame of a detail to the labels above and below it, mm. */
const EDGE_MM = 5;

/** What lies in a window, enlarged, with the labels above and below it. */
export function detailDrawing(
  { aircraft, things, marks, say }: ViewInput,
  view: SheetView,
  { window, lot, scale, room, at }: DetailOptions,
): Drawing {
  const topMm = ROW_MM + EDGE_MM;
  const place = projection(view, window, scale, { fromMm: 0, toMm: room.wideMm, topMm });
  const { area } = place;
  const rows = { ...labelRowsIn(room.wideMm), topMm: ROW_MM, bottomMm: area.bottomMm + EDGE_MM };
  const labels = rowLabels(
    lot.map(({ id, cgMm }) => ({ id, at: place.spot(cgMm) })),
    rows,
  );
  const inside: readonly Shape[] = [
    ...airframeShapes(aircraft, place),
    ...itemShapes(aircraft, things, place),
    ...markShapes(marks, place, area),
  ];
  const size = [area.rightMm - area.leftMm, area.bottomMm - area.topMm] as const;
  return {
    id: `${view}-detail-${at}`,
    title: 'What stands inside, enlarged',
    wideMm: room.wideMm,
    highMm: area.bottomMm + EDGE_MM + ROW_MM,
    shapes: [
      { kind: 'window', at: [area.leftMm, area.topMm], size, shapes: inside },
      { kind: 'polygon', points: rectCorners(area), line: 'thin', of: 'frame' },
      ...(labels ?? []).flatMap((label) => {
        const thing = things.find(({ id }) => id === label.id)!;
        return rowLabelShapes(label, { number: thing.number, figure: figureOf(thing.cgMm, view, say) });
      }),
    ],
  };
}
