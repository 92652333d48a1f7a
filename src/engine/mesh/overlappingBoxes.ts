/**
 * Calls `meet` once for each two boxes that overlap or touch: six figures each, three least and three most. They are sorted
 * into cubes of space, and two are compared in the one cube that the lower corner of what they share lies in.
 */
export function overlappingBoxes(boxes: Float64Array, meet: (s: number, t: number) => void): void {
  const count = boxes.length / 6;
  const grid = gridOver(boxes, count);
  const cells = new Map<number, number[]>();
  for (let t = 0; t < count; t += 1) {
    grid.eachCell(boxes, t, (cell) => {
      const inCell = cells.get(cell);
      if (inCell) inCell.push(t);
      else cells.set(cell, [t]);
    });
  }
  for (const [cell, inCell] of cells) {
    for (let i = 0; i < inCell.length; i += 1) {
      for (let j = i + 1; j < inCell.length; j += 1) {
        const [s, t] = [inCell[i]!, inCell[j]!];
        if (overlap(boxes, s, t) && grid.sharedCell(boxes, s, t) === cell) meet(s, t);
      }
    }
  }
}

const overlap = (boxes: Float64Array, s: number, t: number): boolean =>
  [0, 1, 2].every(
    (axis) =>
      boxes[6 * s + axis]! <= boxes[6 * t + 3 + axis]! && boxes[6 * t + axis]! <= boxes[6 * s + 3 + axis]!,
  );

interface Grid {
  readonly eachCell: (boxes: Float64Array, t: number, put: (cell: number) => void) => void;
  /** The cell of the lower corner of what two boxes share. */
  readonly sharedCell: (boxes: Float64Array, s: number, t: number) => number;
}

/** Cubes about as many to a side as the root of the count: the boxes of a skin's triangles then fill few each. */
function gridOver(boxes: Float64Array, count: number): Grid {
  const side = Math.min(128, Math.max(1, Math.round(Math.sqrt(count) / 2)));
  const low = [0, 1, 2].map((axis) => over(boxes, axis, Math.min));
  const size = [0, 1, 2].map((axis) => (over(boxes, axis + 3, Math.max) - low[axis]!) / side || 1);
  const cellAlong = (axis: number, at: number) =>
    Math.min(side - 1, Math.max(0, Math.floor((at - low[axis]!) / size[axis]!)));
  const number = (i: number, j: number, k: number) => (i * side + j) * side + k;
  return {
    eachCell: (all, t, put) => {
      const from = [0, 1, 2].map((axis) => cellAlong(axis, all[6 * t + axis]!));
      const to = [0, 1, 2].map((axis) => cellAlong(axis, all[6 * t + 3 + axis]!));
      for (let i = from[0]!; i <= to[0]!; i += 1)
        for (let j = from[1]!; j <= to[1]!; j += 1)
          for (let k = from[2]!; k <= to[2]!; k += 1) put(number(i, j, k));
    },
    sharedCell: (all, s, t) => {
      const [i, j, k] = [0, 1, 2].map((axis) =>
        cellAlong(axis, Math.max(all[6 * s + axis]!, all[6 * t + axis]!)),
      ) as [number, number, number];
      return number(i, j, k);
    },
  };
}

function over(boxes: Float64Array, from: number, pick: (a: number, b: number) => number): number {
  let far = boxes[from] ?? 0;
  for (let i = from; i < boxes.length; i += 6) far = pick(far, boxes[i]!);
  return far;
}
