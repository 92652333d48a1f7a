import { readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import type { AxeResults } from 'axe-core';
import type { Page } from 'playwright-core';
import { inProject } from '../../../src/commands/paths.mjs';

/** Saves what the window shows as .cache/shots/NAME.png and returns that path. */
export async function screenshot(page: Page, name: string): Promise<string> {
  const path = inProject('.cache/shots', `${name}.png`);
  await page.screenshot({ path });
  return path;
}

/** Runs axe-core on the page as it stands; one line for each element that breaks a rule. */
export async function axe(page: Page): Promise<string[]> {
  await page.evaluate(await readFile(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8'));
  const results: AxeResults = await page.evaluate('axe.run()');
  return results.violations.flatMap((rule) =>
    rule.nodes.map((node) => `${rule.id} (${rule.impact}): ${node.target.join(' ')}: ${rule.help}`),
  );
}
