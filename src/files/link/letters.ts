/** Bytes as the letters of a link, and as the digits of a QR code, which holds those more tightly. */

/** base64url without padding (RFC 4648, section 5). */
export function lettersOf(bytes: Uint8Array): string {
  let binary = '';
  for (const byte of bytes) binary += String.fromCharCode(byte);
  return btoa(binary).replaceAll('+', '-').replaceAll('/', '_').replace(/=+$/, '');
}

/** Null where the letters are not base64url. */
export function bytesOfLetters(letters: string): Uint8Array | null {
  if (!/^[\w-]*$/.test(letters) || letters.length % 4 === 1) return null;
  const binary = atob(letters.replaceAll('-', '+').replaceAll('_', '/'));
  return Uint8Array.from(binary, (each) => each.charCodeAt(0));
}

/** One great number in decimal; a leading byte 1 keeps the zeros that the bytes begin with. */
export function digitsOf(bytes: Uint8Array): string {
  const hex = Array.from(bytes, (byte) => byte.toString(16).padStart(2, '0')).join('');
  return BigInt(`0x1${hex}`).toString();
}

/** Null where they are not the digits of bytes. */
export function bytesOfDigits(digits: string): Uint8Array | null {
  if (!/^[1-9]\d*$/.test(digits)) return null;
  const hex = BigInt(digits).toString(16);
  if (hex[0] !== '1' || hex.length % 2 === 0) return null;
  return Uint8Array.from({ length: (hex.length - 1) / 2 }, (_, at) =>
    Number.parseInt(hex.slice(1 + 2 * at, 3 + 2 * at), 16),
  );
}
