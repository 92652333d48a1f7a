import type { Page, Route } from 'playwright-core';
import { afterAll, describe, expect, test } from 'vitest';
import { type Bench, type BenchOptions, look, openBench, settled } from './harness';

// Each fault is put in on purpose. It must be told in words, in its place, and the bench must work on.

const SMALL = { width: 1120, height: 600 } as const;

/** Opens the bench, with complaints allowed that the browser itself makes about the fault. */
async function withFault(expects: RegExp, options: BenchOptions = {}): Promise<Bench> {
  const bench = await openBench({ ...SMALL, expects, ...options });
  await bench.page.getByTestId('manifest').waitFor();
  return bench;
}

/** The same without WebGL, which is cheaper where the stage is not looked at. */
const withoutStage = (expects: RegExp) => withFault(expects, { graphics: false });

let shared: Bench | undefined;
afterAll(() => shared?.close());

/** One such page for all tests that leave it as they found it. */
async function sharedPage(expects: RegExp): Promise<Bench> {
  shared ??= await withoutStage(expects);
  shared.expecting(expects);
  return shared;
}

const trouble = (page: Page, within = 'body') => page.locator(within).getByTestId('trouble');

/** What is told anywhere but on the stage. */
const elsewhere = (page: Page) => page.locator('[data-testid=trouble]:not([data-testid=stage] *)');

/** What is on the bench can still be moved by a key, and the verdict follows. */
async function worksOn(page: Page): Promise<void> {
  await page.evaluate(() => window.counterpoise.view.setState({ selectedId: 'camera' }));
  const before = await page.getByTestId('verdict').textContent();
  await page.locator('[data-testid=beam] svg[tabindex="0"]').focus();
  for (let press = 0; press < 3; press++) await page.keyboard.press('Shift+ArrowRight');
  await expect.poll(() => page.getByTestId('verdict').textContent()).not.toBe(before);
}

describe('the stage', () => {
  test('no WebGL: it says so, all else works, and Retry brings it once there is', async () => {
    const bench = await withFault(/WebGL/, {
      graphics: 'unpainted',
      prepare: (context) =>
        context.addInitScript(() => {
          const real = HTMLCanvasElement.prototype.getContext;
          Object.assign(window, { graphics: false });
          HTMLCanvasElement.prototype.getContext = function (this: HTMLCanvasElement, ...given: unknown[]) {
            const on = (window as unknown as { graphics: boolean }).graphics;
            return on || given[0] === '2d' ? (real as (...all: unknown[]) => never).apply(this, given) : null;
          } as typeof real;
        }),
    });
    const { page } = bench;
    await expect.poll(() => trouble(page, '[data-testid=stage]').textContent()).toContain('WebGL');
    await expect.poll(() => page.locator('[data-testid=beam] .weight').count()).toBeGreaterThan(5);
    await worksOn(page);
    await page.evaluate(() => Object.assign(window, { graphics: true }));
    await trouble(page).getByRole('button', { name: 'Retry' }).click();
    await page.waitForSelector('[data-testid=stage] canvas');
    await expect.poll(() => trouble(page).count()).toBe(0);
    await bench.close();
  });

  test('a lost context is told, and the picture comes back with it', async () => {
    const bench = await withFault(/context lost/i, { graphics: 'unpainted' });
    const { page } = bench;
    await page.waitForFunction(() => document.querySelector('canvas')?.drawn?.render.frame);
    const setContext = (what: 'loseContext' | 'restoreContext') =>
      page.evaluate((call) => {
        const holder = window as unknown as { loser?: WEBGL_lose_context | null };
        holder.loser ??=
          document.querySelector('canvas')?.getContext('webgl2')?.getExtension('WEBGL_lose_context') ?? null;
        holder.loser?.[call]();
      }, what);
    await setContext('loseContext');
    await expect.poll(() => trouble(page, '[data-testid=stage]').textContent()).toContain('graphics');
    await worksOn(page);
    await setContext('restoreContext');
    await expect.poll(() => trouble(page).count()).toBe(0);
    // The renderer counts anew from there, and draws the whole aircraft.
    await page.waitForFunction(() => (document.querySelector('canvas')?.drawn?.render.triangles ?? 0) > 1000);
    await bench.close();
  });
});

