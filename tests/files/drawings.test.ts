import { expect, test } from 'vitest';
import { keepDrawings } from '../../src/files/keptDrawings';
import { blankAircraft } from '../../src/model/document/blank';
import { writeAircraft } from '../../src/model/document/write';
import { packLine, unpackLine } from '../../src/model/history/packing';
import { createBench } from '../../src/store/bench';
import { image, pngOf } from '../model/drawing';
import { mapStorage } from './mapStorage';

function sideBench() {
  const bench = createBench(blankAircraft(), { view: 'side' });
  bench.axis.setState({
    widthPx: 1000,
    heightPx: 500,
    station: { atLeftMm: -100, mmPerPx: 2 },
    middleMm: { side: 40, top: 0, front: 0 },
  });
  return bench;
}
const steps = ({ document }: ReturnType<typeof sideBench>) => document.api.getState().past.length;

test('a new drawing lies in the middle of the picture, over four fifths of it', () => {
  const { trace } = sideBench();
  trace.lay(image);
  // 400 px over 0.8 × 2000 mm are 4 mm each; 100 px are 400 mm high, well within 0.8 × 1000. The middle: 900, 40.
  expect(trace.shown()?.trace).toEqual({
    view: 'side',
    cornerMm: [100, 240],
    mmPerPx: 4,
    turnDeg: 0,
    opacity: 0.7,
  });
});

test('beside the file it is no step; kept in it each change is one, and undo brings it back', () => {
  const bench = sideBench();
  const { trace, document } = bench;
  const before = writeAircraft(document.current());
  trace.lay(image);
  expect(steps(bench)).toBe(0);
  expect(writeAircraft(document.current())).toBe(before);
  const laid = trace.shown()!;
  trace.keep(true);
  expect([steps(bench), trace.isKept()]).toEqual([1, true]);
  trace.put('Move the drawing', { ...laid.trace, cornerMm: [5, 6] });
  trace.put('Hold the drawing', trace.shown()!.trace);
  expect(steps(bench)).toBe(2);
  const kept = writeAircraft(document.current());
  trace.remove();
  expect([trace.shown(), writeAircraft(document.current())]).toEqual([null, before]);
  document.undo();
  expect(writeAircraft(document.current())).toBe(kept);
  trace.keep(false);
  expect(trace.shown()?.trace.cornerMm).toEqual([5, 6]);
  expect([trace.isKept(), writeAircraft(document.current())]).toEqual([false, before]);
  for (let i = 0; i < 3; i += 1) document.undo();
  expect(writeAircraft(document.current())).toBe(before);
  expect(trace.shown()).not.toBeNull();
});

test('undo to before it was kept leaves it beside the file, removed and brought back or not', () => {
  const { trace, document } = sideBench();
  trace.lay(image);
  trace.keep(true);
  trace.remove();
  expect(trace.shown()).toBeNull();
  document.undo();
  document.undo();
  expect([trace.isKept(), trace.shown() !== null]).toEqual([false, true]);
  document.redo();
  document.redo();
  expect(trace.isKept()).toBe(false);
});

test('each view has its own, the free view none, and what is refused changes nothing', () => {
  const { trace, view } = sideBench();
  trace.lay(image);
  expect(trace.put('Scale the drawing', 'That is no scale.')).toBe(false);
  expect(trace.api.getState().fault).toBe('That is no scale.');
  view.setState({ view: 'top' });
  expect([trace.shown(), trace.api.getState().fault]).toEqual([null, null]);
  view.setState({ view: 'free' });
  trace.lay(image);
  expect(trace.shown()).toBeNull();
  trace.setOpen(true);
  expect(view.getState().view).toBe('side');
  expect(trace.shown()).not.toBeNull();
});

test('moving a large drawing forty times leaves all steps room in the history', () => {
  const bench = sideBench();
  const { trace, document } = bench;
  trace.lay(pngOf(400, 100, 290_000));
  trace.keep(true);
  for (let i = 1; i <= 40; i += 1)
    trace.put('Move the drawing', { ...trace.shown()!.trace, cornerMm: [i, 0] });
  const { past, committed, future } = document.api.getState();
  const line = unpackLine(packLine({ past, now: committed, future }));
  expect(line?.past).toHaveLength(41);
});

test('the tab keeps it over a reload, for its own aircraft alone, and forgets it once it is removed', () => {
  const storage = mapStorage();
  const first = sideBench();
  const { fleetId } = first.document.api.getState();
  keepDrawings(first, storage);
  first.trace.lay(image);
  const laid = first.trace.shown();
  const again = createBench(blankAircraft(), { view: 'side' }, fleetId);
  keepDrawings(again, storage);
  expect(again.trace.shown()).toEqual(laid);
  again.document.replace(blankAircraft());
  expect(again.trace.shown()).toBeNull();
  again.document.undo();
  expect(again.trace.shown()).toEqual(laid);
  again.trace.remove();
  expect(storage.keys()).toEqual([]);
});

test('a full store is told, and what is no drawing in it is passed over', () => {
  const bench = sideBench();
  const { fleetId } = bench.document.api.getState();
  const storage = mapStorage();
  storage.setItem(`counterpoise.drawings.${fleetId}`, '[{"trace":1},7');
  keepDrawings(bench, {
    ...storage,
    setItem: () => {
      throw new Error('full');
    },
  });
  expect(bench.trace.shown()).toBeNull();
  bench.trace.lay(image);
  expect(bench.notice.api.getState().notices[0]?.text).toContain('Keep it in the file');
});
