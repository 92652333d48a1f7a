import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { inProject } from '../../../src/commands/paths.mjs';
import { wayOf } from '../../../src/model/lessons/steps';
import { axe, type Bench, expectClean, openBench, settled } from '../harness';
import {
  benchNow,
  doByHand,
  goToLessons,
  lessons,
  marker,
  next,
  openLesson,
  predict,
  room,
  title,
} from './lessonHand';

const seeSaw = lessons.find(({ id }) => id === 'see-saw')!;
let bench: Bench;
beforeAll(async () => {
  bench = await openBench({ width: 1280, height: 800, graphics: 'unpainted' });
  await bench.page.waitForSelector('.answer-headline');
});
afterAll(() => bench.close());

/** The person's own bench, all of it that a lesson could touch. */
const own = () =>
  bench.page.evaluate(() => {
    const { document, view } = window.counterpoise;
    const { past, future, fleetId, committed } = document.api.getState();
    const { place: _, ...looking } = view.getState();
    return JSON.stringify({ committed, steps: past.length, undone: future.length, fleetId, looking });
  });

const toBench = async () => {
  await bench.page
    .getByRole('navigation', { name: 'Places' })
    .getByRole('button', { name: 'Bench', exact: true })
    .click();
  await room(bench.page).waitFor({ state: 'detached' });
};

test('the list stands for itself, and the answer on the person’s own aircraft is out of the way', async () => {
  const { page } = bench;
  await goToLessons(page);
  await expect.poll(() => page.getByTestId('lesson-card').count()).toBe(lessons.length);
  expect(await page.getByTestId('verdict').isVisible()).toBe(false);
  expect(await axe(page)).toEqual([]);
});

test('a lesson is left for free play and come back to; what was done there is not the lesson’s', async () => {
  const { page } = bench;
  const before = await own();
  await openLesson(page, seeSaw);
  await predict(page, seeSaw.question.axis.least, 'keys');
  await next(page).click();
  await expect.poll(async () => (await benchNow(page)).cgShown).toBe(true);
  // What the step is about is in hand: the arrow keys move it at once.
  const chosen = () =>
    room(page).evaluate((place) => (place as HTMLElement).lessonBench!.view.getState().selectedId);
  await expect.poll(chosen).toBe('pack');
  const left = await benchNow(page);
  await page.getByRole('button', { name: 'Try freely' }).click();
  await room(page).getByTestId('manifest').waitFor();
  await room(page).getByTestId('manifest').getByText(seeSaw.aircraft.parts[0]!.name).click();
  const stationNow = async () => (await benchNow(page)).aircraft.parts[0]!.positionMm[0];
  const station = seeSaw.aircraft.parts[0]!.positionMm[0];
  await room(page).locator('.stage-picture').focus();
  await page.keyboard.press('Shift+ArrowRight');
  await expect.poll(stationNow).toBe(station + 10);
  await page.keyboard.press('Control+z');
  await expect.poll(stationNow).toBe(station);
  await page.keyboard.press('Control+y');
  await expect.poll(stationNow).toBe(station + 10);
  await page.getByRole('button', { name: 'Back to the lesson' }).click();
  await title(page).waitFor();
  expect((await benchNow(page)).aircraft).toEqual(left.aircraft);
  expect(await own()).toBe(before);
  expect(await axe(page)).toEqual([]);
});

test('astray is told and put back; a reload comes back to the same lesson and stage', async () => {
  const { page } = bench;
  const stage = page.locator('.lesson-stage .stage-picture');
  await stage.focus();
  await page.keyboard.press(']');
  await page.keyboard.press('Shift+ArrowRight');
  await expect.poll(() => page.locator('.lesson-hint').getAttribute('data-kind')).toBe('other');
  await page.getByRole('button', { name: 'Put it all back' }).click();
  await expect.poll(() => page.locator('.lesson-hint').getAttribute('data-kind')).toBe(null);
  await page.reload();
  await title(page).waitFor();
  await expect.poll(() => room(page).getAttribute('data-stage')).toBe('tried');
  await page.getByRole('button', { name: 'All lessons' }).click();
  const card = page.getByTestId('lesson-card').filter({ hasText: seeSaw.title });
  await expect.poll(() => card.textContent()).toContain('Begun, at 2 of 5');
});

