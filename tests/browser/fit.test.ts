import { text as textOf } from 'node:stream/consumers';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import type { Aircraft } from '../../src/model/document/types';
import { clearances } from '../../src/model/fit/clearances';
import {
  axe,
  type Bench,
  drag,
  expectClean,
  look,
  onPage,
  openBench,
  placeOf,
  settled,
  showView,
} from './harness';

const PACK = 'flight-pack';

// One page for all, put back to the same aircraft before each test: opening it is most of the time.
let bench: Bench;
let demo: Aircraft;
beforeAll(async () => {
  bench = await openBench({ width: 1100, height: 760, graphics: 'unpainted' });
  await bench.page.waitForSelector('[data-testid=stage] canvas');
  demo = await now();
});
beforeEach(async () => {
  await bench.page.evaluate((aircraft) => {
    window.counterpoise.document.replace(aircraft);
    window.counterpoise.view.setState({ view: 'free', selectedId: null, fuelFraction: 1 });
  }, demo);
});
afterEach(() => expectClean(bench));
afterAll(() => bench.close());

const now = (): Promise<Aircraft> => bench.page.evaluate(() => window.counterpoise.document.current());
const card = () => bench.page.getByTestId('fit');
const words = async () => (await card().textContent()) ?? '';

async function select(id: string): Promise<void> {
  await bench.page.locator(`[data-testid=manifest] [data-item="${id}"] button`).first().click();
  await bench.page.getByTestId('clearances').waitFor();
}

/** A box part's sides, mm. */
function boxOf({ parts }: Aircraft, id: string) {
  const part = parts.find((one) => one.id === id);
  if (part?.shape.kind !== 'box') throw new Error(`${id} is no box`);
  const { lengthMm, widthMm, heightMm } = part.shape;
  return { at: part.positionMm, size: [lengthMm, widthMm, heightMm] as const };
}

/** Of two boxes square to the axes: what they share along the axis where it is least, mm (elementary geometry). */
function sharedMm(aircraft: Aircraft, a: string, b: string): number {
  const [one, other] = [boxOf(aircraft, a), boxOf(aircraft, b)];
  return Math.min(
    ...([0, 1, 2] as const).map((axis) => {
      const half = (one.size[axis] + other.size[axis]) / 2;
      return half - Math.abs(one.at[axis] - other.at[axis]);
    }),
  );
}

const mmPerPxNow = () => bench.page.evaluate(() => window.counterpoise.axis.getState().station.mmPerPx);

/** Zooms into the top elevation at a part, and gives where that part is on the page. */
async function zoomedAt(id: string) {
  const { page } = bench;
  await showView(page, 'Top');
  const far = await onPage(page, await placeOf(page, id));
  await page.mouse.move(far.x, far.y);
  const before = await mmPerPxNow();
  await page.mouse.wheel(0, -2000);
  await page.waitForFunction(
    (coarse) => window.counterpoise.axis.getState().station.mmPerPx < coarse,
    before,
  );
  await settled(page);
  const mmPerPx = await mmPerPxNow();
  return { from: await onPage(page, await placeOf(page, id)), mmPerPx };
}

/** Drags the pack by so much aft, without catching on anything. */
async function dragPack(aftMm: number, beforeRelease?: () => Promise<void>): Promise<void> {
  const { page } = bench;
  await select(PACK);
  const { from, mmPerPx } = await zoomedAt(PACK);
  await page.keyboard.down('Alt');
  const to = { x: from.x + aftMm / mmPerPx, y: from.y };
  await drag(page, from, to, { steps: 4, ...(beforeRelease && { beforeRelease }) });
  await page.keyboard.up('Alt');
}

