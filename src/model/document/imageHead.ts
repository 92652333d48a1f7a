/** What the first bytes of an image say of it. */
export interface ImageHead {
  readonly kind: 'png' | 'jpeg' | 'webp';
  readonly widthPx: number;
  readonly heightPx: number;
}

/** Kind and size of a PNG, JPEG or WebP image by its own bytes, whatever its name says; null for anything else. */
export function imageHead(bytes: Uint8Array): ImageHead | null {
  const found = pngHead(bytes) ?? webpHead(bytes) ?? jpegHead(bytes);
  return found && found.widthPx > 0 && found.heightPx > 0 ? found : null;
}

const says = (bytes: Uint8Array, at: number, text: string): boolean =>
  [...text].every((letter, i) => bytes[at + i] === letter.charCodeAt(0));

/** A whole number of so many bytes, the first the highest. */
const bigEndian = (bytes: Uint8Array, at: number, count: number): number =>
  bytes.subarray(at, at + count).reduce((sum, byte) => sum * 256 + byte, 0);

/** The same, the first the lowest. */
const littleEndian = (bytes: Uint8Array, at: number, count: number): number =>
  bytes.subarray(at, at + count).reduceRight((sum, byte) => sum * 256 + byte, 0);

/** Signature and IHDR: PNG specification (W3C, third edition), sections 5.2 and 11.2.1. */
function pngHead(bytes: Uint8Array): ImageHead | null {
  if (bytes.length < 24 || !says(bytes, 0, '\x89PNG\r\n\x1a\n') || !says(bytes, 12, 'IHDR')) return null;
  return { kind: 'png', widthPx: bigEndian(bytes, 16, 4), heightPx: bigEndian(bytes, 20, 4) };
}

/** The three forms of a WebP file: RFC 9649, sections 2.5 to 2.7; the frame of a lossy one: RFC 6386, section 9.1. */
function webpHead(bytes: Uint8Array): ImageHead | null {
  if (bytes.length < 30 || !says(bytes, 0, 'RIFF') || !says(bytes, 8, 'WEBP')) return null;
  const size = (widthPx: number, heightPx: number): ImageHead => ({ kind: 'webp', widthPx, heightPx });
  if (says(bytes, 12, 'VP8X')) return size(littleEndian(bytes, 24, 3) + 1, littleEndian(bytes, 27, 3) + 1);
  if (says(bytes, 12, 'VP8L')) {
    const packed = littleEndian(bytes, 21, 4);
    return size((packed % 2 ** 14) + 1, (Math.floor(packed / 2 ** 14) % 2 ** 14) + 1);
  }
  if (!says(bytes, 12, 'VP8 ') || !says(bytes, 23, '\x9d\x01\x2a')) return null;
  return size(littleEndian(bytes, 26, 2) % 2 ** 14, littleEndian(bytes, 28, 2) % 2 ** 14);
}

/** Segments up to the start of the frame: ITU-T T.81, sections B.1.1 and B.2.2. */
function jpegHead(bytes: Uint8Array): ImageHead | null {
  if (bytes[0] !== 0xff || bytes[1] !== 0xd8) return null;
  let at = 2;
  while (at + 9 < bytes.length && bytes[at] === 0xff) {
    const marker = bytes[at + 1] ?? 0;
    if (marker === 0xff) at += 1;
    else if (startsFrame(marker))
      return { kind: 'jpeg', heightPx: bigEndian(bytes, at + 5, 2), widthPx: bigEndian(bytes, at + 7, 2) };
    else at += 2 + Math.max(2, bigEndian(bytes, at + 2, 2));
  }
  return null;
}

/** SOF0 to SOF15, without the tables that stand among them (DHT, JPG, DAC). */
const startsFrame = (marker: number): boolean =>
  marker >= 0xc0 && marker <= 0xcf && marker !== 0xc4 && marker !== 0xc8 && marker !== 0xcc;
