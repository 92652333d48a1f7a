import { readFile } from 'node:fs/promises';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { inProject } from '../../src/commands/paths.mjs';
import { axe, type Bench, openBench } from './harness';

let bench: Bench;
const fieldfare = async () => JSON.parse(await readFile(inProject('demo-data/fieldfare.json'), 'utf8'));

async function putOn({ page }: Bench, change: (aircraft: ReturnType<typeof JSON.parse>) => unknown) {
  const aircraft = change(await fieldfare());
  await page.evaluate((made) => window.counterpoise.document.replace(made as never), aircraft);
}

const menu = async ({ page }: Bench, name: string) => {
  await page.locator('.app-name').click();
  await page.getByRole('button', { name, exact: true }).click();
};

beforeAll(async () => {
  bench = await openBench({ width: 1280, height: 800, graphics: 'unpainted' });
  await bench.page.waitForSelector('.answer-headline');
  await putOn(bench, ({ talk: _, ...aircraft }) => aircraft);
});
afterAll(() => bench.close());

const slides = () => bench.page.getByTestId('slide');
const titles = () => bench.page.getByLabel(/^Title of slide/);
const show = () => bench.page.getByTestId('show');
const focused = () =>
  bench.page.evaluate(
    () => document.activeElement?.getAttribute('aria-label') ?? document.activeElement?.textContent?.trim(),
  );
const aircraftNow = () =>
  bench.page.evaluate(() => JSON.stringify(window.counterpoise.document.api.getState().committed));

test('a talk is made by hand: bookmarked, named, put in order, replaced, undone', async () => {
  const { page } = bench;
  await menu(bench, 'Bookmark for a talk');
  await page.getByText('Bookmarked as slide 1 of the talk.').waitFor();
  await page.evaluate(() => window.counterpoise.view.setState({ view: 'side', fuelFraction: 0.5 }));
  await menu(bench, 'Bookmark for a talk');
  await menu(bench, 'Present…');
  await expect.poll(() => slides().count()).toBe(2);
  await titles().first().fill('Full');
  await titles().first().press('Enter');
  await titles().nth(1).fill('Half');
  await titles().nth(1).press('Enter');
  await page.getByRole('button', { name: 'Move slide 2 up' }).click();
  await expect.poll(() => titles().first().inputValue()).toBe('Half');
  // What cannot go further up takes no focus; it goes to the slide that stands there now.
  await expect.poll(focused).toBe('Show from slide 2');
  await page.keyboard.press('Control+z');
  await expect.poll(() => titles().first().inputValue()).toBe('Full');
  // The burn, and what stands now kept as a ghost, before a pack is moved.
  await slides().nth(1).locator('summary').click();
  await slides().nth(1).getByLabel('Play the burn').check();
  await slides().nth(1).getByLabel('In', { exact: true }).fill('1');
  await slides().nth(1).getByLabel('In', { exact: true }).press('Enter');
  await slides().nth(1).getByLabel('Down to').fill('150');
  await slides().nth(1).getByLabel('Down to').press('Enter');
  await slides().nth(1).getByText('Expected 0 to 100 % of the fuel, got 150.0 %.').waitFor();
  await slides().nth(1).getByLabel('Down to').press('Escape');
  await slides().nth(1).getByLabel('Compare').selectOption('ghost');
  await slides()
    .nth(1)
    .getByText(/burns to 0 % in 1 s; over “Before”/)
    .waitFor();
  expect(await axe(page)).toEqual([]);
  await page.evaluate(() => {
    const { document } = window.counterpoise;
    const { committed } = document.api.getState();
    const parts = committed.parts.map((part) =>
      part.id === 'ecu-pack' ? { ...part, positionMm: [400, 0, -20] as const } : part,
    );
    document.commit('Move', { ...committed, parts });
  });
});

test('it is presented by keys; the figures are the bench’s; leaving leaves all as it was', async () => {
  const { page } = bench;
  const before = await aircraftNow();
  const viewBefore = await page.evaluate(() => JSON.stringify(window.counterpoise.view.getState()));
  const onBench = (await page.locator('[data-fact=cg-full] .fact-value').textContent()) ?? '';
  await page.getByRole('button', { name: 'Present', exact: true }).click();
  await show().getByText('1 / 2').waitFor();
  await expect.poll(() => show().getByRole('heading').textContent()).toBe('Full');
  await expect.poll(() => show().locator('[data-figure=cg-full] dd').textContent()).toBe(onBench);
  expect(await axe(page)).toEqual([]);
  await page.keyboard.press('PageDown');
  await show().getByText('2 / 2').waitFor();
  await expect.poll(() => show().locator('[data-figure=fuel] dd').textContent()).toBe('0 %');
  // Dry, the CG of now is that of the fact, by the same sum.
  const dry = await page.locator('.answer [data-fact=cg-dry] .fact-value').textContent();
  await expect.poll(() => show().locator('[data-figure=cg-now] dd').textContent()).toBe(dry);
  await show()
    .getByText(/^Outlines: Before, CG/)
    .waitFor();
  await page.keyboard.press(' ');
  await show().getByText('2 / 2').waitFor();
  await page.keyboard.press('Home');
  await show().getByText('1 / 2').waitFor();
  await page.keyboard.press('End');
  await show().getByText('2 / 2').waitFor();
  await page.keyboard.press('n');
  await show().getByText('This slide has no note.').waitFor();
  await page.keyboard.press('1');
  // Nothing is undone behind what is shown.
  await page.keyboard.press('Control+z');
  await page.keyboard.press('Escape');
  await show().waitFor({ state: 'detached' });
  expect(await aircraftNow()).toBe(before);
  expect(await page.evaluate(() => JSON.stringify(window.counterpoise.view.getState()))).toBe(viewBefore);
  const present = page.getByRole('button', { name: 'Present', exact: true });
  await expect.poll(() => present.evaluate((element) => element === document.activeElement)).toBe(true);
});

