import type { Page } from 'playwright-core';

/** Window sizes in CSS pixels: desks, tablets, a desk screen at twice its size, phones. */
export const screenSizes = [
  '1920x1080',
  '1440x900',
  '1366x768',
  '1280x720',
  '1024x768',
  '960x600',
  '820x1180',
  '720x450',
  '844x390',
  '390x844',
] as const;

/** Somewhere on the bench that is worth a picture. */
export interface ScreenPlace {
  readonly name: string;
  readonly demo: string;
  readonly goTo: (page: Page) => Promise<unknown>;
}

/** On a window where places take turns. */
async function turnTo(page: Page, place: string): Promise<void> {
  const turn = page
    .getByRole('navigation', { name: 'Places of the bench' })
    .getByRole('button', { name: place });
  if (await turn.isVisible()) await turn.click();
}

const select = (page: Page, id: string | null) =>
  page.evaluate((selectedId) => window.counterpoise.view.setState({ selectedId }), id);

const inView = (view: 'side' | 'top' | 'front') => (page: Page) =>
  page.evaluate((shown) => window.counterpoise.view.setState({ view: shown }), view);

const first = (demo: string): ScreenPlace => ({ name: demo, demo, goTo: async () => {} });

const turn = (place: string): ScreenPlace => ({
  name: `turn-${place.toLowerCase()}`,
  demo: 'sandmartin',
  goTo: (page) => turnTo(page, place),
});

const card = (id: string): ScreenPlace => ({
  name: `card-${id}`,
  demo: 'sandmartin',
  goTo: async (page) => {
    await select(page, id);
    await turnTo(page, 'Card');
  },
});

const opened = (name: string, place: string, button: string | RegExp): ScreenPlace => ({
  name,
  demo: 'sandmartin',
  goTo: async (page) => {
    await turnTo(page, place);
    await page.getByRole('button', { name: button }).first().click();
  },
});

/** An arrangement that was found, with its moves, before it is accepted. */
const arranged: ScreenPlace = {
  name: 'arrange-found',
  demo: 'whimbrel',
  goTo: async (page) => {
    await turnTo(page, 'Manifest');
    await page.getByRole('button', { name: 'Arrange…' }).first().click();
    await page.waitForFunction(() => window.counterpoise.place.solver() !== null);
    await page.evaluate(() => window.counterpoise.place.api.setState({ searchMs: 6000 }));
    await page.getByRole('button', { name: 'Start', exact: true }).click();
    await page.getByRole('button', { name: 'Accept', exact: true }).waitFor({ timeout: 120_000 });
  },
};

/** A weigh-in that is begun in one of the ways; the log as it comes with the demo without one. */
const weighIn = (way: string | null): ScreenPlace => ({
  name: way ? `weigh-${way.toLowerCase()}` : 'weigh',
  demo: 'sandmartin',
  goTo: async (page) => {
    await page.evaluate(() => window.counterpoise.view.setState({ place: 'weigh-in' }));
    await page.getByTestId('weigh-in').waitFor();
    if (!way) return;
    await page.getByRole('button', { name: 'Weigh it' }).click();
    await page.getByRole('button', { name: new RegExp(`^${way}`) }).click();
  },
});

export const screenPlaces: readonly ScreenPlace[] = [
  ...['sandmartin', 'fieldfare', 'whimbrel', 'corncrake'].map(first),
  ...(['side', 'top', 'front'] as const).map((view) => ({
    name: `view-${view}`,
    demo: 'sandmartin',
    goTo: inView(view),
  })),
  ...['Beam', 'Manifest', 'Card'].map(turn),
  ...['flight-pack', 'main-tank', 'wing'].map(card),
  {
    name: 'begin',
    demo: 'sandmartin',
    goTo: (page) => page.evaluate(() => window.counterpoise.view.setState({ place: 'begin' })),
  },
  {
    name: 'build-sheet',
    demo: 'sandmartin',
    goTo: async (page) => {
      await page.evaluate(() => window.counterpoise.view.setState({ place: 'build-sheet' }));
      await page.getByTestId('sheet-page').first().waitFor();
    },
  },
  {
    name: 'power',
    demo: 'sandmartin',
    goTo: async (page) => {
      await page.evaluate(() => window.counterpoise.view.setState({ place: 'power' }));
      await page.getByTestId('power').waitFor();
    },
  },
  opened('add', 'Manifest', 'Add a part'),
  opened('arrange', 'Manifest', 'Arrange…'),
  arranged,
  opened('keys', 'Stage', 'Keys'),
  ...[null, 'Tilted', 'Swung'].map(weighIn),
];
