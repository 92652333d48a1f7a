import { deflateSync, Inflate } from 'fflate';
import { LINK_WORDS } from './linkWords';

const dictionary = new TextEncoder().encode(LINK_WORDS);

/** So many packed bytes are unpacked between two looks at what has come: at most a thousandfold, 1 MB (RFC 1951). */
const STRIDE = 1024;

/** A text packed by DEFLATE (RFC 1951) with the words that every aircraft has. */
export const packed = (text: string): Uint8Array =>
  deflateSync(new TextEncoder().encode(text), { level: 9, mem: 12, dictionary });

/** The bytes again; null once there are more than `most`, the rest left packed. Throws when they are no packed text. */
export function unpacked(bytes: Uint8Array, most: number): Uint8Array | null {
  const pieces: Uint8Array[] = [];
  let length = 0;
  let ended = false;
  const inflate = new Inflate({ dictionary }, (piece, last) => {
    pieces.push(piece);
    length += piece.length;
    ended ||= last;
  });
  for (let at = 0; at < bytes.length && length <= most; at += STRIDE) {
    inflate.push(bytes.subarray(at, at + STRIDE), at + STRIDE >= bytes.length);
  }
  if (length > most) return null;
  if (!ended) throw new Error('it ends before its end');
  return joined(pieces, length);
}

function joined(pieces: readonly Uint8Array[], length: number): Uint8Array {
  const whole = new Uint8Array(length);
  let at = 0;
  for (const piece of pieces) {
    whole.set(piece, at);
    at += piece.length;
  }
  return whole;
}