test('a slide whose part is gone says so and shows the rest', async () => {
  const { page } = bench;
  await page.evaluate(() => {
    const { document } = window.counterpoise;
    const { committed } = document.api.getState();
    const talk = committed.talk?.map((slide) => ({ ...slide, selectedId: 'gone', variantId: 'winter' }));
    document.commit('Spoil', { ...committed, talk } as typeof committed);
  });
  await page.getByRole('button', { name: 'Show from slide 1' }).click();
  await show()
    .getByText(/The variant of this slide \(“winter”\) is no longer there\./)
    .waitFor();
  await expect.poll(() => show().locator('[data-figure=cg-full] dd').textContent()).toMatch(/\d\smm$/);
  await show().getByRole('button', { name: 'Leave' }).click();
  await show().waitFor({ state: 'detached' });
  await page.getByRole('button', { name: 'Delete slide 1' }).click();
  await expect.poll(focused).toBe('Show from slide 1');
  await page.getByRole('button', { name: 'Delete slide 1' }).click();
  await expect.poll(focused).toBe('Bookmark what is on the bench');
});

test('of two states side by side both burn, each from its own fuel', async () => {
  const { page } = bench;
  await putOn(bench, ({ talk, ...aircraft }) => ({
    ...aircraft,
    talk: [
      {
        ...talk[4],
        burn: { to: 0.1, seconds: 1 },
        against: { as: 'beside', name: 'Half', fuel: 0.5 },
      },
    ],
  }));
  await page.getByRole('button', { name: 'Present', exact: true }).click();
  const left = show().locator('[data-figure=fuel] dd');
  await expect.poll(() => left.allTextContents()).toEqual(['10 %', '10 %']);
  // It burns on at once: what stood there is noted as it comes.
  await show().evaluate((place) => {
    const note = () => {
      const figures = [...place.querySelectorAll('[data-figure=fuel] dd')];
      place.dataset.seen += `${figures.map(({ textContent }) => textContent).join(' and ')};`;
    };
    new MutationObserver(note).observe(place, { subtree: true, childList: true, characterData: true });
  });
  await show().getByRole('button', { name: 'Again' }).click();
  await expect.poll(() => show().getAttribute('data-seen')).toContain('100 % and 50 %');
  await show().getByRole('button', { name: 'Leave' }).click();
  await show().waitFor({ state: 'detached' });
});

test('by touch at 820 × 1180 a swipe turns the slide, two states stand one above the other', async () => {
  const tablet = await openBench({ width: 820, height: 1180, touch: true, graphics: 'unpainted' });
  try {
    const { page } = tablet;
    await page.waitForSelector('.answer-headline');
    await putOn(tablet, (aircraft) => aircraft);
    await page.locator('.app-name').tap();
    await page.getByRole('button', { name: 'Present…' }).tap();
    await page.getByRole('button', { name: 'Show from slide 4' }).tap();
    const shown = page.getByTestId('show');
    await shown.getByText('4 / 6').waitFor();
    const swipe = (fromX: number, toX: number) =>
      page.getByTestId('show-hand').evaluate(
        (hand, [from, to]) => {
          const at = (type: string, clientX: number) =>
            hand.dispatchEvent(
              new PointerEvent(type, { bubbles: true, pointerType: 'touch', clientX, clientY: 400 }),
            );
          at('pointerdown', from);
          at('pointermove', to);
          at('pointerup', to);
        },
        [fromX, toX] as const,
      );
    await swipe(600, 580);
    await shown.getByText('4 / 6').waitFor();
    await swipe(600, 300);
    await shown.getByText('5 / 6').waitFor();
    await expect.poll(() => shown.locator('.show-stage').count()).toBe(2);
    const now = shown.locator('[data-figure=cg-now] dd');
    // Full and dry are not the same place.
    await expect.poll(async () => new Set(await now.allTextContents()).size).toBe(2);
    const [above, below] = await shown.locator('.show-stage').evaluateAll((all) =>
      all.map((each) => {
        const { top, bottom } = each.getBoundingClientRect();
        return { top, bottom };
      }),
    );
    expect(below?.top).toBeGreaterThanOrEqual(above?.bottom ?? Number.NaN);
    await swipe(300, 600);
    await shown.getByText('4 / 6').waitFor();
    // Held nose up and half full, it is about the CG of the moment.
    await expect.poll(() => shown.locator('[data-figure=fuel] dd').textContent()).toBe('50 %');
    await shown.getByRole('button', { name: 'Leave' }).tap();
    await shown.waitFor({ state: 'detached' });
  } finally {
    await tablet.close();
  }
});
