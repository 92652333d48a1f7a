import { expect, test } from 'vitest';
import { imageHead } from '../../../src/model/document/imageHead';

const letters = (text: string) => [...text].map((letter) => letter.charCodeAt(0));
const zeros = (count: number) => Array.from({ length: count }, () => 0);
const head = (...bytes: (number | readonly number[])[]) => imageHead(Uint8Array.from(bytes.flat()));

test('a PNG’s size stands in its IHDR (PNG specification, section 11.2.1)', () => {
  const signature = [0x89, ...letters('PNG\r\n'), 0x1a, 0x0a];
  const png = (...size: number[]) => head(signature, [0, 0, 0, 13], letters('IHDR'), size, zeros(9));
  expect(png(0, 0, 6, 64, 0, 0, 4, 176)).toEqual({ kind: 'png', widthPx: 1600, heightPx: 1200 });
  expect(png(0, 0, 0, 0, 0, 0, 4, 176)).toBeNull();
  expect(head(signature)).toBeNull();
});

test('a JPEG’s size stands in its frame, behind what else there is (ITU-T T.81, section B.2.2)', () => {
  const notes = [0xff, 0xe1, 0, 6, 0xff, 0xc0, 1, 2];
  const tables = [0xff, 0xc4, 0, 4, 9, 9];
  const frame = (marker: number) => [0xff, marker, 0, 17, 8, 4, 176, 6, 64, 3, ...zeros(9)];
  const wanted = { kind: 'jpeg', widthPx: 1600, heightPx: 1200 };
  expect(head([0xff, 0xd8], notes, tables, frame(0xc0))).toEqual(wanted);
  expect(head([0xff, 0xd8], notes, [0xff], frame(0xc2))).toEqual(wanted);
  expect(head([0xff, 0xd8], notes, tables)).toBeNull();
  expect(head([0xff, 0xd8], [0xff, 0xe0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0])).toBeNull();
});

test('a WebP’s size stands in each of its three forms (RFC 9649, sections 2.5 to 2.7)', () => {
  const riff = [...letters('RIFF'), 99, 0, 0, 0, ...letters('WEBP')];
  const wanted = { kind: 'webp', widthPx: 1600, heightPx: 1200 };
  // 1599 is 0x63f and 1199 is 0x4af, each one less than the size.
  expect(head(riff, letters('VP8X'), zeros(8), [0x3f, 6, 0, 0xaf, 4, 0])).toEqual(wanted);
  // 14 bits of 1599, then 14 bits of 1199: 1599 + 1199 × 16384 = 19 646 015 = 0x12bc63f.
  expect(head(riff, letters('VP8L'), zeros(4), [0x2f, 0x3f, 0xc6, 0x2b, 1], zeros(6))).toEqual(wanted);
  // 1600 is 0x640 and 1200 is 0x4b0; the upper two bits are for scaling.
  const lossy = [0x9d, 1, 0x2a, 0x40, 0x46, 0xb0, 0x84];
  expect(head(riff, letters('VP8 '), zeros(7), lossy)).toEqual(wanted);
  expect(head(riff, letters('VP9 '), zeros(20))).toBeNull();
});

test('anything else is no image', () => {
  expect(head()).toBeNull();
  expect(head(letters('<svg xmlns="http://www.w3.org/2000/svg" width="10" height="10"/>'))).toBeNull();
  expect(head(letters('GIF89a'), zeros(40))).toBeNull();
});
