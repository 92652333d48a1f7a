/** A box on the stage, px from its top left corner. */
export interface LabelBox {
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
}

export interface LabelAsk {
  readonly id: string;
  /** What it names, px: the label goes a little above its top, or, where it must be shown, below its bottom. */
  readonly x: number;
  readonly topPx: number;
  readonly bottomPx: number;
  readonly width: number;
  readonly height: number;
  /** Shown whatever it covers. */
  readonly must: boolean;
}

const GAP_PX = 4;
const OFF_PX = 10;
/** Nothing comes nearer to the edge of the stage. */
const EDGE_PX = 6;

/** Whether two boxes come nearer than a small gap. */
export const overlap = (a: LabelBox, b: LabelBox) =>
  a.left < b.left + b.width + GAP_PX &&
  b.left < a.left + a.width + GAP_PX &&
  a.top < b.top + b.height + GAP_PX &&
  b.top < a.top + a.height + GAP_PX;

const boxAt = ({ x, width, height }: LabelAsk, top: number, stage: LabelBox): LabelBox => ({
  left: Math.min(Math.max(x - width / 2, EDGE_PX), Math.max(stage.width - width - EDGE_PX, EDGE_PX)),
  top: Math.min(Math.max(top, EDGE_PX), Math.max(stage.height - height - EDGE_PX, EDGE_PX)),
  width,
  height,
});

/**
 * Places for labels, the first asked for first: one that would cover another, or one of the `taken`
 * boxes, is left out unless it must be shown.
 */
export function labelPlaces(
  asks: readonly LabelAsk[],
  taken: readonly LabelBox[],
  stage: LabelBox,
): ReadonlyMap<string, LabelBox> {
  const used = [...taken];
  const places = new Map<string, LabelBox>();
  for (const ask of asks) {
    const above = boxAt(ask, ask.topPx - ask.height - OFF_PX, stage);
    const below = boxAt(ask, ask.bottomPx + OFF_PX, stage);
    const free = (ask.must ? [above, below] : [above]).find(
      (one) => !used.some((other) => overlap(one, other)),
    );
    if (!free && !ask.must) continue;
    const box = free ?? above;
    used.push(box);
    places.set(ask.id, box);
  }
  return places;
}
