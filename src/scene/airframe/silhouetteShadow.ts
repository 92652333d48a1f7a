import { DataTexture, LinearFilter, RGFormat, UnsignedByteType } from 'three';
import { pointToAircraft } from '../../engine/geometry/rotation';
import type { Vec3 } from '../../engine/geometry/types';
import { mirrorY } from '../../engine/geometry/vec3';
import { tessellate } from '../../engine/mass/tessellate';
import type { Piece } from '../../model/airframe/pieces';

/** From left to right and from near to far on the mat, mm: [minX, minY, maxX, maxY]. */
export type Rect = readonly [minX: number, minY: number, maxX: number, maxY: number];

/** Pixels along the longer side. */
const SIZE = 320;

/** The soft shadow on the mat: red what hangs above it, green what touches it. */
export function silhouetteShadow(pieces: readonly Piece[], rect: Rect): DataTexture {
  const scale = SIZE / Math.max(rect[2] - rect[0], rect[3] - rect[1]);
  const width = Math.max(4, Math.round((rect[2] - rect[0]) * scale));
  const height = Math.max(4, Math.round((rect[3] - rect[1]) * scale));
  const layer = (of: readonly Piece[], blurMm: number) =>
    softened(filled(of, rect, scale, width, height), width, height, Math.max(1, Math.round(blurMm * scale)));
  const hanging = layer(
    pieces.filter((piece) => piece.kind !== 'wheel'),
    42,
  );
  const touching = layer(
    pieces.filter((piece) => piece.kind === 'wheel'),
    12,
  );
  const data = new Uint8Array(width * height * 2);
  for (let i = 0; i < width * height; i += 1) {
    data[2 * i] = hanging[i] ?? 0;
    data[2 * i + 1] = touching[i] ?? 0;
  }
  const texture = new DataTexture(data, width, height, RGFormat, UnsignedByteType);
  texture.minFilter = LinearFilter;
  texture.magFilter = LinearFilter;
  texture.needsUpdate = true;
  return texture;
}

/** What the pieces cover seen from above, 255 or 0 for each pixel, the first row nearest to minY. */
function filled(
  pieces: readonly Piece[],
  rect: Rect,
  scale: number,
  width: number,
  height: number,
): Float32Array {
  const cover = new Float32Array(width * height);
  const canvas = document.createElement('canvas');
  canvas.width = width;
  canvas.height = height;
  const pen = canvas.getContext('2d', { willReadFrequently: true });
  if (!pen) return cover;
  // Filling closes each triangle.
  pen.beginPath();
  for (const piece of pieces) {
    const { verticesMm, triangles } = tessellate(piece.shape, { segments: 12 });
    const points = verticesMm.map((vertex): Vec3 => {
      const point = pointToAircraft(piece.pose, vertex);
      return piece.mirrored ? mirrorY(point) : point;
    });
    for (const triangle of triangles) {
      const [a, b, c] = triangle.map((i) => points[i] as Vec3) as [Vec3, Vec3, Vec3];
      // All one way round, so that what overlaps adds up instead of cancelling out.
      const flip = (b[0] - a[0]) * (c[1] - a[1]) < (b[1] - a[1]) * (c[0] - a[0]);
      for (const [i, p] of (flip ? [a, c, b] : [a, b, c]).entries()) {
        pen[i === 0 ? 'moveTo' : 'lineTo']((p[0] - rect[0]) * scale, (p[1] - rect[1]) * scale);
      }
    }
  }
  pen.fill();
  const { data } = pen.getImageData(0, 0, width, height);
  for (let i = 0; i < cover.length; i += 1) cover[i] = data[4 * i + 3] ?? 0;
  return cover;
}

/** Three box blurs each way, close to a Gaussian. */
function softened(image: Float32Array, width: number, height: number, radius: number): Float32Array {
  const from = image;
  const to = new Float32Array(image.length);
  for (let pass = 0; pass < 3; pass += 1) {
    blurLines(from, to, { lines: height, length: width, lineStep: width, step: 1, radius });
    blurLines(to, from, { lines: width, length: height, lineStep: 1, step: width, radius });
  }
  return from;
}

interface BlurRun {
  readonly lines: number;
  readonly length: number;
  readonly lineStep: number;
  readonly step: number;
  readonly radius: number;
}

function blurLines(from: Float32Array, to: Float32Array, run: BlurRun): void {
  const { lines, length, lineStep, step, radius } = run;
  const share = 1 / (2 * radius + 1);
  for (let line = 0; line < lines; line += 1) {
    const start = line * lineStep;
    let sum = 0;
    for (let k = 0; k <= Math.min(radius, length - 1); k += 1) sum += from[start + k * step] ?? 0;
    for (let k = 0; k < length; k += 1) {
      to[start + k * step] = sum * share;
      if (k + radius + 1 < length) sum += from[start + (k + radius + 1) * step] ?? 0;
      if (k - radius >= 0) sum -= from[start + (k - radius) * step] ?? 0;
    }
  }
}