test('ten times in and out leaves nothing behind, and nothing is drawn at rest', async () => {
  const { page } = bench;
  const memory = () =>
    page.evaluate(() => {
      const info = window.document.querySelector<HTMLCanvasElement>('[data-testid=stage] canvas')?.drawn;
      return info && { geometries: info.memory.geometries, textures: info.memory.textures };
    });
  const drawn = () =>
    page.evaluate(
      () =>
        window.document.querySelector<HTMLCanvasElement>('.lesson-stage canvas')?.drawn?.render.frame ?? 0,
    );
  await toBench();
  await settled(page);
  const before = await memory();
  await page.evaluate(() => {
    Object.assign(window, { benches: [] });
  });
  for (let round = 0; round < 10; round += 1) {
    await openLesson(page, seeSaw);
    await expect.poll(drawn).toBeGreaterThan(0);
    await room(page).evaluate((place) => {
      const kept = (window as unknown as { benches: WeakRef<object>[] }).benches;
      kept.push(new WeakRef((place as HTMLElement).lessonBench!));
      kept.push(new WeakRef(place.querySelector('canvas')!));
    });
    if (round === 9) {
      await page.waitForTimeout(2500);
      const frames = await drawn();
      await page.waitForTimeout(1000);
      expect(await drawn()).toBe(frames);
    }
    await toBench();
  }
  // The graphics are given back a little after the canvas has gone.
  await page.waitForTimeout(1500);
  const protocol = await page.context().newCDPSession(page);
  const alive = async () => {
    await protocol.send('HeapProfiler.collectGarbage');
    return page.evaluate(
      () =>
        (window as unknown as { benches: WeakRef<object>[] }).benches.filter((kept) => kept.deref()).length,
    );
  };
  // The last may still be held by what React keeps of its last drawing.
  await expect.poll(alive).toBeLessThanOrEqual(2);
  expect(await memory()).toEqual(before);
});

test('a lesson of one’s own: a faulty one is told, a good one stands apart and stays', async () => {
  const { page } = bench;
  await goToLessons(page);
  const text = readFileSync(join(inProject('demo-data/lessons'), 'see-saw.json'), 'utf8');
  const give = async (name: string, content: string) => {
    const chooser = page.waitForEvent('filechooser');
    await page.getByRole('button', { name: 'Open a lesson file…' }).click();
    await (await chooser).setFiles({ name, mimeType: 'application/json', buffer: Buffer.from(content) });
  };
  await give('half.json', text.replace('"minutes": 3', '"minutes": 45'));
  const dialog = page.getByRole('dialog', { name: 'This lesson cannot be held' });
  await expect.poll(() => dialog.textContent()).toContain('half.json has one fault');
  await expect.poll(() => dialog.textContent()).toContain('3 to 5 minutes');
  await dialog.getByRole('button', { name: 'Close' }).click();
  await expect.poll(() => page.getByTestId('lesson-card').count()).toBe(lessons.length);

  await give('mine.json', text.replace('"The see-saw"', '"The see-saw, mine"'));
  await title(page).waitFor();
  // The same file again goes on where it was left; another one under its id has been answered nothing of.
  const stage = () => room(page).getAttribute('data-stage');
  await predict(page, seeSaw.question.axis.least, 'keys');
  await next(page).click();
  await page.getByRole('button', { name: 'All lessons' }).click();
  await give('mine.json', text.replace('"The see-saw"', '"The see-saw, mine"'));
  await expect.poll(stage).toBe('tried');
  await page.getByRole('button', { name: 'All lessons' }).click();
  const other = text.replace('"The see-saw"', '"The see-saw, mine"').replace('"within": 8', '"within": 7');
  await give('other.json', other);
  await expect.poll(stage).toBe('asked');
  await page.getByRole('button', { name: 'All lessons' }).click();
  const mine = page.getByRole('region', { name: 'Lessons of your own' }).getByTestId('lesson-card');
  await expect.poll(() => mine.textContent()).toContain('The see-saw, mine');
  await expect.poll(() => mine.textContent()).toContain('Not begun');
  await page.reload();
  await mine.waitFor();
  await page.getByRole('button', { name: 'Take The see-saw, mine off the list' }).click();
  await expect.poll(() => mine.count()).toBe(0);
  await expect.poll(() => page.getByTestId('lesson-card').count()).toBe(lessons.length);
});

test('a lesson file dropped on the place opens there and not on the bench', async () => {
  const { page } = bench;
  const before = await own();
  await goToLessons(page);
  const carried = await page.evaluateHandle(() => {
    const data = new DataTransfer();
    data.items.add(new File(['{"format": "something else"}'], 'other.json'));
    return data;
  });
  await room(page).dispatchEvent('drop', { dataTransfer: carried });
  const dialog = page.getByRole('dialog', { name: 'This lesson cannot be held' });
  await expect.poll(() => dialog.textContent()).toContain('counterpoise lesson');
  await dialog.getByRole('button', { name: 'Close' }).click();
  expect(await own()).toBe(before);
});

