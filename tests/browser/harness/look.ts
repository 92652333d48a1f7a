import type { Page } from 'playwright-core';
import type { PagePoint } from './drag';

/** What the page's own bench says at this moment. */
export interface Look {
  readonly massG: number;
  readonly cgMm: readonly [number, number, number];
  readonly travel: readonly (readonly [fuelFraction: number, stationMm: number])[];
  readonly band: { readonly forwardMm: number; readonly aftMm: number } | null;
  readonly where: string | null;
  readonly selectedId: string | null;
  readonly fuelFraction: number;
  readonly steps: number;
  readonly previewing: boolean;
}

export const look = (page: Page): Promise<Look> =>
  page.evaluate(() => {
    const { balance, view, document } = window.counterpoise;
    const now = balance.get();
    if (!now.cgMm) throw new Error('nothing aboard has a mass');
    return {
      massG: now.massG,
      cgMm: [...now.cgMm] as [number, number, number],
      travel: now.travel.map((p) => [p.fuelFraction, p.cgMm[0]] as const),
      band: now.band,
      where: now.fit?.where ?? null,
      selectedId: view.getState().selectedId,
      fuelFraction: view.getState().fuelFraction,
      steps: document.api.getState().past.length,
      previewing: document.api.getState().preview !== null,
    };
  });

/** Where a part or tank stands now, mm. */
export const placeOf = (page: Page, id: string): Promise<readonly [number, number, number]> =>
  page.evaluate((wanted) => {
    const aircraft = window.counterpoise.document.current();
    const item = [...aircraft.parts, ...aircraft.tanks].find((one) => one.id === wanted);
    if (!item) throw new Error(`no part or tank "${wanted}"`);
    return [...item.positionMm] as [number, number, number];
  }, id);

/** Where a point of the aircraft falls on the page in the elevation that is shown, by the shared axis. */
export const onPage = (page: Page, pointMm: readonly [number, number, number]): Promise<PagePoint> =>
  page.evaluate((p) => {
    const { view, axis } = window.counterpoise;
    const { station, lateral, middleMm, spanStretch } = axis.getState();
    const shown = view.getState().view;
    if (shown === 'free') throw new Error('the free view has no axis');
    const box = window.document.querySelector('[data-testid=stage] canvas')?.getBoundingClientRect();
    if (!box) throw new Error('no stage');
    const line = shown === 'front' ? lateral : station;
    const across = shown === 'front' ? p[1] : p[0];
    const upright = shown === 'top' ? p[1] : p[2];
    return {
      x: box.left + (across - line.atLeftMm) / line.mmPerPx,
      y:
        box.top +
        box.height / 2 -
        (upright - middleMm[shown]) / (Math.abs(line.mmPerPx) * (shown === 'top' ? spanStretch : 1)),
    };
  }, pointMm);

/** Switches the view by its button and waits for the next picture. */
export async function showView(page: Page, name: 'Side' | 'Top' | 'Front' | 'Free'): Promise<void> {
  await page.getByRole('radio', { name }).check({ force: true });
  await page.waitForFunction((view) => window.counterpoise.view.getState().view === view, name.toLowerCase());
  await settled(page);
}

/** Waits until two more frames have been painted. */
export const settled = (page: Page): Promise<void> =>
  page.evaluate(
    () => new Promise<void>((done) => requestAnimationFrame(() => requestAnimationFrame(() => done()))),
  );

/** The middle of an element on the page. */
export async function middleOf(page: Page, selector: string): Promise<PagePoint> {
  const box = await page.locator(selector).first().boundingBox();
  if (!box) throw new Error(`nothing shown at ${selector}`);
  return { x: box.x + box.width / 2, y: box.y + box.height / 2 };
}