describe('a piece that is fetched later', () => {
  const piece = /\/assets\/Shortcuts-[^/]*\.js/;
  const ways: [string, (expects: RegExp) => Promise<Bench>, (page: Page) => Promise<unknown>][] = [
    [
      'the server has stopped',
      sharedPage,
      (page) => page.route(piece, (route) => route.abort('connectionrefused')),
    ],
    [
      'the page answers in its place',
      withoutStage,
      (page) =>
        page.route(piece, (route) => route.fulfill({ contentType: 'text/html', body: '<!doctype html>' })),
    ],
  ];
  test.each(ways)('%s: its place says so, and Retry fetches it again', async (_what, opened, breakIt) => {
    const bench = await opened(/ERR_CONNECTION_REFUSED|MIME type/);
    const { page } = bench;
    await breakIt(page);
    await page.keyboard.press('?');
    await elsewhere(page).waitFor();
    await expect
      .poll(() => elsewhere(page).textContent())
      .toContain('The list of keys could not be fetched.');
    await worksOn(page);
    const asked = () => bench.requests.filter((url) => piece.test(url)).length;
    const before = asked();
    await elsewhere(page).getByRole('button', { name: 'Retry' }).click();
    await expect.poll(asked).toBeGreaterThan(before);
    await elsewhere(page).waitFor();
    await page.unroute(piece);
    await elsewhere(page).getByRole('button', { name: 'Retry' }).click();
    await page.getByRole('dialog').waitFor();
    await page.keyboard.press('Escape');
    await page.getByRole('dialog').waitFor({ state: 'detached' });
    if (bench !== shared) await bench.close();
  });

  test('a style sheet that did not come is fetched again with its piece', async () => {
    const { page } = await sharedPage(/ERR_CONNECTION_REFUSED|preload CSS/);
    const sheet = /\/assets\/ArrangeSheet-[^/]*\.css/;
    await page.route(sheet, (route) => route.abort('connectionrefused'));
    await page.evaluate(() => window.counterpoise.place.api.setState({ open: true }));
    await elsewhere(page).waitFor();
    await page.unroute(sheet);
    await elsewhere(page).getByRole('button', { name: 'Retry' }).click();
    const tabs = page.locator('.arrange-tabs');
    await tabs.waitFor();
    // As its own style sheet lays it out, not as a browser lays out a fieldset.
    await expect.poll(() => tabs.evaluate((element) => getComputedStyle(element).borderTopWidth)).toBe('0px');
    await page.evaluate(() => window.counterpoise.place.api.setState({ open: false }));
  });

  test('a demo that cannot be fetched leaves the bench as it was, and comes with Retry', async () => {
    const { page } = await sharedPage(/ERR_CONNECTION_REFUSED/);
    const demo = /\/assets\/whimbrel-/;
    await page.route(demo, (route) => route.abort('connectionrefused'));
    await page.locator('.app-name').click();
    await page.getByRole('button', { name: 'Choose an aircraft…' }).click();
    await page
      .getByRole('dialog')
      .getByRole('button', { name: /Whimbrel/ })
      .click();
    const notice = page.locator('[data-about=file]');
    await notice.waitFor();
    await expect.poll(() => notice.textContent()).toContain('Whimbrel could not be fetched');
    await page.unroute(demo);
    await notice.getByRole('button', { name: 'Retry' }).click();
    await page.waitForFunction(() => window.counterpoise.document.current().name === 'Whimbrel');
    await page.evaluate(() => window.counterpoise.document.undo());
  });
});

