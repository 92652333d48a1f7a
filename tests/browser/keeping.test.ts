import type { BrowserContext, Page } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import { blankAircraft } from '../../src/model/document/blank';
import { writeAircraft } from '../../src/model/document/write';
import { type Bench, type BenchOptions, openBench } from './harness';

const SMALL = { width: 1120, height: 600 } as const;

async function opened(options: BenchOptions = {}): Promise<Bench> {
  const bench = await openBench({ ...SMALL, graphics: false, ...options });
  await bench.page.getByTestId('manifest').waitFor();
  return bench;
}

const notices = (page: Page) => page.getByTestId('notices');
const nameNow = (page: Page) => page.evaluate(() => window.counterpoise.document.current().name);
const rename = (page: Page, name: string) =>
  page.evaluate((given) => {
    const { document } = window.counterpoise;
    document.commit('Rename', { ...document.current(), name: given });
  }, name);
/** The names in the slots of every aircraft that the browser keeps. */
const keptNames = (page: Page) =>
  page.evaluate(() =>
    Object.keys(localStorage)
      .filter((key) => /^counterpoise\.autosave\..*\b[ab]$/.test(key))
      .map((key) => /"name": "([^"]*)"/.exec(localStorage.getItem(key) ?? '')?.[1]),
  );

describe('a store that does not keep', () => {
  const refusing = (name: string, denied: boolean) => (context: BrowserContext) =>
    context.addInitScript(
      ([error, all]) => {
        const refuse = () => {
          throw new DOMException('The request was refused.', error);
        };
        if (all) Object.defineProperty(window, 'localStorage', { get: refuse });
        else Storage.prototype.setItem = refuse;
      },
      [name, denied] as const,
    );
  test.each([
    ['denied', refusing('SecurityError', true), /does not let the bench keep anything/],
    ['full', refusing('QuotaExceededError', false), /no room left/],
  ])('%s: told at the start, in words, with the bench working', async (_what, prepare, words) => {
    const bench = await opened({ prepare });
    const { page } = bench;
    await expect.poll(() => notices(page).textContent()).toMatch(words);
    await rename(page, 'Turnstone');
    await expect.poll(() => page.locator('.aircraft-name').textContent()).toContain('Turnstone');
    await bench.close();
  });

  test.each([
    ['damaged', '{"format": "counterpoise airc', /could not be read/],
    [
      'of a later version',
      writeAircraft({ ...blankAircraft(), name: 'Avocet' }).replace(/"version": \d+/, '"version": 999'),
      /could not be read.*version/s,
    ],
  ])('a kept text that is %s is told, kept whole and given as a file', async (_what, text, words) => {
    const bench = await opened({
      prepare: (context) =>
        context.addInitScript((kept) => {
          if (localStorage.length === 0) localStorage.setItem('counterpoise.autosave.a', kept);
        }, text),
    });
    const { page } = bench;
    await expect.poll(() => notices(page).textContent()).toMatch(words);
    for (const name of ['Ruff', 'Snipe', 'Dunlin']) {
      await rename(page, name);
      await expect.poll(async () => (await keptNames(page)).includes(name)).toBe(true);
    }
    await page.reload({ waitUntil: 'load' });
    const notice = notices(page).locator('.notice').filter({ hasText: 'could not be read' });
    const [download] = await Promise.all([
      page.waitForEvent('download'),
      notice.getByRole('button', { name: 'Save it as a file' }).click(),
    ]);
    const chunks: Buffer[] = [];
    for await (const chunk of await download.createReadStream()) chunks.push(chunk as Buffer);
    expect(Buffer.concat(chunks).toString('utf8')).toBe(text);
    await notice.getByRole('button', { name: 'Discard it' }).click();
    await expect.poll(() => notice.count()).toBe(0);
    await bench.close();
  });
});

