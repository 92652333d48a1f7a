/** What the drawing needs to know of one weight to stack it. */
export interface Block {
  readonly key: string;
  /** Its middle along the beam, px. */
  readonly xPx: number;
  readonly sizePx: number;
}

export interface Stacked extends Block {
  /** How far its foot stands off the beam, px. */
  readonly offPx: number;
}

/** Space left between two weights, px. */
const GAP_PX = 1.5;
/** How wide the columns are in which a weight looks for others beside it, px: about the least weight. */
const COLUMN_PX = 8;

/**
 * Stacks weights off the beam so that none hides another: the largest stands on it, a smaller one that
 * would overlap stands on top of what is there. A stack higher than `roomPx` is pressed together.
 */
export function stackBlocks(blocks: readonly Block[], roomPx: number): Stacked[] {
  const placed: Stacked[] = [];
  const columns = new Map<number, Stacked[]>();
  for (const block of [...blocks].sort((a, b) => b.sizePx - a.sizePx)) {
    let offPx = 0;
    for (const other of besideIn(columns, block)) {
      if (other.offPx - offPx >= block.sizePx + GAP_PX) break;
      offPx = Math.max(offPx, other.offPx + other.sizePx + GAP_PX);
    }
    const stacked = { ...block, offPx };
    placed.push(stacked);
    for (let column = columnAt(block, -1); column <= columnAt(block, 1); column += 1) {
      const there = columns.get(column);
      if (there) there.push(stacked);
      else columns.set(column, [stacked]);
    }
  }
  const pressed = Math.min(1, roomPx / stackTop(placed));
  return placed.map((block) => ({ ...block, offPx: block.offPx * pressed }));
}

/** The first or last column that a weight reaches into with half of the gap round it: weights that touch share one. */
const columnAt = ({ xPx, sizePx }: Block, side: -1 | 1): number =>
  Math.floor((xPx + (side * (sizePx + GAP_PX)) / 2) / COLUMN_PX);

/** What stands so near that it would overlap, the lowest first; what reaches into several columns may come again. */
function besideIn(columns: ReadonlyMap<number, readonly Stacked[]>, block: Block): readonly Stacked[] {
  const beside: Stacked[] = [];
  for (let column = columnAt(block, -1); column <= columnAt(block, 1); column += 1) {
    for (const other of columns.get(column) ?? []) {
      if (Math.abs(other.xPx - block.xPx) < (other.sizePx + block.sizePx) / 2 + GAP_PX) beside.push(other);
    }
  }
  return beside.sort((a, b) => a.offPx - b.offPx);
}

/** How high the highest stack is, px. */
export const stackTop = (stacked: readonly Stacked[]): number =>
  stacked.reduce((top, { offPx, sizePx }) => Math.max(top, offPx + sizePx), 0);
