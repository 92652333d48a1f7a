import type { Page } from 'playwright-core';
import { switchesOf } from '../../../src/model/airframe/loadSwitches';
import type { Change } from '../../../src/model/lessons/types';
import { drag } from '../harness';
import { benchNow, figure, marker, middle, namedIn, onStage, room } from './lessonHand';

/** So often a finger goes back to a thing that did not quite come where it should. */
const TRIES = 6;

/** Moves the marker to within so much of a value, by finger alone. */
export async function predictByFinger(page: Page, value: number, within: number): Promise<void> {
  const slider = marker(page);
  const [least, most] = [await figure(slider, 'aria-valuemin'), await figure(slider, 'aria-valuemax')];
  const line = (await page.locator('.lesson-axis').boundingBox())!;
  // The axis of a sideways question runs to the left: a finger that went the wrong way turns round.
  let way = 1;
  let before = Infinity;
  for (let turn = 0; turn < TRIES; turn += 1) {
    const off = value - (await figure(slider, 'aria-valuenow'));
    if (Math.abs(off) <= within / 2) return;
    if (Math.abs(off) > before) way = -way;
    before = Math.abs(off);
    const from = await middle(slider);
    const to = { x: from.x + ((way * off) / (most - least)) * line.width, y: from.y };
    await drag(page, from, to, { steps: 4, touch: true });
  }
  throw new Error(
    `the marker stands at ${await figure(slider, 'aria-valuenow')}, not at ${value} within ${within}`,
  );
}

/** Does by finger what a change says. */
export async function doByFinger(page: Page, change: Change): Promise<void> {
  const { aircraft } = await benchNow(page);
  const nameOf = (id: string) => namedIn(aircraft, id);
  switch (change.do) {
    case 'place':
      return carryByFinger(page, change);
    case 'fuel':
      return slideByFinger(page, 'Fuel left', change.leftPct);
    case 'hold':
      return slideByFinger(page, 'Nose up or down', change.pitchDeg ?? 0);
    case 'mass':
      return slideByFinger(page, `Mass of ${nameOf(change.itemId)}`, change.massG);
    case 'plusMinus':
      return slideByFinger(page, `± of ${nameOf(change.itemId)}`, change.g ?? 0);
    case 'switch': {
      const found = switchesOf(aircraft).find(({ id }) => id === change.switchId);
      const position = found?.positions.find(({ id }) => id === change.positionId);
      return room(page)
        .getByRole('group', { name: found?.name ?? '' })
        .getByRole('button', { name: position?.name ?? '' })
        .tap();
    }
    default:
      throw new Error(`no finger was taught to do ${change.do}`);
  }
}

async function carryByFinger(page: Page, change: Extract<Change, { do: 'place' }>): Promise<void> {
  const placeNow = async () => {
    const { aircraft } = await benchNow(page);
    return [...aircraft.parts, ...aircraft.tanks].find(({ id }) => id === change.itemId)!.positionMm;
  };
  const start = await placeNow();
  const goal = [change.stationMm ?? start[0], change.buttlineMm ?? start[1], change.waterlineMm ?? start[2]];
  for (let turn = 0; turn < TRIES; turn += 1) {
    const now = await placeNow();
    if (Math.hypot(...now.map((at, axis) => at - goal[axis]!)) <= 1) return;
    const [from, to] = [await onStage(page, now), await onStage(page, goal)];
    if (!from || !to) throw new Error('a finger carries in an elevation only');
    await drag(page, from, to, { steps: 5, touch: true });
  }
}

/** A native slider, drawn by its thumb. */
async function slideByFinger(page: Page, name: string, value: number): Promise<void> {
  const slider = room(page).getByRole('slider', { name, exact: true });
  const { min, max, step } = await slider.evaluate((input) => {
    const { min, max, step } = input as HTMLInputElement;
    return { min: Number(min), max: Number(max), step: Number(step) };
  });
  const at = async (share: number) => {
    const box = (await slider.boundingBox())!;
    return { x: box.x + 8 + share * (box.width - 16), y: box.y + box.height / 2 };
  };
  for (let turn = 0; turn < TRIES; turn += 1) {
    const now = Number(await slider.inputValue());
    if (Math.abs(now - value) <= step / 2) return;
    const [from, to] = [await at((now - min) / (max - min)), await at((value - min) / (max - min))];
    await drag(page, from, to, { steps: 4, touch: true });
  }
}
