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
  readonly theme: (typeof themes)[number];
}

/** One page for all places of a size and a theme: they are gone to one after the other. */
async function takeAll({ browser, url, size, theme }: Shots): Promise<number> {
  const places = screenPlaces.filter((place) => isWanted(nameOf(size, theme, place)));
  if (places.length === 0) return 0;
  const [width = 0, height = 0] = size.split('x').map(Number);
  const context = await browser.newContext({
    viewport: { width, height },
    colorScheme: theme,
    reducedMotion: 'reduce',
    hasTouch: width < 900,
  });
  const page = await context.newPage();
  for (const place of places) {
    await page.goto(url, { waitUntil: 'load' });
    await atRest(page);
    await put(page, place.demo);
    await place.goTo(page);
    await atRest(page);
    await page.screenshot({ path: `${folder}/${nameOf(size, theme, place)}.png` });
  }
  await context.close();
  return places.length;
}

/** Puts a demo on the bench, as a person does. */
async function put(page: Page, demo: string): Promise<void> {
  const name = demo.charAt(0).toUpperCase() + demo.slice(1);
  await page.locator('.app-name').click();
  await page.getByRole('button', { name: 'Choose an aircraft…' }).click();
  await page
    .getByRole('dialog')
    .getByRole('button', { name: new RegExp(name) })
    .click();
  await page.waitForFunction((wanted) => window.counterpoise.document.current().name === wanted, name);
  await atRest(page);
}

/** The stage drawn, the estimate there, and what follows at rest settled. */
async function atRest(page: Page): Promise<void> {
  await page.waitForSelector('[data-testid=stage] canvas', { state: 'attached' });
  await page.waitForFunction(() => window.counterpoise.stability.get().fresh);
  await page.waitForTimeout(900);
}

if (wanted.length === 0) rmSync(folder, { recursive: true, force: true });
mkdirSync(folder, { recursive: true });
const served = await serveBench();
try {
  const browser = await chromium.connect(served.browser.wsEndpoint());
  let taken = 0;
  for (const size of screenSizes)
    for (const theme of themes) {
      taken += await takeAll({ browser, url: served.url, size, theme });
      if (taken > 0) console.log(`${taken} pictures, ${size} ${theme}`);
    }
  await browser.close();
  if (taken === 0) process.exitCode = 1;
  console.log(taken > 0 ? `They are in ${folder}.` : `No picture is called ${wanted.join(' ')}.`);
} finally {
  await served.close();
}