test('two tabs on one aircraft: the second follows, takes over when told, and its own edits are a copy', async () => {
  const first = await opened();
  await rename(first.page, 'Ruff');
  await expect.poll(async () => (await keptNames(first.page)).includes('Ruff')).toBe(true);
  const second = await opened({ beside: first });
  await expect.poll(() => notices(second.page).textContent()).toMatch(/Ruff is open in another tab/);
  await expect.poll(() => notices(first.page).textContent()).toMatch(/open in another tab too/);
  await first.page.bringToFront();
  await rename(first.page, 'Ruff again');
  await expect.poll(() => nameNow(second.page)).toBe('Ruff again');
  await second.page.bringToFront();
  const workHere = notices(second.page).getByRole('button', { name: 'Work on it here instead' });
  await workHere.click();
  await expect.poll(() => notices(first.page).textContent()).toMatch(/this one follows it/);
  // The first has let go before the second has taken hold; what is changed between is a copy.
  await workHere.waitFor({ state: 'detached' });
  await rename(second.page, 'Snipe');
  await expect.poll(() => nameNow(first.page)).toBe('Snipe');
  // Now the first one waits, and what is changed there becomes an aircraft of its own.
  await rename(first.page, 'Dunlin');
  await expect.poll(() => notices(first.page).textContent()).toMatch(/a copy of its own/);
  await expect.poll(async () => (await keptNames(first.page)).includes('Dunlin')).toBe(true);
  expect(await nameNow(second.page)).toBe('Snipe');
  await second.page.reload({ waitUntil: 'load' });
  await expect.poll(() => nameNow(second.page)).toBe('Snipe');
  await second.close();
  await first.close();
});

test('a file dropped on the page opens, and undo brings back what was there', async () => {
  const bench = await opened();
  const { page } = bench;
  const drop = (files: readonly (readonly [string, string])[]) =>
    page.evaluate((dropped) => {
      const dataTransfer = new DataTransfer();
      for (const [name, text] of dropped) dataTransfer.items.add(new File([text], name));
      const at = document.querySelector('main') as HTMLElement;
      const event = (type: string) => new DragEvent(type, { dataTransfer, bubbles: true, cancelable: true });
      // What is not prevented the browser would do: show the file in place of the page.
      return [at.dispatchEvent(event('dragover')), at.dispatchEvent(event('drop'))];
    }, files);
  const avocet = writeAircraft({ ...blankAircraft(), name: 'Avocet' });
  expect(await drop([['avocet.json', avocet]])).toEqual([false, false]);
  await expect.poll(() => nameNow(page)).toBe('Avocet');
  expect(await drop([])).toEqual([false, false]);
  await expect.poll(() => notices(page).textContent()).toContain('what was dropped is no file');
  expect(await drop([['broken.json', '{ "format": ']])).toEqual([false, false]);
  await page.getByRole('dialog').waitFor();
  await expect.poll(() => page.getByRole('dialog').textContent()).toContain('broken.json');
  await page.keyboard.press('Escape');
  await page.getByRole('button', { name: 'Undo: Open avocet.json' }).click();
  expect(await nameNow(page)).toBe('Sandmartin');
  await bench.close();
});

const kills = Number(process.env.KILLS ?? 4);

test(
  'killed under continuous editing, a tab loses at most the last second',
  async () => {
    let bench = await opened();
    for (let kill = 0; kill < kills; kill++) {
      const { page } = bench;
      const last: { name: string; atMs: number }[] = [];
      await page.exposeFunction('edited', (name: string, atMs: number) => {
        last.push({ name, atMs });
      });
      await page.evaluate((round) => {
        let edit = 0;
        const again = () => {
          edit += 1;
          const { document } = window.counterpoise;
          const name = `round ${round} edit ${edit}`;
          document.commit('Rename', { ...document.current(), name });
          void (window as unknown as { edited(name: string, atMs: number): void }).edited(
            name,
            performance.now(),
          );
          setTimeout(again, 40);
        };
        again();
      }, kill);
      // Long enough for the ceiling to have come several times, and at no particular moment of it.
      await page.waitForTimeout(1500 + ((kill * 377) % 900));
      const protocol = await page.context().newCDPSession(page);
      const crashed = page.waitForEvent('crash');
      void protocol.send('Page.crash').catch(() => {});
      await crashed;
      const next = await opened({ beside: bench });
      const kept = await nameNow(next.page);
      // An edit may have been kept whose word did not get out of the dying tab any more.
      const [, round, edit] = (/^round (\d+) edit (\d+)$/.exec(kept) ?? []).map(Number);
      const isOfThisRound = round === kill;
      const before = kill === 0 ? 'Sandmartin' : `round ${kill - 1} edit`;
      expect(isOfThisRound || kept.startsWith(before), `kept "${kept}" in round ${kill}`).toBe(true);
      // What is lost was done in the last second: from the first edit that is gone to the last there was. On a busy
      // machine that can be all edits of a round.
      const lost = isOfThisRound ? last.slice(edit) : last;
      expect(
        (lost.at(-1)?.atMs ?? 0) - (lost[0]?.atMs ?? 0),
        `lost of ${last.length} edits`,
      ).toBeLessThanOrEqual(1000);
      bench.errors.length = 0;
      await page.close();
      bench = next;
    }
    await bench.close();
  },
  120_000 + kills * 20_000,
);
