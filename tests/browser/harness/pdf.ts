import { inflateSync } from 'node:zlib';

/** A straight stroke on a page of a PDF, in mm from the lower left corner. */
export interface Stroke {
  readonly from: readonly [number, number];
  readonly to: readonly [number, number];
}

export interface PdfPages {
  /** Width and height of each page, mm. */
  readonly sizesMm: readonly (readonly [number, number])[];
  /** Every straight segment of every path of all pages. */
  readonly strokes: readonly Stroke[];
}

type Matrix = readonly [number, number, number, number, number, number];

/** A point of PDF is 1/72 in (ISO 32000-1, 8.3.2.3). */
const MM_PER_POINT = 25.4 / 72;

const times = ([a, b, c, d, e, f]: Matrix, [p, q, r, s, t, u]: Matrix): Matrix => [
  a * p + b * r,
  a * q + b * s,
  c * p + d * r,
  c * q + d * s,
  e * p + f * r + t,
  e * q + f * s + u,
];

/** The sizes of the pages and the straight lines on them: as much of a PDF as it takes to hold a ruler against it. */
export function readPdf(bytes: Buffer): PdfPages {
  const text = bytes.toString('latin1');
  const sizesMm = [...text.matchAll(/\/MediaBox\s*\[\s*0 0 ([\d.]+) ([\d.]+)\s*\]/g)].map(
    ([, w, h]) => [Number(w) * MM_PER_POINT, Number(h) * MM_PER_POINT] as const,
  );
  const strokes = [...text.matchAll(/stream\r?\n/g)].flatMap(({ index, 0: word }) => {
    if (text.slice(index - 3, index) === 'end') return [];
    const from = index + word.length;
    const content = inflated(bytes.subarray(from, text.indexOf('endstream', from)));
    return content === null ? [] : strokesOf(content);
  });
  return { sizesMm, strokes };
}

function inflated(stream: Buffer): string | null {
  try {
    const content = inflateSync(stream).toString('latin1');
    return /(^|\n)[\d.-]+ [\d.-]+ m\n/.test(content) ? content : null;
  } catch {
    return null;
  }
}

/** Follows the graphics operators q, Q, cm, m, l and h (ISO 32000-1, table 57 and 59). */
function strokesOf(content: string): readonly Stroke[] {
  const found: Stroke[] = [];
  const saved: Matrix[] = [];
  let matrix: Matrix = [1, 0, 0, 1, 0, 0];
  let numbers: number[] = [];
  let at: readonly [number, number] = [0, 0];
  let start = at;
  const placed = ([x, y]: readonly [number, number]) => {
    const [a, b, c, d, e, f] = matrix;
    return [(a * x + c * y + e) * MM_PER_POINT, (b * x + d * y + f) * MM_PER_POINT] as const;
  };
  const lineTo = (to: readonly [number, number]) => {
    found.push({ from: placed(at), to: placed(to) });
    at = to;
  };
  for (const token of content.split(/\s+/)) {
    const number = Number(token);
    if (token !== '' && Number.isFinite(number)) {
      numbers.push(number);
      continue;
    }
    const [x = 0, y = 0] = numbers.slice(-2);
    if (token === 'q') saved.push(matrix);
    else if (token === 'Q') matrix = saved.pop() ?? matrix;
    else if (token === 'cm') matrix = times(numbers.slice(-6) as unknown as Matrix, matrix);
    else if (token === 'm') {
      at = [x, y];
      start = at;
    } else if (token === 'l') lineTo([x, y]);
    else if (token === 'c' || token === 'v' || token === 'y') at = [x, y];
    else if (token === 'h') lineTo(start);
    numbers = [];
  }
  return found;
}

export const longMm = ({ from, to }: Stroke): number => Math.hypot(to[0] - from[0], to[1] - from[1]);
