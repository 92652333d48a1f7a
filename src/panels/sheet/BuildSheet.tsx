import './sheet.css';
import './page.css';
import './print.css';
import { useState } from 'react';
import { papers } from '../../model/sheet/paper';
import { useView } from '../../store/react';
import { Controls } from './Controls';
import { Pages } from './Pages';
import { useSheet } from './useSheet';

/** What goes to the bench, the scales and the field: the pages as they will be printed, and what of them. */
export function BuildSheet() {
  const paper = papers[useView(({ sheet }) => sheet.paper)];
  const { sheet, search } = useSheet(paper);
  const [pageCount, setPageCount] = useState(0);
  return (
    <main className="place build-sheet" data-testid="build-sheet">
      <style>{`@page { size: ${paper.wideMm}mm ${paper.highMm}mm; margin: 0; }`}</style>
      <Controls pageCount={pageCount} search={search} />
      {sheet ? (
        <Pages sheet={sheet} paper={paper} onPaged={setPageCount} />
      ) : (
        <p className="sheet-waiting hint" role="status">
          Putting the sheet together…
        </p>
      )}
    </main>
  );
}
