/** Writes an attribute of a drawing if it says something else: one written anew costs the page its layout, even when it says the same. */
export function setAttribute(element: Element | null | undefined, name: string, value: string): void {
  if (element && element.getAttribute(name) !== value) element.setAttribute(name, value);
}

/** The same of an element's words. */
export function setText(element: Element | null | undefined, words: string): void {
  if (element && element.textContent !== words) element.textContent = words;
}
