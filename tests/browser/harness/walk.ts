import type { Page } from 'playwright-core';
import type { Aircraft } from '../../../src/model/document/types';
import { noFigures } from './findings';
import { settled } from './look';

/** Puts an aircraft on the bench, as opening its file does. */
export async function put(page: Page, aircraft: Aircraft): Promise<void> {
  await page.evaluate((put) => window.counterpoise.document.replace(put), aircraft);
  await settled(page);
}

/**
 * Goes to every place of the bench: each view, the card of each thing aboard and of the aircraft itself with all its
 * folds open, every dialog that a button of a place opens. What shows a figure that is none comes back, with where.
 */
export async function walk(page: Page): Promise<string[]> {
  const found = new Set<string>();
  const look = async (where: string) => {
    await settled(page);
    for (const line of await noFigures(page)) found.add(`${where}: ${line}`);
  };
  for (const view of ['side', 'top', 'front', 'free'] as const) {
    await page.evaluate((shown) => window.counterpoise.view.setState({ view: shown }), view);
    await look(`${view} view`);
  }
  const ids = await page.evaluate(() => {
    const { structure, tanks, parts, leads = [] } = window.counterpoise.document.current();
    return [...structure, ...tanks, ...parts, ...leads].map(({ id }) => id);
  });
  for (const id of [...ids, null]) {
    await page.evaluate((selectedId) => window.counterpoise.view.setState({ selectedId }), id);
    await settled(page);
    await page.evaluate(() => {
      for (const fold of document.querySelectorAll<HTMLElement>('.fold [aria-expanded=false]')) fold.click();
    });
    await settled(page);
    await page.evaluate(() => {
      for (const more of document.querySelectorAll('details')) more.open = true;
    });
    await look(`card of ${id ?? 'the aircraft'}`);
  }
  for (const button of await page.locator('[aria-haspopup=dialog]:enabled:visible').all()) {
    const name = (await button.textContent()) ?? '';
    await button.click();
    await page.getByRole('dialog').waitFor();
    await look(`dialog of ${name}`);
    await page.keyboard.press('Escape');
    await page.getByRole('dialog').waitFor({ state: 'hidden' });
  }
  return [...found];
}
