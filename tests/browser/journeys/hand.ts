import type { Locator, Page } from 'playwright-core';
import { writeAircraft } from '../../../src/model/document/write';
import { type Bench, turnTo } from '../harness';

/** What a person does with mouse and keys, or with a finger where the bench was opened for touch. Nothing else. */
export interface Hand {
  readonly page: Page;
  press(target: Locator): Promise<void>;
  /** Presses a button by its words, in the whole page or in a place of it. */
  button(name: string | RegExp, place?: Locator): Promise<void>;
  /** Types into a field, over what stands there. */
  type(field: Locator, text: string): Promise<void>;
  /** Selects what has this name, in the manifest. */
  select(name: string): Promise<void>;
  /** A field of the card that is shown. */
  field(label: string): Locator;
  /** Opens the menu behind the aircraft's name and presses an entry of it. */
  menu(entry: string): Promise<void>;
  /** Opens a section of the card by the name it is kept under; its title may be reworded. */
  openFold(id: string): Promise<void>;
  /** What saving would write. */
  file(): Promise<string>;
  /** Presses Undo for as long as there is something to undo; how often that was. */
  undoAll(): Promise<number>;
}

export function handOn({ page }: Bench, { touch = false } = {}): Hand {
  const card = page.getByTestId('card');
  const press = async (target: Locator) => {
    if (!touch) return target.click();
    await target.scrollIntoViewIfNeeded();
    await target.tap();
  };
  const button = (name: string | RegExp, place?: Locator) =>
    press((place ?? page).getByRole('button', { name, exact: typeof name === 'string' }).first());
  return {
    page,
    press,
    button,
    async type(field, text) {
      await press(field);
      // A tap gives the focus a moment after the finger is up.
      await field.evaluate(
        (input) =>
          document.activeElement === input ||
          new Promise((focused) => input.addEventListener('focus', focused, { once: true })),
      );
      await page.keyboard.press('Control+a');
      await page.keyboard.type(text);
      await page.keyboard.press('Enter');
    },
    async select(name) {
      await turnTo(page, 'Manifest');
      await press(page.locator('.manifest .row').filter({ hasText: name }).first().locator('button').first());
    },
    field: (label) => card.getByLabel(label, { exact: true }).first(),
    async menu(entry) {
      await press(page.locator('.app-name'));
      await button(entry, page.locator('#app-menu'));
    },
    async openFold(id) {
      const head = card.locator(`[data-fold=${id}] > h3 > button`);
      if ((await head.getAttribute('aria-expanded')) !== 'true') await press(head);
    },
    file: async () =>
      writeAircraft(
        JSON.parse(await page.evaluate(() => JSON.stringify(window.counterpoise.document.current()))),
      ),
    async undoAll() {
      let steps = 0;
      const undo = page.getByRole('button', { name: /^Undo: / });
      for (; (await undo.count()) > 0; steps++) await press(undo);
      return steps;
    },
  };
}
