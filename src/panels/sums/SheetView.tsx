import './sums.css';
import { useState } from 'react';
import { sheetText, type WorkingSheet } from '../../model/words/workingSheet';
import { Labelled } from '../glossary/Labelled';
import { Icon } from '../icons';

interface SheetViewProps {
  readonly title: string;
  readonly sheet: WorkingSheet;
  /** Its rows are figures of the trade, not things aboard. */
  readonly asWords?: boolean;
}

/** A sum on paper, and a button that puts it on the clipboard as text. */
export function SheetView({ title, sheet, asWords = false }: SheetViewProps) {
  const [copied, setCopied] = useState<'no' | 'yes' | 'refused'>('no');
  const { says, head, rows, total, steps } = sheet;
  const copy = async () => {
    const done = await navigator.clipboard?.writeText(sheetText(title, sheet)).then(
      () => true,
      () => false,
    );
    setCopied(done ? 'yes' : 'refused');
  };
  return (
    <div className="sheet" data-testid="sum">
      <p className="hint">{says}</p>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reachable with the keyboard */}
      <section className="sheet-scroll" aria-label="The lines of the sum" tabIndex={0}>
        <table>
          <thead>
            <tr>
              {head.map((cell, at) =>
                at === 0 ? (
                  <td key="name" />
                ) : (
                  <th key={cell} scope="col">
                    <Labelled>{cell}</Labelled>
                  </th>
                ),
              )}
            </tr>
          </thead>
          <tbody>
            {rows.map(([name, ...figures], at) => (
              <tr key={at}>
                <th scope="row">{asWords ? <Labelled>{name ?? ''}</Labelled> : name}</th>
                {figures.map((figure, column) => (
                  <td key={head[column + 1]} className="figure">
                    {figure}
                  </td>
                ))}
              </tr>
            ))}
          </tbody>
          {total && (
            <tfoot>
              <tr>
                <th scope="row">{total[0]}</th>
                {total.slice(1).map((figure, column) => (
                  <td key={head[column + 1]} className="figure">
                    {figure}
                  </td>
                ))}
              </tr>
            </tfoot>
          )}
        </table>
      </section>
      <div className="sheet-foot">
        <div className="sheet-steps">
          {steps.map((step, at) => (
            <p key={step} className={at === steps.length - 1 ? 'figure result' : undefined}>
              {step}
            </p>
          ))}
        </div>
        <button type="button" className="button" onClick={copy}>
          <Icon name="copy" /> Copy
        </button>
      </div>
      <p className="hint" role="status">
        {copied === 'yes' && 'Copied.'}
        {copied === 'refused' && 'The browser did not allow it; select the text instead.'}
      </p>
    </div>
  );
}