test('a lesson’s aircraft is taken to the bench as a copy with a place of its own', async () => {
  const { page } = bench;
  await openLesson(page, seeSaw);
  await page.getByRole('button', { name: 'Try freely' }).click();
  const place = () => page.evaluate(() => window.counterpoise.document.api.getState().fleetId);
  const before = await place();
  await page.getByRole('button', { name: 'Take this aircraft to the bench' }).click();
  await room(page).waitFor({ state: 'detached' });
  expect(await page.evaluate(() => window.counterpoise.document.current().name)).toBe(seeSaw.aircraft.name);
  expect(await place()).not.toBe(before);
  await page.keyboard.press('Control+z');
  expect(await place()).toBe(before);
  expectClean(bench);
});

test('where the browser keeps nothing, the page says so and the lesson goes on', async () => {
  const shut = await openBench({
    graphics: false,
    prepare: (context) =>
      context.addInitScript(() => {
        const real = Storage.prototype.setItem;
        Storage.prototype.setItem = function (this: Storage, key: string, value: string) {
          if (key === 'counterpoise.lessons') throw new DOMException('full', 'QuotaExceededError');
          real.call(this, key, value);
        };
      }),
  });
  await shut.page.waitForSelector('.answer-headline');
  await openLesson(shut.page, seeSaw);
  await predict(shut.page, seeSaw.question.axis.least, 'keys');
  await next(shut.page).click();
  await expect.poll(() => shut.page.locator('.lessons-faults').textContent()).toContain('is not kept');
  await expect.poll(() => room(shut.page).getAttribute('data-stage')).toBe('tried');
  await shut.close();
});

test.each([
  { width: 820, height: 1180, dark: false },
  { width: 390, height: 844, dark: true },
])('by finger at $width × $height', async ({ width, height, dark }) => {
  const tablet = await openBench({ width, height, dark, touch: true, graphics: 'unpainted' });
  const { page } = tablet;
  await page.waitForSelector('.answer-headline');
  await openLesson(page, seeSaw);
  const box = (await marker(page).boundingBox())!;
  expect(Math.min(box.width, box.height)).toBeGreaterThanOrEqual(44);
  await predict(page, seeSaw.question.axis.most, 'touch');
  expect(await axe(page)).toEqual([]);
  await next(page).click();
  expect(await page.locator('.lesson-axis').evaluate(wordsOff)).toEqual([]);
  for (const change of wayOf(seeSaw, seeSaw.experiment[0]!)) await doByHand(page, change, true);
  await expect.poll(() => page.locator('.lesson-hint').textContent()).not.toBe('');
  const show = page.getByRole('button', { name: 'Show me' });
  if (await show.isVisible()) await show.click();
  await expect.poll(() => next(page).isEnabled()).toBe(true);
  expect(await axe(page)).toEqual([]);
  // The page never scrolls as a whole, and nothing stands out of it.
  expect(await page.evaluate(() => document.documentElement.scrollWidth - innerWidth)).toBe(0);
  await tablet.close();
});

/** Words of the axis that stand off the page or on other words of it. */
function wordsOff(axis: Element): string[] {
  const words = [...axis.querySelectorAll('.figure:not(text), .lesson-unit, .lesson-unit-end')];
  const boxes = words.map((each) => ({ says: each.textContent ?? '', box: each.getBoundingClientRect() }));
  return boxes.flatMap(({ says, box }, at) => {
    const off = box.left < 0 || box.right > innerWidth ? [`${says} is cut off`] : [];
    const over = boxes
      .slice(at + 1)
      .filter(
        ({ box: b }) =>
          b.left < box.right && b.right > box.left && b.top < box.bottom - 1 && b.bottom > box.top + 1,
      );
    return [...off, ...over.map((other) => `${says} over ${other.says}`)];
  });
}

test('what the axis says stays on the narrow page, however far to its end', async () => {
  const phone = await openBench({ width: 390, height: 844, graphics: 'unpainted' });
  const { page } = phone;
  await page.waitForSelector('.answer-headline');
  const scale = lessons.find(({ id }) => id === 'kitchen-scale')!;
  await openLesson(page, scale);
  await predict(page, scale.question.axis.most, 'keys');
  await next(page).click();
  await page.getByTestId('lesson-answer').waitFor();
  expect(await page.locator('.lesson-axis').evaluate(wordsOff)).toEqual([]);
  await phone.close();
});
