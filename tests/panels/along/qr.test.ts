import jsqr from 'jsqr';
import { expect, test } from 'vitest';
import { codeBits, fitsCode, overCodePct } from '../../../src/panels/along/qrRoom';
import { QUIET_SQUARES, qrSquares, squaresPath } from '../../../src/panels/along/qrSquares';
import { chanceOf } from '../../fuzz/chance';
import { seed } from '../../seed';

// jsqr is packed as CommonJS with a default of its own.
const readQr = (jsqr as unknown as { readonly default?: typeof jsqr }).default ?? jsqr;

const FRONT = 'https://example.org/bench/#aircraft=N';

const digitsOf = (length: number) => {
  const { below } = chanceOf(seed);
  return Array.from({ length }, () => below(10)).join('');
};

/** The code as a picture, `scale` pixels a square, as a camera would have it; read by an outside library. */
function readBack(front: string, digits: string, scale: number): string | undefined {
  const { side, isDark } = qrSquares(front, digits);
  const wide = (side + 2 * QUIET_SQUARES) * scale;
  const pixels = new Uint8ClampedArray(wide * wide * 4).fill(255);
  for (let y = 0; y < wide; y += 1) {
    for (let x = 0; x < wide; x += 1) {
      const [row, column] = [y, x].map((at) => Math.floor(at / scale) - QUIET_SQUARES) as [number, number];
      const inside = row >= 0 && column >= 0 && row < side && column < side;
      if (inside && isDark(row, column)) pixels.fill(0, 4 * (y * wide + x), 4 * (y * wide + x) + 3);
    }
  }
  return readQr(pixels, wide, wide)?.data;
}

test('an outside reader reads the very link, small and large', () => {
  for (const length of [1, 2, 3, 400, 6900]) {
    const digits = digitsOf(length);
    expect(fitsCode(FRONT, digits)).toBe(true);
    expect(readBack(FRONT, digits, 3)).toBe(FRONT + digits);
  }
});

test('the room is that of the standard: 7089 digits or 2953 bytes, and the code is made up to the very last bit', () => {
  // ISO/IEC 18004, capacities of version 40-L; there a code is of one stretch only, so the other one’s head is taken off.
  const [front, digits] = [4 + 16, 4 + 14];
  expect(codeBits(0, 7089) - front).toBeLessThanOrEqual(23_648);
  expect(codeBits(0, 7090) - front).toBeGreaterThan(23_648);
  expect(codeBits(2953, 0) - digits).toBeLessThanOrEqual(23_648);
  expect(codeBits(2954, 0) - digits).toBeGreaterThan(23_648);
  let most = 6900;
  while (fitsCode(FRONT, digitsOf(most + 1))) most += 1;
  expect(qrSquares(FRONT, digitsOf(most)).side).toBe(177);
  expect(() => qrSquares(FRONT, digitsOf(most + 1))).toThrow(/overflow/);
  expect(overCodePct(FRONT, digitsOf(most + 1))).toBe(1);
});

test('each dark square is drawn once', () => {
  const code = qrSquares(FRONT, '12');
  const drawn = squaresPath(code).match(/M/g)?.length;
  let dark = 0;
  for (let at = 0; at < code.side ** 2; at += 1)
    dark += Number(code.isDark(Math.floor(at / code.side), at % code.side));
  expect(drawn).toBe(dark);
});
