import type { BrowserContext, Page } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import { blankAircraft } from '../../src/model/document/blank';
import { addPart } from '../../src/model/document/edit';
import { writeAircraft } from '../../src/model/document/write';
import { axe, type Bench, type BenchOptions, openBench, put } from './harness';

const SMALL = { width: 1120, height: 700, plainFiles: true, graphics: false } as const;

/** A sound aircraft with one thing in it. */
const aircraft = (name: string) =>
  addPart(
    { ...blankAircraft(), name },
    {
      name: 'Pack',
      role: 'energy',
      shape: { kind: 'box', lengthMm: 100, widthMm: 40, heightMm: 30 },
      massG: 250,
      positionMm: [200, 0, 0],
      yawDeg: 0,
      pitchDeg: 0,
      rollDeg: 0,
    },
  ).aircraft;

async function opened(options: BenchOptions = {}): Promise<Bench> {
  const bench = await openBench({ ...SMALL, ...options });
  await bench.page.getByTestId('manifest').waitFor();
  await fleetRead(bench.page);
  return bench;
}

const fleetRead = (page: Page) =>
  page.waitForFunction(() => window.counterpoise.fleet.get().where !== 'reading');
const goTo = async (page: Page, place: 'Fleet' | 'Bench') => {
  await page
    .getByRole('navigation', { name: 'Places', exact: true })
    .getByRole('button', { name: place })
    .click();
};
const nameNow = (page: Page) => page.evaluate(() => window.counterpoise.document.current().name);
const names = (page: Page) => page.getByTestId('fleet').locator('.fleet-card h3').allTextContents();
const rename = (page: Page, name: string) =>
  page.evaluate((given) => {
    const { document } = window.counterpoise;
    document.commit('Rename', { ...document.current(), name: given });
  }, name);

test('each aircraft keeps its place; one is found, copied, renamed, deleted and taken back', async () => {
  const bench = await opened();
  const { page } = bench;
  for (const name of ['Knot', 'Ruff', 'Snipe']) await put(page, aircraft(name));
  await rename(page, 'Jack Snipe');
  await goTo(page, 'Fleet');
  await expect.poll(() => names(page)).toEqual(['Jack Snipe', 'Ruff', 'Knot']);
  await page.getByLabel('Order').selectOption('name');
  expect(await names(page)).toEqual(['Jack Snipe', 'Knot', 'Ruff']);
  await page.getByRole('searchbox', { name: 'Search the fleet' }).fill('ru');
  await expect.poll(() => names(page)).toEqual(['Ruff']);
  await page.getByRole('button', { name: 'Duplicate Ruff' }).click();
  await expect.poll(() => names(page)).toEqual(['Ruff', 'Ruff copy']);
  await page.getByRole('button', { name: 'Rename Ruff copy' }).click();
  await page.getByLabel('New name of Ruff copy').fill('Ruff with skis');
  await page.keyboard.press('Enter');
  await expect.poll(() => names(page)).toEqual(['Ruff', 'Ruff with skis']);
  await page.getByRole('button', { name: 'Delete Ruff', exact: true }).click();
  await expect.poll(() => names(page)).toEqual(['Ruff with skis']);
  await page.getByTestId('notices').getByRole('button', { name: 'Undo' }).click();
  await expect.poll(() => names(page)).toEqual(['Ruff', 'Ruff with skis']);
  await page.getByRole('searchbox').fill('');
  await page.getByRole('button', { name: 'Delete Jack Snipe' }).click();
  await expect.poll(() => page.getByTestId('fleet').getByRole('alert').textContent()).toMatch(/on the bench/);
  expect(await axe(page)).toEqual([]);
  await page.getByRole('button', { name: 'Put Knot on the bench' }).click();
  await expect.poll(() => nameNow(page)).toBe('Knot');
  await page.reload({ waitUntil: 'load' });
  await fleetRead(page);
  expect(await nameNow(page)).toBe('Knot');
  await goTo(page, 'Fleet');
  await expect
    .poll(async () => (await names(page)).sort())
    .toEqual(['Jack Snipe', 'Knot', 'Ruff', 'Ruff with skis']);
  await bench.close();
});

