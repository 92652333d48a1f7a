/**
 * What a QR code of the largest size, version 40, holds at its lowest error correction, L: 23 648 bits of data
 * (ISO/IEC 18004, table of data capacities), which are 2953 bytes or 7089 digits.
 */
const ROOM_BITS = 23_648;

/** A stretch begins with 4 bits that say what it is, and in the larger sizes 16 or 14 for how long (the same standard). */
const FRONT_BITS = 4 + 16;
const DIGITS_BITS = 4 + 14;

/** The bits that a stretch of bytes and one of digits take: 8 for each byte; 10 for three digits, 7 for two, 4 for one. */
export const codeBits = (bytes: number, digits: number): number =>
  FRONT_BITS + 8 * bytes + DIGITS_BITS + 10 * Math.floor(digits / 3) + [0, 4, 7][digits % 3]!;

export const fitsCode = (front: string, digits: string): boolean =>
  codeBits(new TextEncoder().encode(front).length, digits.length) <= ROOM_BITS;

/** How far over the largest code it is, in percent of that, rounded up. */
export const overCodePct = (front: string, digits: string): number =>
  Math.ceil((codeBits(new TextEncoder().encode(front).length, digits.length) / ROOM_BITS - 1) * 100);
