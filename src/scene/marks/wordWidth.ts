const widths = new Map<string, number>();
let pen: CanvasRenderingContext2D | null = null;

/** How wide a word is, px, without asking the page for its layout. */
export function wordWidth(text: string, font: string): number {
  const key = `${font}|${text}`;
  const kept = widths.get(key);
  if (kept !== undefined) return kept;
  pen ??= window.document.createElement('canvas').getContext('2d');
  if (!pen) return text.length * 7;
  pen.font = font;
  const width = Math.ceil(pen.measureText(text).width);
  // A drag writes a new figure with every move: what is no longer asked for must not pile up.
  if (widths.size > 500) widths.clear();
  widths.set(key, width);
  return width;
}

/** Widths measured before the page's own face had come are of another. */
export const forgetWidths = (): void => widths.clear();
