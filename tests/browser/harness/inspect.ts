import { readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import type { AxeResults } from 'axe-core';
import type { Page } from 'playwright-core';

/** Runs axe-core on the page as it stands; one line for each element that breaks a rule. */
export async function axe(page: Page): Promise<string[]> {
  if (!(await page.evaluate(() => 'axe' in window)))
    await page.evaluate(
      await readFile(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8'),
    );
  // All rules, but what keeps them is not worked out in full.
  const results: AxeResults = await page.evaluate("axe.run({ resultTypes: ['violations'] })");
  return results.violations.flatMap((rule) =>
    rule.nodes.map((node) => `${rule.id} (${rule.impact}): ${node.target.join(' ')}: ${rule.help}`),
  );
}
