import { afterAll, beforeAll, expect, test } from 'vitest';
import { cutOuts } from '../../src/model/airframe/cutOuts';
import { variantName } from '../../src/model/document/variants';
import type { PaperId } from '../../src/model/sheet/paper';
import { demo, NAMES, withPartAt } from '../demo/demoAircraft';
import { axe, type Bench, openBench, put } from './harness';
import { longMm, readPdf } from './harness/pdf';

let bench: Bench;
beforeAll(async () => {
  bench = await openBench({ width: 1440, height: 900, graphics: false });
  const { page } = bench;
  await page.waitForSelector('.answer-headline');
  await page.getByRole('navigation', { name: 'Places' }).getByRole('button', { name: 'Sheet' }).click();
  await page.getByTestId('sheet-page').first().waitFor();
});
afterAll(() => bench.close());

/** The pages are those of this aircraft. */
async function shown(name: string): Promise<void> {
  await bench.page.waitForFunction((wanted) => {
    const pages = document.querySelectorAll('[data-testid=sheet-page]');
    const named = [...pages].every((each) => each.querySelector('.title-block dd')?.textContent === wanted);
    return pages.length > 0 && named && document.querySelector('.sheet-measure') === null;
  }, name);
}

/** Everything that the bench checks has been checked, so that no banner is about that. */
async function checked(): Promise<void> {
  await bench.page.waitForFunction(
    () => !window.counterpoise.verdict.judgement().findings.some(({ kind }) => kind.endsWith('-unchecked')),
    undefined,
  );
}

const choose = (paper: PaperId) =>
  bench.page.evaluate((id) => {
    const { view } = window.counterpoise;
    view.setState({ sheet: { ...view.getState().sheet, paper: id } });
  }, paper);

/** What is cut off or lies over something else on the pages; nothing where all is well. */
const spoiled = () =>
  bench.page.evaluate(() => {
    const found: string[] = [];
    for (const [at, page] of document.querySelectorAll('[data-testid=sheet-page]').entries()) {
      const body = page.querySelector('.sheet-body')!;
      const box = body.getBoundingClientRect();
      const least = 0.6;
      const inside = (element: Element) => {
        const { left, right, top, bottom, width } = element.getBoundingClientRect();
        if (width === 0) return;
        if (
          left < box.left - least ||
          right > box.right + least ||
          top < box.top - least ||
          bottom > box.bottom + least
        )
          found.push(`page ${at + 1}: “${element.textContent?.slice(0, 40)}” leaves its page`);
      };
      for (const element of body.querySelectorAll('p, h3, h4, td, th, text, svg, article')) inside(element);
      for (const cell of body.querySelectorAll('td, th, .field-card, .sheet-banner'))
        if (cell.scrollWidth > cell.clientWidth + 1 || cell.scrollHeight > cell.clientHeight + 1)
          found.push(`page ${at + 1}: “${cell.textContent?.slice(0, 40)}” is cut off`);
      const pieces = [...body.children].map((element) => element.getBoundingClientRect());
      for (const [i, piece] of pieces.entries())
        if (i > 0 && piece.top < pieces[i - 1]!.bottom - least)
          found.push(`page ${at + 1}: piece ${i} lies over another`);
      if (page.querySelector('.title-block')!.getBoundingClientRect().top < box.bottom - least)
        found.push(`page ${at + 1}: the title block lies over the body`);
      for (const drawing of body.querySelectorAll('svg.sheet-drawing')) {
        const words = [...drawing.querySelectorAll('text')].map((text) => ({
          text: text.textContent,
          box: text.getBoundingClientRect(),
        }));
        for (const [i, a] of words.entries())
          for (const b of words.slice(i + 1))
            if (
              Math.min(a.box.right, b.box.right) - Math.max(a.box.left, b.box.left) > 1 &&
              Math.min(a.box.bottom, b.box.bottom) - Math.max(a.box.top, b.box.top) > 2.5
            )
              found.push(`page ${at + 1}: “${a.text}” and “${b.text}” overlap`);
      }
    }
    return found;
  });

const rowsOf = (section: string) =>
  bench.page.$$eval(`[data-table="${section}"] tbody tr`, (rows) =>
    rows.map((row) => [...row.querySelectorAll('td')].map((cell) => cell.firstChild?.textContent ?? '')),
  );

const papersOf = { sandmartin: 'letter', fieldfare: 'a4', whimbrel: 'letter', corncrake: 'a4' } as const;

test.each(NAMES)(
  '%s: on its paper nothing is cut off or lies over another, and every part has its row',
  async (name) => {
    const aircraft = demo(name);
    const paper = papersOf[name];
    await choose(paper);
    await put(bench.page, aircraft);
    await bench.page.waitForFunction(
      (wide) =>
        document.querySelector<HTMLElement>('.sheet-scroller')?.style.getPropertyValue('--page-wide') ===
        wide,
      paper === 'a4' ? '210mm' : '215.9mm',
    );
    await shown(variantName(aircraft));
    expect(await spoiled()).toEqual([]);
    const rows = await rowsOf('parts parts');
    expect(rows.map(([, part]) => part).sort()).toEqual(
      [...aircraft.tanks, ...aircraft.parts].map((item) => item.name).sort(),
    );
    expect(rows.map(([number]) => Number(number))).toEqual(rows.map((_, at) => at + 1));
  },
);

