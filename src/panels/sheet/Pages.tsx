import { type CSSProperties, useEffect, useLayoutEffect, useMemo, useRef, useState } from 'react';
import { lastOnly } from '../../engine/memory/memory';
import { paginate } from '../../model/sheet/paginate';
import { bodyOf, type Paper } from '../../model/sheet/paper';
import type { BuildSheet } from '../../model/sheet/sheet';
import { Flow } from './Flow';
import { flowOf, type Heights, type Piece, piecesOf, tableIdOf } from './pieces';
import { SheetPage } from './SheetPage';

interface PagesProps {
  readonly sheet: BuildSheet;
  readonly paper: Paper;
  readonly onPaged: (count: number) => void;
}

/** Left free at the foot of a page for what rounding adds up to, mm. */
const SPARE_MM = 0.5;

const flow = lastOnly(piecesOf);

/** True pages: every piece is measured as it will stand, then dealt onto pages. */
export function Pages({ sheet, paper, onPaged }: PagesProps) {
  const pieces = flow(sheet);
  const body = bodyOf(paper, sheet.banner !== null);
  const [measured, setMeasured] = useState<{ readonly of: unknown; readonly heights: Heights } | null>(null);
  const fonts = useFonts();
  const ruler = useRef<HTMLDivElement>(null);
  const scroller = useRef<HTMLDivElement>(null);
  const zoom = useZoom(scroller, paper);
  const of = useMemo(() => ({ pieces, wideMm: body.wideMm, fonts }), [pieces, body.wideMm, fonts]);
  const current = measured?.of === of;
  useLayoutEffect(() => {
    if (!current && ruler.current) setMeasured({ of, heights: measure(ruler.current, pieces, of.wideMm) });
  }, [current, of, pieces]);
  const pages = useMemo(
    () => (measured && current ? paginate(flowOf(pieces, measured.heights), body.highMm - SPARE_MM) : null),
    [measured, current, pieces, body.highMm],
  );
  useEffect(() => {
    if (pages) onPaged(pages.length);
  }, [pages, onPaged]);
  const sizes = {
    '--page-wide': `${paper.wideMm}mm`,
    '--page-high': `${paper.highMm}mm`,
    '--body-wide': `${body.wideMm}mm`,
    '--body-high': `${body.highMm}mm`,
    '--zoom': zoom,
  } as CSSProperties;
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: keys scroll it
    <section className="sheet-scroller" ref={scroller} style={sizes} aria-label="Pages" tabIndex={0}>
      {!current && (
        <div className="sheet-measure" ref={ruler} aria-hidden="true" inert>
          <Flow pieces={pieces} card={sheet.card} measuring />
        </div>
      )}
      <div className="sheet-pages" data-testid="sheet-pages">
        {pages?.map((page, at) => (
          <div className="sheet-holder" key={page[0]?.at ?? at}>
            <SheetPage
              sheet={sheet}
              title={pieces[page[0]?.at ?? 0]?.title ?? ''}
              at={at + 1}
              count={pages.length}
            >
              <Flow pieces={page.map((placed) => pieces[placed.at]!)} card={sheet.card} />
            </SheetPage>
          </div>
        ))}
      </div>
    </section>
  );
}

function measure(box: HTMLElement, pieces: readonly Piece[], wideMm: number): Heights {
  const perMm = box.getBoundingClientRect().width / wideMm;
  const highOf = (element: Element) => element.getBoundingClientRect().height / perMm;
  const heads = new Map<string, number>();
  for (const table of box.querySelectorAll('[data-table]')) {
    const head =
      highOf(table) - [...table.querySelectorAll('tbody tr')].reduce((sum, row) => sum + highOf(row), 0);
    heads.set(table.getAttribute('data-table') ?? '', head);
  }
  const found = new Map<string, number>();
  for (const element of box.querySelectorAll('[data-piece]'))
    found.set(element.getAttribute('data-piece') ?? '', highOf(element));
  const missing = pieces.find(({ key }) => !found.has(key));
  if (missing)
    throw new Error(`The sheet's "${missing.key}" was not measured (${tableIdOf(missing) ?? 'no table'}).`);
  return { pieces: found, heads };
}

/** Counts up once when the letters have come: they may be wider than those that stood in for them. */
function useFonts(): number {
  const [loaded, setLoaded] = useState(() => (globalThis.document.fonts.status === 'loaded' ? 1 : 0));
  useEffect(() => {
    let open = true;
    void globalThis.document.fonts.ready.then(() => open && setLoaded(1));
    return () => {
      open = false;
    };
  }, []);
  return loaded;
}

const PX_PER_MM = 96 / 25.4;
/** About the pages, px. */
const AROUND_PX = 40;

/** Pages are shown at their size, or as much smaller as the window asks for. */
function useZoom(scroller: React.RefObject<HTMLElement | null>, { wideMm }: Paper): number {
  const [zoom, setZoom] = useState(1);
  useLayoutEffect(() => {
    const element = scroller.current;
    if (!element) return;
    const fit = () =>
      setZoom(Math.min(1, Math.max(0.2, (element.clientWidth - AROUND_PX) / (wideMm * PX_PER_MM))));
    fit();
    const observer = new ResizeObserver(fit);
    observer.observe(element);
    return () => observer.disconnect();
  }, [scroller, wideMm]);
  return zoom;
}
