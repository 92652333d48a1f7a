import type { Trace } from '../../src/model/document/types';

/** The signature and IHDR of a PNG of a size (PNG specification, sections 5.2 and 11.2.1), as a data: address. */
export function pngOf(widthPx: number, heightPx: number, more = 0): string {
  const bytes = Buffer.alloc(33 + more);
  bytes.write('\x89PNG\r\n\x1a\n', 0, 'latin1');
  bytes.writeUInt32BE(13, 8);
  bytes.write('IHDR', 12, 'latin1');
  bytes.writeUInt32BE(widthPx, 16);
  bytes.writeUInt32BE(heightPx, 20);
  return `data:image/png;base64,${bytes.toString('base64')}`;
}

export const image = pngOf(400, 100);

export const sideTrace: Trace = {
  view: 'side',
  cornerMm: [-20, 150],
  mmPerPx: 2.5,
  turnDeg: 0,
  opacity: 0.7,
};
