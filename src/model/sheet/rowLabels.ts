import type { Spot } from './drawing';
import { fitsRow, spread } from './spread';

/** Something to be labelled. */
export interface Labelled {
  readonly id: string;
  readonly at: Spot;
}

/** Where a label stands: its leader runs straight from the thing to `to`. */
export interface PlacedLabel extends Labelled {
  readonly to: Spot;
  readonly row: 'top' | 'bottom';
}

/** Two rows of labels, one above what is drawn and one below. */
export interface LabelRows {
  /** Where the leaders of a row end. */
  readonly topMm: number;
  readonly bottomMm: number;
  /** The middles of the first and the last label. */
  readonly fromMm: number;
  readonly toMm: number;
  /** From the middle of a label to that of the next, at the least. */
  readonly gapMm: number;
}

/** How many labels two rows take. */
export const rowsTake = ({ fromMm, toMm, gapMm }: LabelRows): number => 2 * fitsRow(fromMm, toMm, gapMm);

/**
 * Labels in a row above and a row below, so that no two labels overlap and no two leaders cross. The upper half of the things
 * goes to the upper row, so the leaders of the two rows lie on either side of a level line. Within a row two leaders that
 * cross are given each other's label, which makes both together shorter (the triangle inequality); as there are only so many
 * ways to deal the labels, that ends, and then none cross. Null where there are more things than labels.
 */
export function rowLabels(things: readonly Labelled[], rows: LabelRows): readonly PlacedLabel[] | null {
  const most = rowsTake(rows) / 2;
  if (things.length > 2 * most) return null;
  const down = [...things].sort((a, b) => a.at[1] - b.at[1] || a.at[0] - b.at[0]);
  const half = Math.ceil(down.length / 2);
  return [...oneRow(down.slice(0, half), 'top', rows), ...oneRow(down.slice(half), 'bottom', rows)];
}

function oneRow(
  things: readonly Labelled[],
  row: PlacedLabel['row'],
  rows: LabelRows,
): readonly PlacedLabel[] {
  const yMm = row === 'top' ? rows.topMm : rows.bottomMm;
  const across = [...things].sort((a, b) => a.at[0] - b.at[0] || a.at[1] - b.at[1]);
  const places = spread(
    across.map(({ at }) => at[0]),
    rows,
  );
  const placed = across.map((thing, at): PlacedLabel => ({ ...thing, to: [places?.[at] ?? 0, yMm], row }));
  return uncrossed(placed);
}

function uncrossed(labels: readonly PlacedLabel[]): readonly PlacedLabel[] {
  const now = [...labels];
  for (let again = true; again; ) {
    again = false;
    for (let i = 0; i < now.length; i += 1)
      for (let j = i + 1; j < now.length; j += 1) {
        const [a, b] = [now[i]!, now[j]!];
        if (!leadersCross(a, b)) continue;
        now[i] = { ...a, to: b.to };
        now[j] = { ...b, to: a.to };
        again = true;
      }
  }
  return now;
}

const sideOf = (a: Spot, b: Spot, p: Spot): number =>
  (b[0] - a[0]) * (p[1] - a[1]) - (b[1] - a[1]) * (p[0] - a[0]);

/** Whether two straight leaders cross at a point inside both. */
export function leadersCross(a: Pick<PlacedLabel, 'at' | 'to'>, b: Pick<PlacedLabel, 'at' | 'to'>): boolean {
  const [p, q] = [sideOf(a.at, a.to, b.at), sideOf(a.at, a.to, b.to)];
  const [r, s] = [sideOf(b.at, b.to, a.at), sideOf(b.at, b.to, a.to)];
  return p * q < -SLIVER && r * s < -SLIVER;
}

/** Less is rounding, mm⁴: the product of two areas. */
const SLIVER = 1e-12;
