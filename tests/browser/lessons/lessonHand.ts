import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Locator, Page } from 'playwright-core';
import { inProject } from '../../../src/commands/paths.mjs';
import { switchesOf } from '../../../src/model/airframe/loadSwitches';
import type { Aircraft } from '../../../src/model/document/types';
import type { LessonBench } from '../../../src/model/lessons/bench';
import { parseLesson } from '../../../src/model/lessons/readLesson';
import type { Change, Lesson } from '../../../src/model/lessons/types';
import { drag, type PagePoint } from '../harness';

/** The lessons as they lie in their folder. */
export const lessons: readonly Lesson[] = readdirSync(inProject('demo-data/lessons')).map((name) => {
  const read = parseLesson(readFileSync(join(inProject('demo-data/lessons'), name), 'utf8'));
  if (!read.ok) throw new Error(`${name}: ${read.faults[0]?.sentence}`);
  return read.lesson;
});

export const room = (page: Page): Locator => page.getByTestId('lessons');
export const next = (page: Page): Locator => page.locator('.lesson-next');
export const title = (page: Page): Locator => page.locator('.lesson-words h3');
export const marker = (page: Page): Locator => page.getByRole('slider', { name: 'Your prediction' });

export async function goToLessons(page: Page): Promise<void> {
  await page
    .getByRole('navigation', { name: 'Places' })
    .getByRole('button', { name: 'Lessons', exact: true })
    .click();
  await room(page).locator('.lesson-list, .lesson-sheet').waitFor();
  const back = room(page).getByRole('button', { name: 'All lessons' });
  if (await back.isVisible()) await back.click();
}

export async function openLesson(page: Page, lesson: Lesson): Promise<void> {
  await goToLessons(page);
  await page.getByTestId('lesson-card').filter({ hasText: lesson.title }).locator('.lesson-open').click();
  await title(page).waitFor();
}

/** How the lesson's bench stands, read off it; nothing is ever written to it. */
export const benchNow = (page: Page): Promise<LessonBench & { readonly cgShown: boolean }> =>
  room(page).evaluate((place) => {
    const { document, view } = (place as HTMLElement).lessonBench!;
    const { fuelFraction, attitude, positions, layers } = view.getState();
    return JSON.parse(
      JSON.stringify({ aircraft: document.current(), fuelFraction, attitude, positions, cgShown: layers.cg }),
    );
  });

/** Whether the lesson's bench plays its fuel away. */
export const playing = (page: Page): Promise<boolean> =>
  room(page).evaluate((place) => (place as HTMLElement).lessonBench!.view.getState().playing);

/** Where a point of the lesson's aircraft falls on the page in the elevation shown; null in the free view. */
export const onStage = (page: Page, pointMm: readonly number[]): Promise<PagePoint | null> =>
  room(page).evaluate((place, p) => {
    const { view, axis } = (place as HTMLElement).lessonBench!;
    const { station, lateral, middleMm, spanStretch } = axis.getState();
    const shown = view.getState().view;
    if (shown === 'free') return null;
    const box = place.querySelector('.stage-box')!.getBoundingClientRect();
    const line = shown === 'front' ? lateral : station;
    const across = shown === 'front' ? p[1]! : p[0]!;
    const upright = shown === 'top' ? p[1]! : p[2]!;
    return {
      x: box.left + (across - line.atLeftMm) / line.mmPerPx,
      y:
        box.top +
        box.height / 2 -
        (upright - middleMm[shown]) / (Math.abs(line.mmPerPx) * (shown === 'top' ? spanStretch : 1)),
    };
  }, pointMm);

/** Moves the marker to a value: by mouse or finger to about there, and the rest by keys. */
export async function predict(
  page: Page,
  value: number,
  by: 'pointer' | 'touch' | 'keys' = 'pointer',
): Promise<void> {
  const slider = marker(page);
  if (by !== 'keys') {
    const [least, most] = [await figure(slider, 'aria-valuemin'), await figure(slider, 'aria-valuemax')];
    const share = Math.min(1, Math.max(0, (value - least) / (most - least)));
    await slider.press('Home');
    const from = await middle(slider);
    await slider.press('End');
    const to = await middle(slider);
    const aim = { x: from.x + (to.x - from.x) * share, y: to.y };
    await drag(page, to, aim, { steps: 4, touch: by === 'touch' });
  }
  await keysTo(slider, value);
}

/** By the arrow keys to the step that lies nearest. */
async function keysTo(slider: Locator, value: number): Promise<void> {
  const before = await figure(slider, 'aria-valuenow');
  // One press tells how long a step is.
  const up = value > before;
  await slider.press(up ? 'ArrowUp' : 'ArrowDown');
  const step = Math.abs((await figure(slider, 'aria-valuenow')) - before);
  if (step === 0) return;
  const presses = Math.round((value - (await figure(slider, 'aria-valuenow'))) / step);
  for (let at = 0; at < Math.abs(presses); at += 1)
    await slider.page().keyboard.press(presses > 0 ? 'ArrowUp' : 'ArrowDown');
}