test('printed, pages have the paper’s size, rulers and templates their true size', async () => {
  const { page } = bench;
  const aircraft = demo('sandmartin');
  await put(page, aircraft);
  await choose('a4');
  await shown(aircraft.name);
  const count = await page.getByTestId('sheet-page').count();
  const { sizesMm, strokes } = readPdf(await page.pdf({ preferCSSPageSize: true }));
  expect(sizesMm.length).toBe(count);
  for (const [wide, high] of sizesMm) {
    // The browser takes paper in whole pixels of 1/96 in.
    expect(Math.abs(wide - 210)).toBeLessThan(0.3);
    expect(Math.abs(high - 297)).toBeLessThan(0.3);
  }
  const lengths = strokes.map(longMm);
  const drawn = (mm: number) => lengths.filter((each) => Math.abs(each - mm) <= 0.1).length;
  // One pair on the page of the marks, and one on that of each cut-out.
  const cuts = cutOuts(aircraft);
  const rulers = 1 + cuts.length;
  expect(drawn(100)).toBeGreaterThanOrEqual(rulers);
  expect(drawn(101.6)).toBeGreaterThanOrEqual(rulers);
  for (const { outlineMm } of cuts)
    outlineMm.forEach(([u, v], at) => {
      const [u0, v0] = outlineMm.at(at - 1)!;
      expect(drawn(Math.hypot(u - u0, v - v0))).toBeGreaterThan(0);
    });
  // The height of the strip’s balance mark above the leading edge, as its own words say.
  const strip = await page.$eval('[data-of="balance LEFT"]', (mark) => {
    const yOf = (element: Element | null) => Number(element?.getAttribute('points')?.split(/[ ,]/)[1]);
    const words = [...(mark.closest('svg')?.querySelectorAll('text') ?? [])].find((text) =>
      /^balance/.test(text.textContent ?? ''),
    );
    return {
      mm: yOf(mark) - yOf(mark.closest('svg')?.querySelector('[data-of="edge LEFT"]') ?? null),
      says: Number(/([\d.]+)/.exec(words?.textContent ?? '')?.[1]),
    };
  });
  expect(Math.abs(strip.mm - strip.says)).toBeLessThanOrEqual(0.1);
});

test('the sheet says what the bench says: the CG, and what stands in the way on every page and on the card', async () => {
  const { page } = bench;
  await checked();
  await expect.poll(() => page.locator('.sheet-page > .sheet-banner').count()).toBe(0);
  const facts = await rowsOf('cg facts');
  const value = (label: string) => facts.find(([name]) => name === label)?.[1];
  const onBench = await page.locator('[data-fact=cg-full]').textContent();
  expect(onBench).toContain(value('CG full'));
  const tail = { ...withPartAt(demo('sandmartin'), 'flight-pack', [1000, 0, 0]), name: 'Tail-heavy' };
  await put(page, tail);
  await shown('Tail-heavy');
  await checked();
  await expect.poll(() => page.locator('.field-card .sheet-banner').textContent()).toMatch(/tail-heavy by/);
  const banners = await page.locator('.sheet-banner').allTextContents();
  expect(banners.length).toBe((await page.getByTestId('sheet-page').count()) + 1);
  for (const banner of banners) expect(banner).toMatch(/^Not ready to fly: tail-heavy by/);
});

test('what is ticked is printed, and is remembered with the paper and the name', async () => {
  const { page } = bench;
  const controls = page.getByRole('complementary', { name: 'What is printed' });
  for (const name of [
    'Drawings',
    'Order of fitting',
    'Templates, 1:1',
    'Centre of gravity',
    'Weigh-in form',
    'Before the first flight',
    'Field card',
  ])
    await controls.getByLabel(name).uncheck();
  await controls.getByLabel('US Letter').check();
  await controls.getByLabel('Made by').fill('A builder');
  await expect.poll(() => page.getByTestId('sheet-page').count()).toBeLessThan(4);
  await expect.poll(() => page.locator('.title-block').first().textContent()).toContain('A builder');
  await controls.getByLabel('Wing marked at buttline').fill('furlong');
  await controls.getByLabel('Wing marked at buttline').press('Enter');
  await expect.poll(() => controls.getByRole('alert').textContent()).toMatch(/Expected|Cannot read/);
  await controls.getByLabel('Wing marked at buttline').press('Escape');
  expect(await axe(page)).toEqual([]);
  const kept = await page.evaluate(
    () => JSON.parse(localStorage.getItem('counterpoise.preferences') ?? '{}').sheet,
  );
  expect(kept).toMatchObject({ paper: 'letter', by: 'A builder' });
  expect(kept.leftOut).toHaveLength(7);
});