describe('a fault in the bench itself', () => {
  test('no old figure stands over an aircraft that cannot be worked out, and Undo mends it', async () => {
    const bench = await withoutStage(/./);
    const { page } = bench;
    await page.waitForFunction(() => {
      const { stability, rest, verdict } = window.counterpoise;
      const atRest = rest.get().loadSearch.state === 'done' && rest.get().certainty !== null;
      return stability.get().fresh && atRest && !verdict.checking();
    });
    await settled(page);
    const good = await page.getByTestId('verdict').textContent();
    const station = (await look(page)).cgMm[0].toFixed(1);
    await page.evaluate(() => {
      const { document } = window.counterpoise;
      document.commit('Break it', { ...document.current(), parts: null as never });
    });
    await settled(page);
    const verdict = (await page.getByTestId('verdict').textContent()) ?? '';
    expect(verdict).toContain('Not known: mass and CG');
    expect(verdict).toContain('Sandmartin');
    await expect.poll(() => page.getByTestId('burn').textContent()).toContain('The burn is not known.');
    // The station of the CG, which stood in the verdict and on the beam, is gone from the whole page.
    expect(good).toContain(station);
    expect(await page.locator('#root').textContent()).not.toContain(station);
    for (const way of ['Retry', 'Save what is on the bench', 'Start clean'])
      await expect.poll(() => page.getByTestId('verdict').getByRole('button', { name: way }).count()).toBe(1);
    await page.locator('[data-about=fault]').waitFor();
    await page.getByTestId('verdict').getByRole('button', { name: 'Undo: Break it' }).click();
    await expect.poll(() => page.getByTestId('verdict').textContent()).toBe(good);
    await expect.poll(() => elsewhere(page).count()).toBe(0);
    await expect.poll(() => page.locator('[data-about=fault]').count()).toBe(0);
    await worksOn(page);
    await bench.close();
  });

  test('what stopped the bench is not on it after the reload, but is offered', async () => {
    const bench = await withoutStage(/$^/);
    const { page } = bench;
    // As if the tab had hung while it opened what was kept: the mark of an opening is still there.
    await page.evaluate(() => {
      const { document } = window.counterpoise;
      document.commit('Rename', { ...document.current(), name: 'Turnstone' });
    });
    await page.waitForFunction(() => JSON.stringify(localStorage).includes('Turnstone'));
    await page.addInitScript(() => {
      if (performance.getEntriesByType('navigation').length)
        sessionStorage.setItem('counterpoise.opening', 'yes');
    });
    await page.reload({ waitUntil: 'load' });
    const notice = page.getByTestId('notices').locator('.notice').filter({ hasText: 'Turnstone' });
    await notice.waitFor();
    expect(await page.evaluate(() => window.counterpoise.document.current().parts.length)).toBe(0);
    await notice.getByRole('button', { name: 'Open it' }).click();
    expect(await page.evaluate(() => window.counterpoise.document.current().name)).toBe('Turnstone');
    await bench.close();
  });

  test('a listener that throws is told, and no other misses the change', async () => {
    const { page } = await sharedPage(/injected/);
    await page.evaluate(() => {
      const hush = window.counterpoise.document.subscribe(() => {
        throw new Error('injected');
      });
      Object.assign(window, { hush });
    });
    await worksOn(page);
    await expect.poll(() => page.locator('[data-about=fault]').textContent()).toContain('injected');
    await page.evaluate(() => (window as unknown as { hush(): void }).hush());
  });
});

describe('the solver', () => {
  test('without its WebAssembly the search says so in words, and the next one fetches it again', async () => {
    const { page } = await sharedPage(/ERR_CONNECTION_REFUSED|wasm|Aborted/i);
    await page.context().route(/\.wasm/, (route) => route.abort('connectionrefused'));
    await page.evaluate(() => window.counterpoise.place.api.setState({ open: true }));
    const search = page.getByTestId('arrange').getByRole('button', { name: 'Start', exact: true });
    await search.first().click();
    await expect
      .poll(() => page.getByTestId('arrange').textContent())
      .toMatch(/solver.*could not be fetched/s);
    await page.context().unroute(/\.wasm/);
    await search.first().click();
    await expect
      .poll(() => page.getByTestId('arrange').textContent())
      .toMatch(/Proved|No less than|least ballast/i);
    await page.evaluate(() => window.counterpoise.place.api.setState({ open: false }));
  });
});