describe('a pack dragged into its neighbour', () => {
  test('the clash is said with its depth while it is dragged; Move clear clears it in one step', async () => {
    const { page } = bench;
    await dragPack(18, async () => {
      const during = await now();
      const depth = sharedMm(during, PACK, 'receiver');
      expect(depth).toBeGreaterThan(5);
      // The words may follow the hand by a little; the page is asked until they have.
      await expect.poll(words).toContain(`Runs into Receiver, ${depth.toFixed(1)}\u202fmm deep.`);
      await expect.poll(() => page.getByTestId('stage-words').textContent()).toContain('into Receiver');
    });
    const clashing = await placeOf(page, PACK);
    const { steps } = await look(page);
    expect(await axe(page)).toEqual([]);
    await card()
      .getByRole('button', { name: /^Move clear/ })
      .first()
      .click();
    expect(sharedMm(await now(), PACK, 'receiver')).toBeLessThanOrEqual(0);
    expect(await words()).not.toContain('Runs into Receiver');
    expect((await look(page)).steps).toBe(steps + 1);
    await page.keyboard.press('Control+z');
    expect(await placeOf(page, PACK)).toEqual(clashing);
    expect(await words()).toContain('Runs into Receiver');
  });

  test('the distances on the card are those of the place it is dragged to', async () => {
    await dragPack(-5, async () => {
      const during = await now();
      // Along the axis that parts the two boxes; the pack's aft face and the receiver's front face.
      expect(-sharedMmAlong(during, 0)).toBeGreaterThan(6);
      const nearest = clearances(during, PACK).filter(({ distanceMm }) => distanceMm >= 0);
      const rows = () => bench.page.getByTestId('clearances').locator('tr').allTextContents();
      await expect.poll(async () => (await rows()).join()).toContain((-sharedMmAlong(during, 0)).toFixed(1));
      const listed = await rows();
      expect(listed).toHaveLength(4);
      listed.forEach((row, i) => {
        expect(row).toContain(nearest[i]?.name);
        expect(row).toContain(nearest[i]?.distanceMm.toFixed(1));
      });
    });
  });
});

/** What pack and receiver share along one axis; negative is the gap, mm. */
function sharedMmAlong(aircraft: Aircraft, axis: 0 | 1 | 2): number {
  const [pack, receiver] = [boxOf(aircraft, PACK), boxOf(aircraft, 'receiver')];
  return (pack.size[axis] + receiver.size[axis]) / 2 - Math.abs(pack.at[axis] - receiver.at[axis]);
}

test('a lead that is too short is said on its part’s card, with what is missing', async () => {
  const { page } = bench;
  const lead = demo.leads?.find(({ from }) => from === PACK);
  if (!lead) throw new Error('the demo pack has a lead');
  const path = [boxOf(demo, lead.from).at, ...lead.waypointsMm, boxOf(demo, lead.to).at];
  const neededMm = path.slice(1).reduce((sum, to, i) => {
    const from = path[i] ?? to;
    return sum + Math.hypot(to[0] - from[0], to[1] - from[1], to[2] - from[2]);
  }, 0);
  const ownedMm = Math.floor(neededMm) - 40;
  await page.locator(`[data-testid=manifest] [data-item="${lead.id}"] button`).first().click();
  const length = page.getByLabel('Length owned');
  await length.fill(String(ownedMm));
  await length.press('Enter');
  await select(PACK);
  expect(await words()).toContain(`${lead.name} is ${(neededMm - ownedMm).toFixed(0)}\u202fmm short`);
});

test('the template of a cut-out is a drawing in millimetres at 1:1', async () => {
  await select(PACK);
  expect(await words()).toContain('Pack cradle');
  const coming = bench.page.waitForEvent('download');
  await card().getByRole('button', { name: 'Save the 1:1 template' }).click();
  const download = await coming;
  expect(download.suggestedFilename()).toBe('pack-cradle-for-flight-pack.svg');
  const svg = await textOf(await download.createReadStream());
  const [, wide, high, box] = /width="([\d.]+)mm" height="([\d.]+)mm" viewBox="([^"]+)"/.exec(svg) ?? [];
  expect(box).toBe(`0 0 ${wide} ${high}`);
  const cut = /id="cut" points="([^"]+)"/.exec(svg)?.[1] ?? '';
  const corners = cut.split(' ').map((corner) => corner.split(',').map(Number));
  const across = (axis: number) => {
    const values = corners.map((corner) => corner[axis] ?? Number.NaN);
    return Math.max(...values) - Math.min(...values);
  };
  const { size } = boxOf(demo, PACK);
  expect([across(0), across(1)].sort((a, b) => b - a)).toEqual([
    expect.closeTo(size[0], 2),
    expect.closeTo(size[1], 2),
  ]);
});

test('a way in is found, played and stopped; the aircraft is as it was', async () => {
  const { page } = bench;
  await select(PACK);
  const place = await placeOf(page, PACK);
  const { steps } = await look(page);
  await card().getByRole('button', { name: 'Look for a way in' }).click();
  await card().getByText('Goes in through the nose hatch.').waitFor();
  await card().getByRole('button', { name: 'Play the path' }).click();
  await page.waitForFunction(
    ([id, heightMm]) =>
      window.counterpoise.document
        .current()
        .parts.some((part) => part.id === id && part.positionMm[2] > (heightMm as number) + 40),
    [PACK, place[2]] as const,
  );
  expect(await words()).not.toContain('out of Pod');
  await page.keyboard.press('Escape');
  expect(await placeOf(page, PACK)).toEqual(place);
  expect(await look(page)).toMatchObject({ steps, previewing: false });
});