test('the whole fleet goes out as one file and comes in again, and nothing is written over', async () => {
  const bench = await opened();
  const { page } = bench;
  for (const name of ['Knot', 'Ruff']) await put(page, aircraft(name));
  await goTo(page, 'Fleet');
  await expect.poll(() => names(page)).toEqual(['Ruff', 'Knot']);
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: 'Save the fleet as a file' }).click(),
  ]);
  const chunks: Buffer[] = [];
  for await (const chunk of await download.createReadStream()) chunks.push(chunk as Buffer);
  const buffer = Buffer.concat(chunks);
  await goTo(page, 'Bench');
  await rename(page, 'Reeve');
  await goTo(page, 'Fleet');
  await expect.poll(() => names(page)).toEqual(['Reeve', 'Knot']);
  const takeIn = async (content: Buffer) => {
    const [chooser] = await Promise.all([
      page.waitForEvent('filechooser'),
      page.getByRole('button', { name: 'Take in a fleet file' }).click(),
    ]);
    await chooser.setFiles({ name: 'fleet.json', mimeType: 'application/json', buffer: content });
  };
  await takeIn(buffer);
  await expect
    .poll(() => page.getByTestId('notices').textContent())
    .toMatch(/0 taken in, 1 were there already, 1 came as a copy beside/);
  expect((await names(page)).sort()).toEqual(['Knot', 'Reeve', 'Ruff']);
  await takeIn(Buffer.from(writeAircraft(aircraft('Dunlin'))));
  await expect
    .poll(() => page.getByTestId('fleet').getByRole('alert').textContent())
    .toMatch(/expected "counterpoise fleet", got "counterpoise aircraft"/);
  await bench.close();

  const empty = await opened();
  await goTo(empty.page, 'Fleet');
  const [chooser] = await Promise.all([
    empty.page.waitForEvent('filechooser'),
    empty.page.getByRole('button', { name: 'Take in a fleet file' }).click(),
  ]);
  await chooser.setFiles({ name: 'fleet.json', mimeType: 'application/json', buffer });
  await expect.poll(async () => (await names(empty.page)).sort()).toEqual(['Knot', 'Ruff']);
  await empty.close();
});

test('what an earlier version kept comes into the fleet as it is', async () => {
  const kept = writeAircraft(aircraft('Avocet'));
  const bench = await opened({
    prepare: (context) =>
      context.addInitScript((text) => {
        if (localStorage.length > 0) return;
        localStorage.setItem('counterpoise.autosave.b', text);
        localStorage.setItem('counterpoise.autosave.latest', 'counterpoise.autosave.b');
      }, kept),
  });
  const { page } = bench;
  expect(await nameNow(page)).toBe('Avocet');
  await goTo(page, 'Fleet');
  await expect.poll(() => names(page)).toEqual(['Avocet']);
  await page.evaluate(() => window.counterpoise.view.setState({ place: 'bench' }));
  await put(page, aircraft('Knot'));
  await goTo(page, 'Fleet');
  await page.getByRole('button', { name: 'Put Avocet on the bench' }).click();
  await expect.poll(() => nameNow(page)).toBe('Avocet');
  expect(await page.evaluate(() => JSON.stringify(window.counterpoise.document.current()))).toBe(
    JSON.stringify(JSON.parse(kept)),
  );
  await bench.close();
});

test('without a store the fleet lives in the tab, and says so', async () => {
  const denied = (context: BrowserContext) =>
    context.addInitScript(() => {
      IDBFactory.prototype.open = () => {
        throw new DOMException('The request was refused.', 'SecurityError');
      };
    });
  const bench = await opened({ prepare: denied });
  const { page } = bench;
  await expect.poll(() => page.getByTestId('notices').textContent()).toMatch(/keeps no fleet for this page/);
  await put(page, aircraft('Knot'));
  await put(page, aircraft('Ruff'));
  await goTo(page, 'Fleet');
  await expect.poll(() => names(page)).toEqual(['Ruff', 'Knot']);
  await page.getByRole('button', { name: 'Put Knot on the bench' }).click();
  await expect.poll(() => nameNow(page)).toBe('Knot');
  await bench.close();
});

