import type { Page } from 'playwright-core';
import { expect } from 'vitest';
import { sayIn } from '../../../src/commands/say';
import { balanceAt } from '../../../src/model/balance/balance';
import { judgeFully } from '../../../src/model/judgement/judgeFully';
import { parseAircraft } from '../../../src/model/reading/read';
import { verdict } from '../../../src/model/words/verdict';
import { readEntry } from '../../../src/panels/fields/entryText';
import type { Bench } from './bench';
import { noFigures } from './findings';
import { settled } from './look';

/** What stands on the bench, as a file would hold it, and how it is looked at. */
const shownNow = (page: Page) =>
  page.evaluate(() => {
    const { document, view, stability } = window.counterpoise;
    const { fuelFraction, down, positions, units, measureFromId, selectedId } = view.getState();
    return {
      text: JSON.stringify(document.current()),
      estimate: stability.get().estimate,
      ...{ fuelFraction, down, positions, units, measureFromId, selectedId },
    };
  });

/** Waits until nothing is being worked out any more. */
export async function atRest(page: Page): Promise<void> {
  await page.waitForFunction(() => {
    const { stability, fit, verdict } = window.counterpoise;
    return (
      stability.get().fresh &&
      fit.get().judged &&
      !verdict.checking() &&
      verdict.judgement().loads !== 'unchecked'
    );
  });
  await settled(page);
}

/** What the last place of a field is worth at most, mm and g: a tenth in metric, a hundredth of an inch or an ounce. */
const ENTRY_LAST_PLACE = {
  metric: { length: 0.1, mass: 0.1 },
  'inch-ounce': { length: 0.254, mass: 0.283495 },
} as const;

/** As a person reads it: one kind of space, none at the ends. */
const plain = (text: string | null) => (text ?? '').replace(/\s+/g, ' ').trim();

/**
 * Words without the share of fuel at which a CG lies farthest out. Where it lies is certain to 0.1 mm; when, on a flat
 * stretch of the travel, is not: the search over all load states and a single burn may name moments a per cent apart.
 */
const momentless = (text: string | null) => plain(text).replace(/\b\d+ % (fuel|water)\b/g, 'some $1');

/**
 * The whole screen against the command line's own functions, run here on what the file would hold: the verdict's words
 * and every fact, the manifest's foot, the beam's limits and reading, the card's figures, to the rounding shown. The
 * console is clean, and no text is a figure that is none.
 */
export async function judgeScreen({ page, errors, foreignRequests }: Bench): Promise<void> {
  await atRest(page);
  expect(errors, 'complaints on the console').toEqual([]);
  expect(foreignRequests(), 'requests to another origin').toEqual([]);
  expect(await noFigures(page)).toEqual([]);

  const { text, estimate, selectedId, ...shown } = await shownNow(page);
  const read = parseAircraft(text);
  if (!read.ok) throw new Error(read.faults.map(({ sentence }) => sentence).join('\n'));
  const { aircraft } = read;
  const from = aircraft.referencePoints.find(({ id }) => id === shown.measureFromId) ?? null;
  const say = sayIn(shown.units, from);
  const fine = (mm: number) => say.length(mm - say.fromMm);
  const balance = balanceAt(aircraft, { ...shown, estimate, estimateFresh: true });
  const judgement = judgeFully(aircraft, { ...shown, estimate });
  const said = verdict(aircraft, judgement, say, { mass: { massG: balance.massG, plusMinusG: null } });

  const answer = page.getByTestId('verdict');
  expect(await answer.getAttribute('data-tone')).toBe(said.tone);
  expect(momentless(await answer.locator('.answer-headline').textContent())).toContain(
    momentless(said.headline),
  );
  for (const { key, value } of said.facts) {
    const fact = answer.locator(`[data-fact=${key}] .fact-value`);
    expect(momentless(await fact.textContent()), `the fact ${key}`).toBe(momentless(value));
  }

  const foot = plain(await page.locator('.manifest tfoot').textContent());
  expect(foot).toContain(plain(say.mass(balance.massG)));
  if (balance.cgMm) expect(foot).toContain(plain(say.station(balance.cgMm[0])));

  // The front view has the lateral offset on its beam.
  const beam = page.getByTestId('beam');
  if (await page.evaluate(() => window.counterpoise.view.getState().view !== 'front')) {
    const label = beam.locator('.travel-label');
    if (balance.cgMm && (await label.count()) > 0)
      expect(plain(await label.textContent())).toContain(plain(fine(balance.cgMm[0])));
    if (balance.band) {
      const zone = plain(await beam.locator('.zone').textContent());
      expect(zone).toContain(plain(say.station(balance.band.forwardMm)));
      expect(zone).toContain(plain(say.station(balance.band.aftMm)));
    }
  }

  const part = aircraft.parts.find(({ id }) => id === selectedId);
  if (!part) return;
  const card = page.getByTestId('card');
  const fields = [
    ['Mass', 'mass', part.massG],
    ['Station', 'length', part.positionMm[0] - say.fromMm],
  ] as const;
  for (const [label, quantity, value] of fields) {
    const words = await card.getByLabel(label, { exact: true }).first().inputValue();
    const typed = readEntry(words, quantity, shown.units, false);
    // Typed again as it stands there it means the same, to half of its last place and a little rounding.
    const last = ENTRY_LAST_PLACE[shown.units][quantity];
    const off = typed.ok && typed.value !== null ? Math.abs(typed.value - value) : Number.NaN;
    expect(off, `${label}: ${words} for ${value}`).toBeLessThanOrEqual(0.501 * last);
  }
}
