import type { Page } from 'playwright-core';

/** Words of the graphics driver about its own speed, and of three.js about its own names, which are not the bench's. */
const OTHERS = /GL Driver Message|GPU stall|software WebGL|THREE\.Clock: This module/i;

/** Whether a console message is one that no bench should write. */
export const isComplaint = (type: string, text: string): boolean =>
  type === 'error' || (type === 'warning' && !OTHERS.test(text));

/** Every attribute, text and field of the page that shows a figure which is none; one line each. */
export const noFigures = (page: Page): Promise<string[]> =>
  page.evaluate(() => {
    const none = /\b(NaN|Infinity|undefined)\b|\[object /;
    const found: string[] = [];
    const where = (element: Element) =>
      `${element.tagName.toLowerCase()}.${element.getAttribute('class') ?? ''} in ${
        element.closest('[data-testid]')?.getAttribute('data-testid') ?? 'the page'
      }`;
    for (const element of document.querySelectorAll('body *')) {
      if (element.matches('script, style')) continue;
      for (const { name, value } of element.attributes)
        if (none.test(value)) found.push(`${where(element)}: ${name}="${value.slice(0, 80)}"`);
      for (const child of element.childNodes)
        if (child.nodeType === Node.TEXT_NODE && none.test(child.textContent ?? ''))
          found.push(`${where(element)}: "${child.textContent?.slice(0, 80)}"`);
      if (element instanceof HTMLInputElement && none.test(element.value))
        found.push(`${where(element)}: holds "${element.value}"`);
    }
    return found;
  });
