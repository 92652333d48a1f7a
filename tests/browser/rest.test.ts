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

test('a move of a level beam turns or moves no group of its drawing, only what is in hand and what follows it', async () => {
  // A drawing with another transform is laid out and composed anew by the browser, with all that it holds.
  const written = await bench.page.evaluate(async () => {
    const { drag, document, view } = window.counterpoise;
    const pack = document.current().parts.find(({ id }) => id === 'flight-pack');
    const beam = window.document.querySelector('[data-testid=beam]');
    if (!pack || !beam) throw new Error('expected the flight pack and the beam');
    view.setState({ selectedId: null });
    const [x, y, z] = pack.positionMm;
    drag.pickUp('flight-pack');
    drag.moveTo([x + 0.5, y, z]);
    const names: string[] = [];
    const watch = new MutationObserver((changes) => {
      for (const { target, attributeName } of changes)
        names.push(`${(target as Element).classList[0]} ${attributeName}`);
    });
    watch.observe(beam, { subtree: true, attributes: true });
    for (let i = 2; i <= 6; i++) {
      drag.moveTo([x + i / 2, y, z]);
      await Promise.resolve();
    }
    watch.disconnect();
    drag.cancel();
    return names;
  });
  expect(written).toContain('weight-shape d');
  expect(written.filter((name) => name.endsWith(' transform'))).toEqual([]);
});

test('the way out of a clash is not looked for while something is in hand', async () => {
  const { page } = bench;
  await page.evaluate(() => {
    const { document, fit, view } = window.counterpoise;
    const now = document.current();
    const [first, second] = now.parts;
    const judge = fit.judge();
    if (!first || !second || !judge) throw new Error('expected two parts and the judge of fit');
    const asked = { times: 0 };
    const { clearMove } = judge;
    Object.assign(window, { asked });
    Object.assign(judge, {
      clearMove: (...of: Parameters<typeof clearMove>) => {
        asked.times += 1;
        return clearMove(...of);
      },
    });
    view.setState(({ folds }) => ({ selectedId: null, folds: { ...folds, fit: true } }));
    // Two in one place.
    const parts = now.parts.map((part) =>
      part.id === second.id ? { ...part, positionMm: first.positionMm } : part,
    );
    document.commit('Into each other', { ...now, parts });
  });
  const asked = () => page.evaluate(() => (window as unknown as { asked: { times: number } }).asked.times);
  const before = await page.evaluate(async () => {
    const { document, drag, view } = window.counterpoise;
    const id = document.current().parts[1]?.id ?? '';
    view.setState({ selectedId: id });
    // Once React has shown its card.
    const shown = new MutationObserver(() => {
      if (window.document.querySelector('.fit-clash')) drag.pickUp(id);
    });
    shown.observe(window.document.body, { subtree: true, childList: true });
    while (drag.api.getState().itemId === null) await new Promise((done) => setTimeout(done, 20));
    shown.disconnect();
    const { times } = (window as unknown as { asked: { times: number } }).asked;
    await new Promise((done) => setTimeout(done, 400));
    return times;
  });
  expect(await asked()).toBe(before);
  await page.evaluate(() => window.counterpoise.drag.cancel());
  await expect.poll(asked).toBeGreaterThan(before);
  await page.evaluate(() => {
    window.counterpoise.view.setState({ selectedId: null });
    window.counterpoise.document.undo();
  });
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
