import { type Rect, rectsOverlap, type Spot } from './drawing';
import { type Labelled, leadersCross } from './rowLabels';

/** A label beside its thing. */
export interface NearLabel extends Labelled {
  readonly box: Rect;
  /** Where the leader ends: on the edge of the box. */
  readonly to: Spot;
}

export interface NearOptions {
  readonly wideMm: number;
  readonly highMm: number;
  /** That no label leaves. */
  readonly within: Rect;
  /** That no label covers, nor leader enters. */
  readonly keepOff: readonly Rect[];
  /** Lines of the drawing, which a label covers only where there is no other place. */
  readonly lines?: readonly (readonly [Spot, Spot])[];
}

const RADII = [6, 9, 13, 18, 24, 32, 42, 55, 70, 90] as const;
const WAYS = 24;
/** Kept clear around the mark of every thing, mm. */
const MARK_MM = 1.2;

export interface NearLabels {
  readonly placed: readonly NearLabel[];
  readonly rest: readonly Labelled[];
}

/** So often those that found no room may go first. */
const ROUNDS = 8;

/**
 * Labels, each at the nearest place where it covers no label, no mark and nothing that is kept off, and where its leader
 * crosses no other and runs through no label. Those that find no room go first in another round; those for which there
 * is none in the best of all rounds are left in `rest`.
 */
export function nearLabels(items: readonly Labelled[], options: NearOptions): NearLabels {
  let best = inTurn(items, options);
  let order = items;
  let last = best;
  for (let round = 1; round < ROUNDS && best.rest.length > 0; round++) {
    const { rest } = last;
    order = [...rest, ...order.filter((item) => !rest.includes(item))];
    last = inTurn(order, options);
    if (last.rest.length < best.rest.length) best = last;
  }
  return best;
}

/** Labels set down one after the other, each in the best place that those before it leave. */
function inTurn(items: readonly Labelled[], options: NearOptions): NearLabels {
  const placed: NearLabel[] = [];
  const rest: Labelled[] = [];
  const marks = items.map(({ at }) => around(at, MARK_MM));
  for (const item of items) {
    const possible = candidates(item, options).filter(
      (label) =>
        isWithin(label.box, options.within) &&
        ![...options.keepOff, ...marks].some((rect) => rectsOverlap(rect, label.box)) &&
        !options.keepOff.some((rect) => enters(label, rect)) &&
        !placed.some(
          (other) =>
            rectsOverlap(other.box, label.box) ||
            leadersCross(other, label) ||
            enters(label, other.box) ||
            enters(other, label.box),
        ),
    );
    const found = possible.find(({ box }) => !coversLine(box, options.lines ?? [])) ?? possible[0];
    if (found) placed.push(found);
    else rest.push(item);
  }
  return { placed, rest };
}

const coversLine = (box: Rect, lines: readonly (readonly [Spot, Spot])[]): boolean =>
  lines.some(([at, to]) => enters({ at, to }, box));

function candidates({ id, at }: Labelled, { wideMm, highMm }: NearOptions): readonly NearLabel[] {
  return RADII.flatMap((radius) =>
    Array.from({ length: WAYS }, (_, way): NearLabel => {
      const turn = ((way + 0.5) / WAYS) * 2 * Math.PI;
      const [x, y] = [at[0] + radius * Math.cos(turn), at[1] - radius * Math.sin(turn)];
      const right = x >= at[0];
      const leftMm = right ? x : x - wideMm;
      const box = { leftMm, rightMm: leftMm + wideMm, topMm: y - highMm / 2, bottomMm: y + highMm / 2 };
      return { id, at, box, to: [x, y] };
    }),
  );
}

const around = ([x, y]: Spot, by: number): Rect => ({
  leftMm: x - by,
  rightMm: x + by,
  topMm: y - by,
  bottomMm: y + by,
});

const isWithin = (a: Rect, b: Rect): boolean =>
  a.leftMm >= b.leftMm && a.rightMm <= b.rightMm && a.topMm >= b.topMm && a.bottomMm <= b.bottomMm;

/** Whether a leader runs through a box, its own end on the box's edge apart (Liang and Barsky, 1984). */
export function enters({ at: [x0, y0], to: [x1, y1] }: Pick<NearLabel, 'at' | 'to'>, box: Rect): boolean {
  let [from, to] = [0, 1];
  const walls = [
    [x0 - x1, x0 - box.leftMm],
    [x1 - x0, box.rightMm - x0],
    [y0 - y1, y0 - box.topMm],
    [y1 - y0, box.bottomMm - y0],
  ] as const;
  for (const [step, room] of walls) {
    if (step === 0) {
      if (room <= 0) return false;
    } else if (step < 0) from = Math.max(from, room / step);
    else to = Math.min(to, room / step);
  }
  return to - from > 1e-9;
}
