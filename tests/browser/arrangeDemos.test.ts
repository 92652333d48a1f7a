import { expect, test } from 'vitest';
import type { Aircraft } from '../../src/model/document/types';
import { entryThroughAny } from '../../src/model/fit/entryThroughAny';
import { fitRefusals, wholeFit } from '../../src/model/fit/wholeFit';
import { judgeFully } from '../../src/model/judgement/judgeFully';
import { type DemoName, demo } from '../demo/demoAircraft';
import { expectClean, openBench } from './harness';

/** Against a hang, not on speed: the search is given more than enough, however busy the machine is. */
const SEARCH_MS = 240_000;
const NAMES: readonly DemoName[] = ['sandmartin', 'whimbrel', 'corncrake', 'fieldfare'];

/** What had a way in and has none any more, by name. */
const lostWays = (before: Aircraft, after: Aircraft): string[] =>
  [...before.parts, ...before.tanks].flatMap(({ id, name }) => {
    const stays = [...after.parts, ...after.tanks].some((item) => item.id === id);
    if (!stays || entryThroughAny(before, id)?.found !== true) return [];
    return entryThroughAny(after, id)?.found === true ? [] : [name];
  });

test.each(NAMES)(
  '%s arranged through the screen and accepted: good, no clash, no lead short, every way in kept',
  async (name) => {
    const bench = await openBench({ path: `?demo=${name}`, graphics: false });
    const { page } = bench;
    await page.waitForFunction(() => window.counterpoise.place.solver() !== null, null, { timeout: 60_000 });
    await page.waitForFunction(() => window.counterpoise.stability.get().fresh, null, { timeout: 120_000 });
    await page.evaluate((searchMs) => window.counterpoise.place.api.setState({ searchMs }), SEARCH_MS);
    const before = await page.evaluate(() => window.counterpoise.document.current());
    expect(before.name).toBe(demo(name).name);
    await page.getByRole('button', { name: 'Arrange…' }).click();
    const sheet = page.getByTestId('arrange');
    await sheet.getByRole('button', { name: 'Start' }).click();
    await page.waitForSelector('.result .proposal', { timeout: SEARCH_MS + 60_000 });
    const accept = sheet.getByRole('button', { name: 'Accept', exact: true });
    if ((await accept.count()) > 0) {
      await accept.click();
      await sheet.getByText('Accepted.').waitFor();
    }
    const { after, estimate, down } = await page.evaluate(() => ({
      after: window.counterpoise.document.current(),
      estimate: window.counterpoise.stability.get().estimate,
      down: window.counterpoise.view.getState().down,
    }));
    expectClean(bench);
    await bench.close();
    // Judged here, by what knows nothing of how it was found.
    const judged = judgeFully(after, { down, estimate, estimateFresh: true });
    expect(judged.severity, JSON.stringify(judged.findings)).toBe('good');
    expect(wholeFit(after).problems.filter(({ kind }) => kind === 'shortLead')).toEqual([]);
    expect(fitRefusals(before, after)).toEqual([]);
    expect(lostWays(before, after)).toEqual([]);
  },
  SEARCH_MS + 240_000,
);