describe('history', () => {
  test('undo reaches back across a reload, and on to another aircraft and back', async () => {
    const bench = await opened();
    const { page } = bench;
    await put(page, aircraft('Knot'));
    for (const name of ['Red Knot', 'Great Knot']) await rename(page, name);
    await page.evaluate(() => window.counterpoise.document.undo());
    await goTo(page, 'Fleet');
    await expect.poll(() => names(page)).toEqual(['Red Knot']);
    await page.reload({ waitUntil: 'load' });
    await page.waitForFunction(() => window.counterpoise.document.api.getState().past.length === 1);
    await page.getByRole('button', { name: 'Redo: Rename' }).click();
    expect(await nameNow(page)).toBe('Great Knot');
    for (const name of ['Red Knot', 'Knot']) {
      await page.getByRole('button', { name: 'Undo: Rename' }).click();
      expect(await nameNow(page)).toBe(name);
    }
    await bench.close();
  });

  test('a damaged history costs the steps and not the aircraft', async () => {
    const bench = await opened();
    const { page } = bench;
    await put(page, aircraft('Knot'));
    await rename(page, 'Red Knot');
    await goTo(page, 'Fleet');
    await expect.poll(() => names(page)).toEqual(['Red Knot']);
    await page.evaluate(
      () =>
        new Promise<void>((done) => {
          const { fleetId } = window.counterpoise.document.api.getState();
          indexedDB.open('counterpoise').onsuccess = (event) => {
            const database = (event.target as IDBOpenDBRequest).result;
            const rows = database.transaction('aircraft', 'readwrite').objectStore('aircraft');
            rows.get(fleetId).onsuccess = (found) => {
              const row = (found.target as IDBRequest).result;
              rows.put({ ...row, history: row.history.replace('Knot', 'Gnat') }, fleetId).onsuccess = () => {
                database.close();
                done();
              };
            };
          };
        }),
    );
    await page.reload({ waitUntil: 'load' });
    await expect
      .poll(() => page.getByTestId('notices').textContent())
      .toMatch(/steps of the last visit could not be read/);
    expect(await nameNow(page)).toBe('Red Knot');
    await bench.close();
  });

  test('a revision is held against the bench in words, on the beam and the stage, and comes back as one step', async () => {
    const bench = await opened();
    const { page } = bench;
    const sheet = page.getByTestId('revisions');
    const station = () =>
      page.evaluate(
        () =>
          window.counterpoise.document.current().parts.find(({ id }) => id === 'flight-pack')?.positionMm[0],
      );
    await page.locator('.app-name').click();
    await page.getByRole('button', { name: 'Revisions…' }).click();
    await sheet.getByLabel('Name of this revision').fill('Pack in front');
    await page.keyboard.press('Enter');
    await sheet.getByRole('button', { name: /Pack in front/ }).waitFor();
    const before = (await station()) ?? 0;
    const shares = await page.evaluate(() => {
      const { document, balance } = window.counterpoise;
      const now = document.current();
      const parts = now.parts.map((part) => {
        const [x, y, z] = part.positionMm;
        return part.id === 'flight-pack' ? { ...part, positionMm: [x + 45, y, z] as const } : part;
      });
      document.commit('Move the pack', { ...now, parts });
      const pack = now.parts.find(({ id }) => id === 'flight-pack');
      const masses = balance.get().travel.map(({ massG }) => massG);
      return [Math.max(...masses), Math.min(...masses)].map((massG) => (pack?.massG ?? 0) / massG);
    });
    await sheet.getByRole('button', { name: /Pack in front/ }).click();
    await expect.poll(() => sheet.textContent()).toMatch(/: 45\smm aft\./);
    // Statics: the CG goes as far as the pack, times the pack's share of the mass, which is between full and dry.
    const shift = await sheet.locator('tbody tr').nth(2).locator('td').nth(2).textContent();
    const shiftMm = Number(/\+([\d.]+)/.exec(shift ?? '')?.[1]);
    expect(shiftMm).toBeGreaterThan(45 * (shares[0] ?? 0) - 0.1);
    expect(shiftMm).toBeLessThan(45 * (shares[1] ?? 0) + 0.1);
    expect(
      await page.evaluate(() => window.counterpoise.place.get().ghost?.parts.map(({ id }) => id)),
    ).toEqual(['flight-pack']);
    expect((await page.getByTestId('ghost-travel').getAttribute('d'))?.length).toBeGreaterThan(10);
    expect(await axe(page)).toEqual([]);
    await sheet.getByRole('button', { name: 'Go back to this' }).click();
    expect(await station()).toBe(before);
    await page.getByRole('button', { name: 'Undo: Go back to “Pack in front”' }).click();
    expect(await station()).toBe(before + 45);
    await bench.close();
  });
});
