import { afterAll, afterEach, beforeAll, expect, test } from 'vitest';
import { type Bench, expectClean, openBench, settled } from './harness';

let bench: Bench;
beforeAll(async () => {
  bench = await openBench({ width: 640, height: 620, graphics: 'unpainted' });
  await bench.page.waitForFunction(
    () => (window.document.querySelector('canvas')?.drawn?.render.frame ?? 0) > 0,
  );
  // The estimate, the advice and the search through the load states arrive on their own; then nothing more is coming.
  await bench.page.waitForFunction(() => {
    const { stability, verdict, rest } = window.counterpoise;
    return stability.get().fresh && !verdict.checking() && rest.get().envelope !== null;
  });
  await bench.page.waitForTimeout(2000);
});
afterEach(() => expectClean(bench));
afterAll(() => bench.close());

const drawn = () =>
  bench.page.evaluate(() => {
    const info = window.document.querySelector('canvas')?.drawn;
    if (!info) throw new Error('the stage has not drawn');
    return {
      frames: info.render.frame,
      geometries: info.memory.geometries,
      textures: info.memory.textures,
      programs: info.programs?.length,
    };
  });

test('nothing is drawn at rest, and frames flow while the burn plays', async () => {
  const { page } = bench;
  const atRest = (await drawn()).frames;
  await page.waitForTimeout(1500);
  expect((await drawn()).frames).toBe(atRest);
  await page.evaluate(() => window.counterpoise.view.setState({ playing: true }));
  await page.waitForTimeout(1500);
  expect((await drawn()).frames).toBeGreaterThan(atRest + 1);
  const left = await page.evaluate(() => {
    window.counterpoise.view.setState({ playing: false });
    return window.counterpoise.view.getState().fuelFraction;
  });
  expect(left).toBeLessThan(1);
});

test('graphics memory stays level over 40 rounds of add, take out and undo', async () => {
  const { page } = bench;
  /** Adds a part and a tank by copying what is there, takes others out, undoes all. */
  const rounds = (count: number) =>
    page.evaluate(async (times) => {
      const { document } = window.counterpoise;
      const frame = () => new Promise((done) => requestAnimationFrame(done));
      for (let i = 0; i < times; i++) {
        const now = document.current();
        const [part] = now.parts;
        const [tank] = now.tanks;
        if (!part || !tank) throw new Error('expected a part and a tank');
        document.commit('Add', {
          ...now,
          parts: [...now.parts, { ...part, id: 'copy', shape: { ...part.shape } }],
          tanks: [...now.tanks, { ...tank, id: 'copy-tank', shape: { ...tank.shape } }],
        });
        // Drawn once with the additions aboard, so that their buffers are made, and taken down again below.
        await frame();
        document.commit('Take out', { ...now, parts: now.parts.slice(1), structure: now.structure.slice(1) });
        document.undo();
        document.undo();
      }
    }, count);
  await rounds(3);
  await settled(page);
  const before = await drawn();
  await rounds(40);
  await settled(page);
  const after = await drawn();
  expect(after.geometries).toBe(before.geometries);
  expect(after.textures).toBe(before.textures);
});

test('a drag is drawn frame by frame and builds no geometry', async () => {
  const { page } = bench;
  const dragBy = (steps: number) =>
    page.evaluate(async (count) => {
      const { drag, document } = window.counterpoise;
      const pack = document.current().parts.find(({ id }) => id === 'flight-pack');
      if (!pack) throw new Error('expected the flight pack');
      const [x, y, z] = pack.positionMm;
      drag.pickUp('flight-pack');
      for (let i = 1; i <= count; i++) {
        drag.moveTo([x + i, y, z]);
        await new Promise((done) => requestAnimationFrame(done));
      }
      drag.cancel();
    }, steps);
  // The first drag may bring up its measuring lines; after that there is nothing more to build.
  await dragBy(8);
  await settled(page);
  const before = await drawn();
  await dragBy(20);
  await settled(page);
  const after = await drawn();
  expect(after.geometries).toBe(before.geometries);
  expect(after.frames).toBeGreaterThan(before.frames + 5);
});

/** What scripts hold, bytes, once all that nobody holds any more is gone. */
async function heapBytes(): Promise<number> {
  const protocol = await bench.page.context().newCDPSession(bench.page);
  await protocol.send('HeapProfiler.collectGarbage');
  const { usedSize } = await protocol.send('Runtime.getHeapUsage');
  await protocol.detach();
  return usedSize;
}

/** Code that is compiled meanwhile and what is remembered of places: some 3 MB, levelling off; 130 kB of buffers for each drag would be 26 MB. */
const HEAP_SLACK = 4_000_000;

test('200 drags leave graphics memory and the heap level, and parts are drawn in as many calls however many they are', async () => {
  const { page } = bench;
  const drags = (times: number) =>
    page.evaluate(async (count) => {
      const { drag, document } = window.counterpoise;
      const frame = () => new Promise((done) => requestAnimationFrame(done));
      for (let i = 0; i < count; i++) {
        const pack = document.current().parts.find(({ id }) => id === 'flight-pack');
        if (!pack) throw new Error('expected the flight pack');
        const [x, y, z] = pack.positionMm;
        drag.pickUp('flight-pack');
        drag.moveTo([x + 1 + (i % 5), y, z]);
        // Every fifth is drawn: what a drag leaves behind shows in the end.
        if (i % 5 === 0) await frame();
        drag.setDown();
        document.undo();
      }
      await frame();
    }, times);
  const calls = () => page.evaluate(() => window.document.querySelector('canvas')?.drawn?.render.calls ?? 0);
  await drags(3);
  await settled(page);
  const [before, few, heap] = [await drawn(), await calls(), await heapBytes()];
  await drags(200);
  await settled(page);
  const after = await drawn();
  expect(after.geometries).toBe(before.geometries);
  expect(after.textures).toBe(before.textures);
  expect(after.programs).toBe(before.programs);
  expect((await heapBytes()) - heap).toBeLessThan(HEAP_SLACK);

  await page.evaluate(() => {
    const { document } = window.counterpoise;
    const now = document.current();
    const [part] = now.parts;
    if (!part) throw new Error('expected a part');
    const more = Array.from({ length: 120 }, (_, i) => ({ ...part, id: `more-${i}` }));
    document.commit('Add', { ...now, parts: [...now.parts, ...more] });
  });
  await settled(page);
  expect(await calls()).toBe(few);
  await page.evaluate(() => window.counterpoise.document.undo());
});
