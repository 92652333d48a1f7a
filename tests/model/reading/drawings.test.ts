import { expect, test } from 'vitest';
import { blankAircraft } from '../../../src/model/document/blank';
import { type Laid, withLaid, withoutDrawings, withoutLaid } from '../../../src/model/document/traces';
import { writeAircraft } from '../../../src/model/document/write';
import { readDrawing } from '../../../src/model/reading/keptDrawing';
import { parseAircraft, readAircraft } from '../../../src/model/reading/read';
import { image, pngOf, sideTrace } from '../drawing';

const side: Laid = { trace: sideTrace, picture: { view: 'side', image } };
const with_ = (change: object) => readAircraft({ ...withLaid(blankAircraft(), side), ...change });
const faultOf = (change: object): string => {
  const read = with_(change);
  if (read.ok) throw new Error('it was read');
  expect(read.faults).toHaveLength(1);
  return read.faults[0]!.sentence;
};

test('a drawing goes into the file’s text and comes back, and out again without a trace', () => {
  const blank = blankAircraft();
  const laid = withLaid(blank, side);
  const text = writeAircraft(laid);
  const read = parseAircraft(text);
  expect(read).toEqual({ ok: true, aircraft: laid });
  expect(text).toContain(image);
  expect(writeAircraft(withoutLaid(laid, 'side'))).toBe(writeAircraft(blank));
  expect(writeAircraft(withoutDrawings(laid))).toBe(writeAircraft(blank));
  const two = withLaid(laid, { trace: { ...side.trace, view: 'top' }, picture: { view: 'top', image } });
  expect(withoutLaid(two, 'side').traces?.map(({ view }) => view)).toEqual(['top']);
  expect(readAircraft(two).ok).toBe(true);
});

test('another place leaves the image the very same', () => {
  const laid = withLaid(blankAircraft(), side);
  const moved = withLaid(laid, { ...side, trace: { ...side.trace, turnDeg: 3 } });
  expect(moved.traceImages).toBe(laid.traceImages);
  expect(moved.traces).toEqual([{ ...side.trace, turnDeg: 3 }]);
});

test.each([
  ['a kind that can carry scripts', { image: 'data:image/svg+xml;base64,PHN2Zz4=' }, 'PNG, JPEG or WebP'],
  ['an address of another machine', { image: '//example.org/plan.png' }, 'PNG, JPEG or WebP'],
  ['no base64', { image: 'data:image/png;base64,<script>' }, 'PNG, JPEG or WebP'],
  ['bytes that are no image', { image: 'data:image/png;base64,AAAA' }, 'bytes that are no image'],
  ['another kind than it says', { image: image.replace('png', 'webp') }, 'got a png image'],
  ['a size that is too much to unpack', { image: pngOf(50_000, 50_000) }, '50000 × 50000 px'],
  ['too much text', { image: `${image.slice(0, -4)}${'A'.repeat(400_000)}` }, 'at most 400 kB'],
])('an image with %s is refused in words', (_, change, words) => {
  const sentence = faultOf({ traceImages: [{ ...side.picture, ...change }] });
  expect(sentence).toContain('traceImages[0] › image');
  expect(sentence).toContain(words);
});

test.each([
  ['no scale', { mmPerPx: 0 }, '0.001 to 1000 mm'],
  ['a place beyond all bounds', { cornerMm: [1e9, 0] }, '100 000 mm'],
  ['a turn that is none', { turnDeg: 4000 }, '360°'],
  ['an opacity that is none', { opacity: 2 }, '0 to 1'],
])('a place with %s is refused in words', (_, change, words) => {
  expect(faultOf({ traces: [{ ...side.trace, ...change }] })).toContain(words);
});

test('half a drawing, and two under one view, are faults with their place', () => {
  expect(faultOf({ traces: undefined })).toContain('has no place of a drawing in traces');
  expect(faultOf({ traceImages: [] })).toContain('has no image in traceImages');
  expect(faultOf({ traces: [side.trace, side.trace] })).toContain('already one for the side view');
  const free = with_({ traces: [{ ...side.trace, view: 'free' }], traceImages: [] });
  expect(free.ok).toBe(false);
});

test('what a tab has kept is read by the same checks', () => {
  expect(readDrawing(JSON.parse(JSON.stringify(side)))).toEqual(side);
  expect(readDrawing({ ...side, trace: { ...side.trace, mmPerPx: 0 } })).toBeNull();
  expect(readDrawing({ ...side, picture: { view: 'top', image } })).toBeNull();
  expect(readDrawing({ ...side, picture: { view: 'side', image: pngOf(9000, 10) } })).toBeNull();
  expect(readDrawing(null)).toBeNull();
});