export const figure = async (slider: Locator, name: string): Promise<number> =>
  Number(await slider.getAttribute(name));

export async function middle(locator: Locator): Promise<PagePoint> {
  const box = await locator.boundingBox();
  if (!box) throw new Error('it is not on the page');
  return { x: box.x + box.width / 2, y: box.y + box.height / 2 };
}

/** Does by hand what a change says: on the stage, with the sliders or with the buttons that the step gives. */
export async function doByHand(page: Page, change: Change, touch = false): Promise<void> {
  const now = await benchNow(page);
  const nameOf = (id: string) => namedIn(now.aircraft, id);
  switch (change.do) {
    case 'place':
      return carry(page, change, touch);
    case 'fuel':
      return slide(page, 'Fuel left', change.leftPct);
    case 'hold':
      await slide(page, 'Nose up or down', change.pitchDeg ?? 0);
      if (change.rollDeg !== undefined) await slide(page, 'Right wing down or up', change.rollDeg);
      if (change.forwardG !== undefined) await slide(page, 'Pushed forward', change.forwardG);
      return;
    case 'mass':
      return slide(page, `Mass of ${nameOf(change.itemId)}`, change.massG);
    case 'start':
      return slide(page, `In ${nameOf(change.tankId)} at the start`, change.ml);
    case 'plusMinus':
      if (change.g !== undefined) await slide(page, `± of ${nameOf(change.itemId)}`, change.g);
      if (change.mm !== undefined) await slide(page, `± of the place of ${nameOf(change.itemId)}`, change.mm);
      return;
    case 'shiftStructure':
      return slide(page, `Move ${nameOf(change.pieceId)} forward or aft`, change.aftMm);
    case 'takeOut':
      return room(page)
        .getByRole('button', { name: /^Take out / })
        .click();
    case 'switch': {
      const found = switchesOf(now.aircraft).find(({ id }) => id === change.switchId);
      const position = found?.positions.find(({ id }) => id === change.positionId);
      return room(page)
        .getByRole('group', { name: found?.name ?? '' })
        .getByRole('button', { name: position?.name ?? '' })
        .click();
    }
    case 'solved':
      throw new Error('what is solved is put in before');
  }
}

export const namedIn = ({ parts, tanks, structure }: Aircraft, id: string): string =>
  [...parts, ...tanks, ...structure].find((item) => item.id === id)?.name ?? 'Bare airframe';

/** Carries a part to about its place by mouse or finger, and nudges it the rest of the way. */
async function carry(page: Page, change: Extract<Change, { do: 'place' }>, touch: boolean): Promise<void> {
  const item = async () => {
    const { aircraft } = await benchNow(page);
    return [...aircraft.parts, ...aircraft.tanks].find(({ id }) => id === change.itemId)!;
  };
  const start = (await item()).positionMm;
  const goal = [change.stationMm ?? start[0], change.buttlineMm ?? start[1], change.waterlineMm ?? start[2]];
  const [from, to] = [await onStage(page, start), await onStage(page, goal)];
  if (from && to) await drag(page, from, to, { steps: 5, touch });
  if (touch) return;
  const view = await room(page).evaluate((place) => (place as HTMLElement).lessonBench!.view.getState().view);
  await page.locator('.lesson-stage .stage-picture').focus();
  for (const [axis, keys] of keysOf(view)) {
    const off = Math.round(goal[axis]! - (await item()).positionMm[axis]);
    for (let at = 0; at < Math.abs(off); at += 1) await page.keyboard.press(off > 0 ? keys[0] : keys[1]);
  }
}

/** Which keys move a thing up and down each axis in a view. */
const keysOf = (view: string): readonly (readonly [0 | 1 | 2, readonly [string, string]])[] => [
  view === 'front' ? [1, ['ArrowLeft', 'ArrowRight']] : [0, ['ArrowRight', 'ArrowLeft']],
  ...(view === 'top' || view === 'free' ? [[1, ['ArrowUp', 'ArrowDown']] as const] : []),
  [2, ['PageUp', 'PageDown']],
];

/** A native slider by a press on its track and then by keys. */
async function slide(page: Page, name: string, value: number): Promise<void> {
  const slider = room(page).getByRole('slider', { name, exact: true });
  const { min, max } = await slider.evaluate((input) => {
    const range = input as HTMLInputElement;
    return { min: Number(range.min), max: Number(range.max) };
  });
  const box = (await slider.boundingBox())!;
  const share = (value - min) / (max - min);
  await page.mouse.click(box.x + 8 + share * (box.width - 16), box.y + box.height / 2);
  const step = Number(await slider.getAttribute('step'));
  const presses = Math.round((value - Number(await slider.inputValue())) / step);
  for (let at = 0; at < Math.abs(presses); at += 1)
    await page.keyboard.press(presses > 0 ? 'ArrowRight' : 'ArrowLeft');
}
