import { expect, test } from 'vitest';
import { chooseVariant } from '../../src/model/document/variants';
import { shownSlide } from '../../src/model/talk/shown';
import { addSlide, slidesOf } from '../../src/model/talk/slides';
import { createBench } from '../../src/store/bench';
import { seenNow, showState, stateNow } from '../../src/store/bookmark';
import { setAttitude, setSwitch } from '../../src/store/viewStore';
import { demo } from '../demo/demoAircraft';

test('a bookmark put on another bench is the same view and the same balance, and is read back alike', () => {
  const bench = createBench(demo('fieldfare'));
  bench.eye.serve(
    () => {},
    () => ({ atMm: [900, 0, 10], wideMm: 1400, highMm: 700 }),
  );
  setAttitude(bench.view, { pitchDeg: 30 });
  setSwitch(bench.view, 'undercarriage', 'up');
  bench.view.setState(({ looking, layers }) => ({
    view: 'side',
    fuelFraction: 0.375,
    selectedId: 'ecu-pack',
    hiddenIds: ['gyro'],
    looking: { ...looking, cut: true },
    layers: { ...layers, leads: true, cg: false },
  }));
  const seen = seenNow(bench);
  const before = bench.view.getState();
  const aircraft = addSlide(bench.document.current(), { title: 'Climb', ...seen, figures: [] });
  const slide = slidesOf(aircraft).at(-1);
  if (!slide) throw new Error('no slide');

  const other = createBench(demo('corncrake'));
  other.eye.serve(
    () => {},
    () => ({ atMm: [900, 0, 10], wideMm: 1400, highMm: 700 }),
  );
  showState(other, slide, shownSlide(aircraft, slide).now);
  expect(seenNow(other)).toEqual(seen);
  const [here, there] = [bench.balance.get(), other.balance.get()];
  expect(there.cgMm).toEqual(here.cgMm);
  expect(there.massG).toBe(here.massG);
  // The bench that was bookmarked is as it was.
  expect(bench.view.getState()).toBe(before);
  expect(stateNow(bench).places?.length).toBe(aircraft.parts.length + aircraft.tanks.length);
});

test('a bookmark of a variant names it', () => {
  const whimbrel = demo('whimbrel');
  const last = whimbrel.variants?.list.at(-1)?.id ?? '';
  const bench = createBench(chooseVariant(whimbrel, last));
  expect(seenNow(bench).variantId).toBe(last);
  // No stage, no camera: all of the aircraft is shown then.
  expect(seenNow(bench).eye).toBeUndefined();
});

test('an edit of the talk on an aircraft with variants is for the aircraft, and no fuss is made', () => {
  const bench = createBench(demo('whimbrel'));
  const { committed } = bench.document.api.getState();
  bench.document.commit('Bookmark', addSlide(committed, { title: 'A', ...seenNow(bench), figures: [] }));
  const other = committed.variants?.list.find(({ id }) => id !== committed.variants?.chosenId)?.id ?? '';
  const after = bench.document.api.getState().committed;
  expect(slidesOf(after)).toHaveLength(1);
  expect(slidesOf(chooseVariant(after, other))).toHaveLength(1);
  expect(bench.notice.api.getState().notices).toEqual([]);
  bench.document.undo();
  expect(bench.document.api.getState().committed).toBe(committed);
});