describe('the workers', () => {
  const files = /\/assets\/[a-z]+\.worker-[^/]*\.js/;
  /** Whatever is waited for longer than a few seconds is given up at once, until the clock is put right again. */
  const hurry = () => {
    const real = window.setTimeout;
    const hurried = ((run: TimerHandler, ms = 0, ...given: unknown[]) =>
      real(run, ms < 10_000 ? ms : 400, ...given)) as typeof window.setTimeout;
    Object.assign(window, {
      setTimeout: hurried,
      putRight: () => Object.assign(window, { setTimeout: real }),
    });
  };
  const answered = (status: number, contentType: string) => (route: Route) =>
    route.fulfill({ status, contentType, headers: { 'cache-control': 'no-store' }, body: '' });
  const ways = [
    ['missing: their files are not found', answered(404, 'text/plain'), 'could not be fetched', () => {}],
    ['silent: they never answer', answered(200, 'text/javascript'), 'it said nothing for', hurry],
  ] as const;

  test.each(ways)('%s. Told where each is missed, and Retry brings it', async (_what, fault, why, clock) => {
    const bench = await withFault(/404/, {
      graphics: false,
      prepare: async (context) => {
        await context.route(files, fault);
        await context.addInitScript(clock);
      },
    });
    const { page } = bench;
    const stopped = page.getByTestId('stopped');
    await expect.poll(() => stopped.textContent()).toContain('other load states and a remedy');
    await expect.poll(() => stopped.textContent()).toContain(`The worker for the neutral point stopped: `);
    await expect.poll(() => stopped.textContent()).toContain(why);
    // In its stated band, and yet not called good: whether it is stable nobody has worked out.
    const verdict = page.getByTestId('verdict');
    await page.evaluate(() => {
      const { document } = window.counterpoise;
      document.commit('Sideways', { ...document.current(), lateralToleranceMm: 9 });
    });
    await expect.poll(() => stopped.textContent()).toContain('other load states and a remedy');
    await expect.poll(() => verdict.textContent()).toContain('The margin is not checked.');
    await expect.poll(() => verdict.getAttribute('data-tone')).toBe('unknown');

    const arranging = (open: boolean) =>
      page.evaluate((now) => window.counterpoise.place.api.setState({ open: now }), open);
    const arrange = page.getByTestId('arrange');
    const start = arrange.getByRole('button', { name: 'Start', exact: true });
    await arranging(true);
    await start.click();
    await expect.poll(() => arrange.textContent()).toContain('The worker for placing stopped');
    await arranging(false);
    await page.evaluate(() =>
      window.counterpoise.view.setState(({ folds }) => ({
        selectedId: 'flight-pack',
        folds: { ...folds, fit: true },
      })),
    );
    const entry = page.getByTestId('entry');
    await entry.getByRole('button', { name: 'Look for a way in' }).click();
    await expect.poll(() => entry.textContent()).toContain('The worker for fitting stopped');

    await page.context().unroute(files);
    await page.evaluate(() => (window as { putRight?: () => void }).putRight?.());
    await entry.getByRole('button', { name: 'Retry' }).click();
    await expect.poll(() => entry.textContent()).toMatch(/Goes in through|No path found/);
    await arranging(true);
    await start.click();
    await expect.poll(() => arrange.textContent()).toMatch(/Best so far|Put away/);
    await arranging(false);
    await stopped.getByRole('button', { name: 'Retry' }).click();
    await expect.poll(() => stopped.count()).toBe(0);
    await expect.poll(() => verdict.getAttribute('data-tone')).not.toBe('unknown');
    await worksOn(page);
    await bench.close();
  });
});
