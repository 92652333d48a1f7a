/** Writes an attribute of a drawing only where it changes: writing the same again would cost the page its layout. */
export function setAttribute(element: Element | null | undefined, name: string, value: string): void {
  if (element && element.getAttribute(name) !== value) element.setAttribute(name, value);
}

/** The same of an element's words, which stay the same piece of text: a new one would cost more to lay out. */
export function setText(element: Element | null | undefined, words: string): void {
  if (!element) return;
  const first = element.firstChild;
  if (!(first instanceof Text) || first.nextSibling) element.textContent = words;
  else if (first.data !== words) first.data = words;
}
