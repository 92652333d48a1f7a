import qrcode from 'qrcode-generator';

/** A QR code: so many squares along each side, and which of them are dark. */
export interface QrSquares {
  readonly side: number;
  isDark(row: number, column: number): boolean;
}

/** The light border that a reader needs, squares (ISO/IEC 18004). */
export const QUIET_SQUARES = 4;

/** A code of some plain text and digits behind it, in the smallest size that holds them; see `fitsCode`. */
export function qrSquares(front: string, digits: string): QrSquares {
  const code = qrcode(0, 'L');
  code.addData(front, 'Byte');
  code.addData(digits, 'Numeric');
  code.make();
  return { side: code.getModuleCount(), isDark: (row, column) => code.isDark(row, column) };
}

/** The dark squares as one outline for an SVG path, the border left to the drawing. */
export function squaresPath({ side, isDark }: QrSquares): string {
  let path = '';
  for (let row = 0; row < side; row += 1) {
    for (let column = 0; column < side; column += 1) {
      if (isDark(row, column)) path += `M${column} ${row}h1v1h-1z`;
    }
  }
  return path;
}
