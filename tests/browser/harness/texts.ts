import type { Page } from 'playwright-core';

/** A piece of text that can be seen, with the part of its box that is not clipped, CSS pixels. */
export interface SeenText {
  readonly text: string;
  /** The nearest place, part of the screen or class: for a sentence about it. */
  readonly where: string;
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

/**
 * Installs `window.seenTexts()`: every text that can be seen on the page as it stands, fields' values, hints and chosen
 * options among them. Text that is meant for screen readers alone is left out.
 */
const install = () => {
  type Box = { left: number; top: number; right: number; bottom: number };
  const meet = (a: Box, b: Box): Box => ({
    left: Math.max(a.left, b.left),
    top: Math.max(a.top, b.top),
    right: Math.min(a.right, b.right),
    bottom: Math.min(a.bottom, b.bottom),
  });
  const clipped = (element: Element, box: Box): Box => {
    let seen = meet(box, { left: 0, top: 0, right: innerWidth, bottom: innerHeight });
    for (let at: Element | null = element; at; at = at.parentElement) {
      const { overflowX, overflowY, position } = getComputedStyle(at);
      if (overflowX !== 'visible' || overflowY !== 'visible') seen = meet(seen, at.getBoundingClientRect());
      if (position === 'fixed') break;
    }
    return seen;
  };
  const isShown = (element: Element): boolean =>
    !element.closest('.unseen, script, style, option, title, [hidden]') &&
    element.checkVisibility({ opacityProperty: true, visibilityProperty: true });
  const where = (element: Element) => {
    const place = element.closest('[data-testid]')?.getAttribute('data-testid') ?? 'page';
    return `${place} ${element.tagName.toLowerCase()}.${element.getAttribute('class') ?? ''}`.trim();
  };
  const least = 2;
  const found = (element: Element, text: string, box: Box) => {
    const seen = clipped(element, box);
    if (seen.right - seen.left < least || seen.bottom - seen.top < least) return [];
    return [{ text, where: where(element), element, ...seen }];
  };
  const ofNode = (node: Text) => {
    const element = node.parentElement;
    const text = node.data.replace(/\s+/g, ' ').trim();
    if (!element || text === '' || !isShown(element)) return [];
    const range = document.createRange();
    range.selectNodeContents(node);
    return [...range.getClientRects()].flatMap((box, line) => found(element, line === 0 ? text : '', box));
  };
  const ofField = (field: HTMLInputElement | HTMLSelectElement | HTMLTextAreaElement) => {
    const text =
      field instanceof HTMLSelectElement
        ? (field.selectedOptions[0]?.text ?? '')
        : field.value || field.placeholder;
    const isText = !(field instanceof HTMLInputElement) || /^(text|search)$/.test(field.type);
    return isText && text && isShown(field) ? found(field, text, field.getBoundingClientRect()) : [];
  };
  Object.assign(window, {
    seenTexts: () => {
      const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
      const nodes: Text[] = [];
      while (walker.nextNode()) nodes.push(walker.currentNode as Text);
      const fields = [...document.querySelectorAll<HTMLInputElement>('input, select, textarea')];
      return [...nodes.flatMap(ofNode), ...fields.flatMap(ofField)];
    },
  });
};

type Installed = { seenTexts(): (SeenText & { element: Element })[] };

/** Every text that can be seen on the page as it stands. */
export async function seenTexts(page: Page): Promise<SeenText[]> {
  await page.evaluate(install);
  return page.evaluate(() =>
    (window as unknown as Installed).seenTexts().map(({ element: _element, ...seen }) => seen),
  );
}

/** Pairs of texts of which each covers some of the other, where nothing opaque lies between: one line each. */
export async function overlappingTexts(page: Page): Promise<string[]> {
  await page.evaluate(install);
  return page.evaluate(() => {
    const texts = (window as unknown as Installed).seenTexts();
    /** Letters reach less high and low than their line, and a pixel is forgiven. */
    const slackPx = 3;
    const isOpaque = (element: Element) => {
      const { backgroundColor } = getComputedStyle(element);
      return !/^rgba\(.*, 0(\.\d+)?\)$|transparent/.test(backgroundColor);
    };
    const hidesOther = (x: number, y: number, one: Element, other: Element): boolean => {
      const stack = document.elementsFromPoint(x, y);
      const at = (element: Element) => stack.findIndex((here) => here === element || element.contains(here));
      const [first, second] = [at(one), at(other)];
      if (first < 0 || second < 0) return false;
      const between = stack.slice(Math.min(first, second), Math.max(first, second));
      const below = first < second ? other : one;
      return between.some((element) => !element.contains(below) && isOpaque(element));
    };
    const over = texts.flatMap((a, i) =>
      texts.slice(i + 1).flatMap((b) => {
        const width = Math.min(a.right, b.right) - Math.max(a.left, b.left);
        const height = Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top);
        if (width <= slackPx || height <= slackPx) return [];
        if (a.element.contains(b.element) || b.element.contains(a.element)) return [];
        return [{ a, b, x: Math.max(a.left, b.left) + width / 2, y: Math.max(a.top, b.top) + height / 2 }];
      }),
    );
    if (over.length === 0) return [];
    // What lets presses through is to be found as well.
    const style = document.head.appendChild(document.createElement('style'));
    style.textContent = '* { pointer-events: auto !important; }';
    const lines = over
      .filter(({ a, b, x, y }) => !hidesOther(x, y, a.element, b.element))
      .map(({ a, b }) => `"${a.text}" (${a.where}) and "${b.text}" (${b.where})`);
    style.remove();
    return lines;
  });
}

/** Texts inside some elements that do not fit their own box: cut off at its edge or ended by dots. */
export const cutTexts = (page: Page, selector: string): Promise<string[]> =>
  page.evaluate((wanted) => {
    const cut: string[] = [];
    for (const root of document.querySelectorAll(wanted))
      for (const element of [root, ...root.querySelectorAll('*')]) {
        if (!element.checkVisibility({ visibilityProperty: true }) || element.closest('.unseen, svg'))
          continue;
        const own = [...element.childNodes].some(
          (node) => node.nodeType === Node.TEXT_NODE && node.textContent?.trim(),
        );
        if (!own) continue;
        const { right, left, bottom } = element.getBoundingClientRect();
        const over = element.scrollWidth > element.clientWidth + 1 && element.clientWidth > 0;
        if (over || left < -1 || right > innerWidth + 1 || bottom > innerHeight + 1)
          cut.push(`${element.className}: "${element.textContent}"`);
      }
    return cut;
  }, selector);
