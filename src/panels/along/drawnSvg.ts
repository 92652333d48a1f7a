/** What a drawing’s look is made of; each is written onto every element, so that no style sheet is needed. */
const LOOKS = [
  'fill',
  'fill-opacity',
  'fill-rule',
  'stroke',
  'stroke-width',
  'stroke-opacity',
  'stroke-dasharray',
  'stroke-linecap',
  'stroke-linejoin',
  'opacity',
  'font-family',
  'font-size',
  'font-weight',
  'text-anchor',
  'dominant-baseline',
  'vector-effect',
  'paint-order',
  'letter-spacing',
  'transform',
] as const;

/** The printed width of a drawing, mm: a column of an A4 sheet less 15 mm on each side (ISO 216). */
const WIDE_MM = 180;

/**
 * A drawing of the page as an SVG file of its own, its looks written out, in light colours for print. Null for one that is not
 * on the screen.
 */
export function drawnSvg(drawing: SVGSVGElement): string | null {
  const { width, height } = drawing.getBoundingClientRect();
  if (width === 0 || height === 0) return null;
  const root = document.documentElement;
  const theme = root.getAttribute('data-theme');
  // Only read from, never painted: it is put back within the same task.
  root.setAttribute('data-theme', 'light');
  try {
    const copy = drawing.cloneNode(true) as SVGSVGElement;
    const hidden = getComputedStyle(drawing).visibility === 'hidden';
    writeLooks(drawing, copy, hidden);
    return framed(copy, width, height);
  } finally {
    if (theme === null) root.removeAttribute('data-theme');
    else root.setAttribute('data-theme', theme);
  }
}

/** Writes the looks of each element onto its copy; what is not seen is left out. */
function writeLooks(from: Element, to: Element, rootHidden: boolean): void {
  const style = getComputedStyle(from);
  if (style.display === 'none' || (style.visibility === 'hidden' && !rootHidden)) {
    to.remove();
    return;
  }
  for (const look of LOOKS) {
    const value = style.getPropertyValue(look);
    if (value === '' || (look === 'transform' && (value === 'none' || from instanceof SVGSVGElement)))
      continue;
    // A font stack has quotation marks of its own; attributes are escaped when they are written.
    to.setAttribute(look, look === 'transform' ? value.replaceAll('px', '') : value);
  }
  for (const name of ['class', 'style', 'tabindex', 'role', 'data-testid']) to.removeAttribute(name);
  const copies = [...to.children];
  for (const [at, child] of [...from.children].entries()) {
    const copy = copies[at];
    if (copy) writeLooks(child, copy, rootHidden);
  }
}

function framed(copy: SVGSVGElement, width: number, height: number): string {
  copy.setAttribute('xmlns', 'http://www.w3.org/2000/svg');
  if (!copy.hasAttribute('viewBox')) copy.setAttribute('viewBox', `0 0 ${width} ${height}`);
  copy.setAttribute('width', `${WIDE_MM}mm`);
  copy.setAttribute('height', `${((WIDE_MM * height) / width).toFixed(2)}mm`);
  for (const control of copy.querySelectorAll('[aria-hidden] foreignObject, foreignObject')) control.remove();
  return `${new XMLSerializer().serializeToString(copy)}\n`;
}

/** A drawing on the page with a name of its own. */
export interface PageDrawing {
  readonly name: string;
  readonly element: SVGSVGElement;
}

/** Every named drawing that is on the screen behind the dialog. */
export function pageDrawings(): readonly PageDrawing[] {
  const all = [...document.querySelectorAll<SVGSVGElement>('svg[aria-label]')];
  return all.flatMap((element) => {
    const { width, height } = element.getBoundingClientRect();
    if (element.closest('dialog, [popover]') || width < LEAST_PX || height < LEAST_PX / 4) return [];
    const name = (element.getAttribute('aria-label') ?? '').split('. ')[0] ?? '';
    return [{ name, element }];
  });
}

/** Smaller ones are signs, not drawings, px. */
const LEAST_PX = 120;
