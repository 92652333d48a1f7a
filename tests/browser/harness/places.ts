import type { Page } from 'playwright-core';

/** Opens a fold of the card that is shown, by its title. */
export async function openFold(page: Page, title: string): Promise<void> {
  const fold = page
    .getByTestId('card')
    .locator('.fold > h3 > button')
    .filter({ has: page.getByText(title, { exact: true }) });
  await fold.waitFor();
  if ((await fold.getAttribute('aria-expanded')) !== 'true') await fold.click();
}

/** Shows a place of the bench, where the places take turns; elsewhere it is shown anyway. */
export async function turnTo(page: Page, place: 'Stage' | 'Beam' | 'Manifest' | 'Card'): Promise<void> {
  const turns = page.getByRole('navigation', { name: 'Places of the bench' });
  const turn = turns.getByRole('button', { name: place, exact: true });
  if (await turn.isVisible()) await turn.click();
}
