/** A box on the stage, px from its top left corner. */
export interface LabelBox {
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
}

export interface LabelAsk {
  readonly id: string;
  /** The point that it names, px. */
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
  /** Looked for a place all over the stage before it is given up. */
  readonly must: boolean;
}

export interface PlacedLabel extends LabelBox {
  /** From the box to the point, where it stands too far off to speak for itself. */
  readonly leader: readonly [fromX: number, fromY: number, toX: number, toY: number] | null;
}

const GAP_PX = 4;
/** Nothing comes nearer to the edge of the stage. */
const EDGE_PX = 6;
/** From the point to the near edge of the box. */
const RINGS_PX = [12, 26, 44, 66, 92, 124, 160] as const;
/** Above, to either side, below, and between; the first that is free is taken. */
const WAYS = [
  [0, -1],
  [0.7, -0.7],
  [-0.7, -0.7],
  [1, 0],
  [-1, 0],
  [0.7, 0.7],
  [-0.7, 0.7],
  [0, 1],
] as const;
/** Nearer than that a label touches what it names. */
const LEADER_FROM_PX = 10;
/** Steps of the last search over the stage. */
const SEARCH_PX = 24;

/** Whether two boxes come nearer than a small gap. */
export const overlap = (a: LabelBox, b: LabelBox): boolean =>
  a.left < b.left + b.width + GAP_PX &&
  b.left < a.left + a.width + GAP_PX &&
  a.top < b.top + b.height + GAP_PX &&
  b.top < a.top + a.height + GAP_PX;

const isInside = ({ left, top, width, height }: LabelBox, stage: LabelBox): boolean =>
  left >= EDGE_PX &&
  top >= EDGE_PX &&
  left + width <= stage.width - EDGE_PX &&
  top + height <= stage.height - EDGE_PX;

/** The box whose near edge lies so far from the point on a way. */
function boxOnWay(
  { x, y, width, height }: LabelAsk,
  [dx, dy]: readonly [number, number],
  far: number,
): LabelBox {
  return {
    left: x + dx * far + (dx > 0.5 ? 0 : dx < -0.5 ? -width : -width / 2),
    top: y + dy * far + (dy > 0.5 ? 0 : dy < -0.5 ? -height : -height / 2),
    width,
    height,
  };
}

const clamp = (value: number, low: number, high: number): number => Math.min(high, Math.max(low, value));

function leaderOf({ x, y }: LabelAsk, box: LabelBox): PlacedLabel['leader'] {
  const fromX = clamp(x, box.left + 6, box.left + box.width - 6);
  const fromY = clamp(y, box.top, box.top + box.height);
  return Math.hypot(x - fromX, y - fromY) > LEADER_FROM_PX ? [fromX, fromY, x, y] : null;
}

/** Whether a stretch passes through a box (Liang and Barsky, 1984). */
export function crosses([x0, y0, x1, y1]: readonly [number, number, number, number], box: LabelBox): boolean {
  let [from, to] = [0, 1];
  const sides = [
    [x0 - x1, x0 - box.left],
    [x1 - x0, box.left + box.width - x0],
    [y0 - y1, y0 - box.top],
    [y1 - y0, box.top + box.height - y0],
  ] as const;
  for (const [p, q] of sides) {
    if (p === 0) {
      if (q < 0) return false;
    } else if (p < 0) from = Math.max(from, q / p);
    else to = Math.min(to, q / p);
    if (from > to) return false;
  }
  return true;
}

/** How a label stood to its point in the frame before, px. */
export type Offsets = ReadonlyMap<string, readonly [dx: number, dy: number]>;

/**
 * Places for labels, the first asked for first: none covers another or one of the `taken` boxes, no leader crosses a
 * label that stands already. A label keeps its place beside its point from one frame to the next while that is free;
 * one without room is left out.
 */
export function labelLayout(
  asks: readonly LabelAsk[],
  taken: readonly LabelBox[],
  stage: LabelBox,
  before: Offsets = new Map(),
): ReadonlyMap<string, PlacedLabel> {
  const used = [...taken];
  const labels: LabelBox[] = [];
  const leaders: NonNullable<PlacedLabel['leader']>[] = [];
  const places = new Map<string, PlacedLabel>();
  const isFree = (ask: LabelAsk, box: LabelBox): boolean => {
    if (!isInside(box, stage) || used.some((other) => overlap(other, box))) return false;
    const leader = leaderOf(ask, box);
    return (
      !leaders.some((line) => crosses(line, box)) &&
      (!leader || !labels.some((other) => crosses(leader, other)))
    );
  };
  for (const ask of asks) {
    const box = firstFree(candidates(ask, stage, before.get(ask.id)), (candidate) => isFree(ask, candidate));
    if (!box) continue;
    const leader = leaderOf(ask, box);
    used.push(box);
    labels.push(box);
    if (leader) leaders.push(leader);
    places.set(ask.id, { ...box, leader });
  }
  return places;
}

/** One after the other, for nearly always the first will do. */
function* candidates(
  ask: LabelAsk,
  stage: LabelBox,
  before: readonly [number, number] | undefined,
): Generator<LabelBox> {
  const { x, y, width, height, must } = ask;
  if (x < 0 || y < 0 || x > stage.width || y > stage.height) return;
  if (before) yield { left: x + before[0], top: y + before[1], width, height };
  for (const far of RINGS_PX) for (const way of WAYS) yield boxOnWay(ask, way, far);
  // Slid along the edge where the point lies close to it.
  for (const far of RINGS_PX.slice(0, 3)) {
    for (const way of WAYS) {
      const box = boxOnWay(ask, way, far);
      yield {
        ...box,
        left: clamp(box.left, EDGE_PX, stage.width - width - EDGE_PX),
        top: clamp(box.top, EDGE_PX, stage.height - height - EDGE_PX),
      };
    }
  }
  if (must) yield* everywhere(ask, stage);
}

function firstFree(boxes: Iterable<LabelBox>, isFree: (box: LabelBox) => boolean): LabelBox | null {
  for (const box of boxes) if (isFree(box)) return box;
  return null;
}

/** Places all over the stage, the nearest to the point first. */
function everywhere({ x, y, width, height }: LabelAsk, stage: LabelBox): LabelBox[] {
  const all: LabelBox[] = [];
  for (let top = EDGE_PX; top + height <= stage.height - EDGE_PX; top += SEARCH_PX) {
    for (let left = EDGE_PX; left + width <= stage.width - EDGE_PX; left += SEARCH_PX) {
      all.push({ left, top, width, height });
    }
  }
  const away = (box: LabelBox) => Math.hypot(box.left + width / 2 - x, box.top + height / 2 - y);
  return all.sort((a, b) => away(a) - away(b));
}
