/** A box on the stage, px from its top left corner. */
export interface LabelBox {
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
}

export interface LabelAsk {
  readonly id: string;
  /** Where it points: the middle of its bottom edge goes a little above. */
  readonly at: readonly [x: number, y: number];
  readonly width: number;
  readonly height: number;
  /** Shown whatever it covers. */
  readonly must: boolean;
}

const GAP_PX = 4;
const ABOVE_PX = 10;

const overlap = (a: LabelBox, b: LabelBox) =>
  a.left < b.left + b.width + GAP_PX &&
  b.left < a.left + a.width + GAP_PX &&
  a.top < b.top + b.height + GAP_PX &&
  b.top < a.top + a.height + GAP_PX;

const boxFor = ({ at: [x, y], width, height }: LabelAsk, stage: LabelBox): LabelBox => ({
  left: Math.min(Math.max(x - width / 2, 6), Math.max(stage.width - width - 6, 6)),
  top: Math.min(Math.max(y - height - ABOVE_PX, 6), Math.max(stage.height - height - 6, 6)),
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
    const box = boxFor(ask, stage);
    if (!ask.must && used.some((other) => overlap(box, other))) continue;
    used.push(box);
    places.set(ask.id, box);
  }
  return places;
}
