import { mkdirSync, rmSync } from 'node:fs';
import { type Browser, chromium, type Page } from 'playwright-core';
import { inProject } from './paths.mjs';
import { type ScreenPlace, screenPlaces, screenSizes } from './screenPlaces';
import { serveBench } from './servedBench';

// npm run screens [-- part of a picture's name …]: pictures of every place, both themes, every size, in .cache/screens.
const wanted = process.argv.slice(2);
const folder = inProject('.cache/screens');

const themes = ['light', 'dark'] as const;
const nameOf = (size: string, theme: string, { name }: ScreenPlace) => `${name}-${size}-${theme}`;
const isWanted = (name: string) => wanted.every((words) => name.includes(words));

interface Shots {
  readonly browser: Browser;
  readonly url: string;
  readonly size: string;
}

/** One page for all places of a size: they are gone to one after the other, and pictured in either theme. */
async function takeAll({ browser, url, size }: Shots): Promise<number> {
  const [width = 0, height = 0] = size.split('x').map(Number);
  const context = await browser.newContext({
    viewport: { width, height },
    reducedMotion: 'reduce',
    hasTouch: width < 900,
  });
  const page = await context.newPage();
  let taken = 0;
  for (const place of screenPlaces) {
    const shown = themes.filter((theme) => isWanted(nameOf(size, theme, place)));
    if (shown.length === 0) continue;
    await page.goto(url, { waitUntil: 'load' });
    await put(page, place.demo);
    await place.goTo(page);
    for (const colorScheme of shown) {
      await page.emulateMedia({ colorScheme });
      await arrived(page, nameOf(size, colorScheme, place));
      await page.screenshot({ path: `${folder}/${nameOf(size, colorScheme, place)}.png` });
      taken += 1;
    }
  }
  await context.close();
  return taken;
}

/** Puts a demo on the bench, as a person does. */
async function put(page: Page, demo: string): Promise<void> {
  const name = demo.charAt(0).toUpperCase() + demo.slice(1);
  await page.waitForFunction(() => window.counterpoise !== undefined);
  if (await page.evaluate((wanted) => window.counterpoise.document.current().name === wanted, name)) return;
  await page.locator('.app-name').click();
  await page.getByRole('button', { name: 'Choose an aircraft…' }).click();
  await page
    .getByRole('dialog')
    .getByRole('button', { name: new RegExp(name) })
    .click();
  await page.waitForFunction((wanted) => window.counterpoise.document.current().name === wanted, name);
}

/** Said while something is on its way. */
const ON_ITS_WAY = 'Fetching the|Being worked out|Not judged yet|Not checked yet|Looking for';
/** What is missing after so long is said, and pictured as it is, ms. */
const PATIENCE_MS = 90_000;

/** The stage drawn, and everything that follows at rest there: estimate, fit, load states, advice, and no word of waiting. */
async function arrived(page: Page, name: string): Promise<void> {
  await page
    .waitForFunction(
      (waitingWords) => {
        const { stability, fit, rest, verdict } = window.counterpoise;
        const canvas = document.querySelector<HTMLCanvasElement>('[data-testid=stage] canvas');
        return (
          (canvas?.drawn?.render.frame ?? 0) > 0 &&
          document.querySelector('.stage-bar') !== null &&
          stability.get().fresh &&
          fit.whole() !== null &&
          rest.get().certainty !== null &&
          rest.get().loadSearch.state !== 'waiting' &&
          !verdict.checking() &&
          document.fonts.status === 'loaded' &&
          !new RegExp(waitingWords, 'i').test(document.body.textContent ?? '')
        );
      },
      ON_ITS_WAY,
      { timeout: PATIENCE_MS },
    )
    .catch(() => console.log(`${name}: pictured while something is still on its way.`));
  await page.evaluate(
    () => new Promise<void>((done) => requestAnimationFrame(() => requestAnimationFrame(() => done()))),
  );
  await page.waitForTimeout(SETTLING_MS);
}

/** What is eased into place, ms. */
const SETTLING_MS = 300;

if (wanted.length === 0) rmSync(folder, { recursive: true, force: true });
mkdirSync(folder, { recursive: true });
const served = await serveBench();
try {
  const browser = await chromium.connect(served.browser.wsEndpoint());
  let taken = 0;
  for (const size of screenSizes) {
    taken += await takeAll({ browser, url: served.url, size });
    if (taken > 0) console.log(`${taken} pictures, ${size}`);
  }
  await browser.close();
  if (taken === 0) process.exitCode = 1;
  console.log(taken > 0 ? `They are in ${folder}.` : `No picture is called ${wanted.join(' ')}.`);
} finally {
  await served.close();
}
