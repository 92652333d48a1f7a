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
  const placed = stacked(blocks, Number.POSITIVE_INFINITY);
  const pressed = Math.min(1, roomPx / stackTop(placed));
  return placed.map((block) => ({ ...block, offPx: block.offPx * pressed }));
}

/** Whether they can be stacked in the room there is without being pressed together. */
export const stackFits = (blocks: readonly Block[], roomPx: number): boolean =>
  stacked(blocks, roomPx).length === blocks.length;

/** All that can be stacked, the largest first, up to the first that stands higher than the limit. */
function stacked(blocks: readonly Block[], limitPx: number): Stacked[] {
  const placed: Stacked[] = [];
  const columns: Columns = new Map();
  for (const block of [...blocks].sort((a, b) => b.sizePx - a.sizePx)) {
    const offPx = footOf(columns, block);
    if (offPx + block.sizePx > limitPx) break;
    const standing = { ...block, offPx };
    placed.push(standing);
    enter(columns, standing);
  }
  return placed;
}

/** What reaches into each column, the lowest first. */
type Columns = Map<number, Stacked[]>;

/** The first or last column that a weight reaches into with half of the gap round it: weights that touch share one. */
const columnAt = ({ xPx, sizePx }: Block, side: -1 | 1): number =>
  Math.floor((xPx + (side * (sizePx + GAP_PX)) / 2) / COLUMN_PX);

function enter(columns: Columns, block: Stacked): void {
  for (let column = columnAt(block, -1); column <= columnAt(block, 1); column += 1) {
    const there = columns.get(column) ?? [];
    let at = there.length;
    while (at > 0 && there[at - 1]!.offPx > block.offPx) at -= 1;
    there.splice(at, 0, block);
    columns.set(column, there);
  }
}

/** The lowest foot at which a weight is clear of all that stands beside it, px: lifted off what is in the way until nothing is. */
function footOf(columns: Columns, block: Block): number {
  const [from, to] = [columnAt(block, -1), columnAt(block, 1)];
  let offPx = 0;
  for (let lifted = true; lifted; ) {
    lifted = false;
    for (let column = from; column <= to; column += 1) {
      const clearPx = clearOf(columns.get(column) ?? NONE, block, offPx);
      if (clearPx > offPx) [offPx, lifted] = [clearPx, true];
    }
  }
  return offPx;
}

const NONE: readonly Stacked[] = [];

/** How far up a weight must go from where it is to be clear of what reaches into one column, px. */
function clearOf(column: readonly Stacked[], block: Block, fromPx: number): number {
  let offPx = fromPx;
  for (const other of column) {
    // The lowest come first.
    if (other.offPx - offPx >= block.sizePx + GAP_PX) break;
    const topPx = other.offPx + other.sizePx + GAP_PX;
    if (topPx > offPx && isBeside(other, block)) offPx = topPx;
  }
  return offPx;
}

/** Whether two stand so near each other along the beam that one must stand on the other. */
const isBeside = (a: Block, b: Block): boolean =>
  Math.abs(a.xPx - b.xPx) < (a.sizePx + b.sizePx) / 2 + GAP_PX;

/** How high the highest stack is, px. */
export const stackTop = (stacked: readonly Stacked[]): number =>
  stacked.reduce((top, { offPx, sizePx }) => Math.max(top, offPx + sizePx), 0);
