import type { Corner } from '../../engine/geometry/polygon';
import { cutOuts } from '../airframe/cutOuts';
import type { Aircraft } from '../document/types';
import { type CutOutPlan, cutOutPlan } from '../fit/cutOutSvg';
import { type Block, BREAK, drawn, heading, words } from './blocks';
import { type Drawing, line, type Shape, type Spot } from './drawing';
import type { Size } from './paper';
import { RULERS_HIGH_MM, rulers } from './ruler';
import { OVERLAP_MM, type Tile, tilesOf } from './tiles';

/** A sheet at 1:1, before it is cut into pages. */
export interface Template extends Size {
  readonly id: string;
  readonly title: string;
  readonly shapes: readonly Shape[];
  /** Left of a page that this one shares: not to be cut. */
  readonly hint: string;
}

/** More sheets than this are not printed of one template. */
const MOST_TILES = 16;
/** What heading, sentence and rulers take of a page, mm. */
const AROUND_MM = 32 + RULERS_HIGH_MM;

const polygonOf = (points: readonly Corner[], style: 'outline' | 'hidden', of: string): Shape => ({
  kind: 'polygon',
  points: points.map(([x, y]): Spot => [x, y]),
  line: style,
  of,
});

/** The template of a cut-out without head and ruler, which every page has of its own. */
export function cutOutTemplate(plan: CutOutPlan, id: string): Template {
  const all = [...plan.faceMm, ...plan.cutMm];
  const [xs, ys] = [all.map(([x]) => x), all.map(([, y]) => y)];
  const [left, top] = [Math.min(...xs) - 2, Math.min(...ys) - 2];
  const moved = (corners: readonly Corner[]) => corners.map(([x, y]): Corner => [x - left, y - top]);
  return {
    id,
    title: plan.title,
    hint: `${plan.depth}. The block’s face dashed, the cut continuous, seen from outside.`,
    wideMm: Math.max(...xs) - left + 2,
    highMm: Math.max(...ys) - top + 2,
    shapes: [polygonOf(moved(plan.faceMm), 'hidden', 'face'), polygonOf(moved(plan.cutMm), 'outline', 'cut')],
  };
}

/** Every cut-out of the aircraft at 1:1. */
export const cutOutTemplates = (aircraft: Aircraft): readonly Template[] =>
  cutOuts(aircraft).map((cut) => cutOutTemplate(cutOutPlan(cut), `cut ${cut.pieceId} ${cut.partId}`));

/** A template on as many pages as it needs, each with its check rulers. */
export function templateBlocks(template: Template, room: Size): readonly Block[] {
  const tiles = tilesOf(template, { wideMm: room.wideMm, highMm: room.highMm - AROUND_MM });
  if (tiles.length > MOST_TILES)
    return [
      heading(template.title),
      words(
        `This template needs ${tiles.length} pages, more than are printed here; save it from the card of the part and have it printed on one large sheet.`,
        'warn',
      ),
      BREAK,
    ];
  return tiles.flatMap((tile) => [
    heading(`${template.title}${tiles.length > 1 ? `, ${tileWords(tile, tiles)}` : ''}`),
    words(
      `${template.hint} Print at 100 %, not “fit to page”.${
        tiles.length > 1
          ? ` Lay the crosses on each other; neighbouring sheets overlap by ${OVERLAP_MM} mm.`
          : ''
      }`,
    ),
    drawn(tileDrawing(template, tile, tiles, room)),
    BREAK,
  ]);
}

const tileWords = ({ row, column }: Tile, tiles: readonly Tile[]): string => {
  const last = tiles.at(-1)!;
  return `sheet ${row * (last.column + 1) + column + 1} of ${tiles.length} (row ${row + 1}, column ${column + 1})`;
};

function tileDrawing(template: Template, tile: Tile, tiles: readonly Tile[], room: Size): Drawing {
  const { leftMm, topMm, wideMm, highMm } = tile;
  const moved = template.shapes.map((shape) => movedShape(shape, -leftMm, -topMm));
  return {
    id: `${template.id} ${tile.row} ${tile.column}`,
    title: template.title,
    wideMm: room.wideMm,
    highMm: highMm + RULERS_HIGH_MM + 4,
    shapes: [
      { kind: 'window', at: [0, 0], size: [wideMm, highMm], shapes: moved },
      ...(tiles.length > 1 ? crosses(template, tile) : []),
      ...rulers(0.5, highMm + 4),
    ],
  };
}

/** Crosses in the middle of every overlap, a third of the way along: the same points of the template on both sheets. */
function crosses(whole: Size, { leftMm, topMm, wideMm, highMm }: Tile): readonly Shape[] {
  const half = OVERLAP_MM / 2;
  const thirds = (from: number, long: number) => [from + long / 3, from + (2 * long) / 3];
  const places: Corner[] = [];
  const right = leftMm + wideMm;
  const bottom = topMm + highMm;
  if (leftMm > 0) for (const y of thirds(topMm, highMm)) places.push([leftMm + half, y]);
  if (right < whole.wideMm - 1e-9) for (const y of thirds(topMm, highMm)) places.push([right - half, y]);
  if (topMm > 0) for (const x of thirds(leftMm, wideMm)) places.push([x, topMm + half]);
  if (bottom < whole.highMm - 1e-9) for (const x of thirds(leftMm, wideMm)) places.push([x, bottom - half]);
  return places.flatMap(([x, y]) => {
    const [px, py] = [x - leftMm, y - topMm];
    return [
      line([px - 4, py], [px + 4, py], 'thin', 'overlap'),
      line([px, py - 4], [px, py + 4], 'thin', 'overlap'),
    ];
  });
}

/** A shape somewhere else. */
export function movedShape(shape: Shape, dx: number, dy: number): Shape {
  const at = ([x, y]: Spot): Spot => [x + dx, y + dy];
  switch (shape.kind) {
    case 'polygon':
    case 'polyline':
      return { ...shape, points: shape.points.map(at) };
    case 'circle':
    case 'words':
      return { ...shape, at: at(shape.at) };
    case 'window':
      return { ...shape, at: at(shape.at), shapes: shape.shapes.map((inner) => movedShape(inner, dx, dy)) };
  }
}
