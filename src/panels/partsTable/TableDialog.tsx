import './table.css';
import { useContext, useState } from 'react';
import { importParts, tooManyFault } from '../../model/partsTable/importParts';
import { useBench } from '../../store/react';
import { Refusal } from '../fields/EditButton';
import { useEdit } from '../fields/useEdit';
import { FilesContext } from '../filesContext';
import { Modal } from '../Modal';
import { useReadings } from '../readings';
import { TableChoices } from './TableChoices';
import { TablePreview } from './TablePreview';
import { type TableInHand, type TableState, useTable } from './useTable';

interface DialogProps {
  readonly onClose: () => void;
  readonly onAdded: () => void;
}

/** Parts from a table: pasted or opened, matched, looked over, and added as one step. */
export function TableDialog({ onClose, onAdded }: DialogProps) {
  const bench = useBench();
  const say = useReadings();
  const edit = useEdit();
  const files = useContext(FilesContext);
  const table = useTable();
  const [fault, setFault] = useState<string | null>(null);
  const { inHand } = table;
  const open = async () => {
    const opened = await files?.openTable();
    if (!opened) return;
    if (opened.ok) {
      table.setText(opened.text);
      setFault(null);
    } else if ('sentence' in opened) setFault(opened.sentence);
  };
  const taken = inHand ? takenRows(table, inHand) : [];
  const count = taken.reduce((sum, { count: copies }) => sum + copies, 0);
  const add = () => {
    const wantedMm = Math.round(bench.balance.get().cgMm?.[0] ?? 200);
    let noPlace: readonly string[] = [];
    const refused = edit(`Add ${partsWord(count)} from a table`, (aircraft) => {
      const tooMany = tooManyFault(aircraft, taken);
      if (tooMany !== null) return tooMany;
      const imported = importParts(aircraft, taken, { wantedMm, fromMm: say.fromMm });
      noPlace = imported.noPlace;
      return imported.aircraft;
    });
    setFault(refused);
    if (refused !== null) return;
    const placed =
      noPlace.length > 0
        ? ` No free place was found for ${noPlace.length} of them: they stand at station ${say.station(wantedMm)}, see Fit.`
        : '';
    bench.notice.tell({
      about: 'edit',
      tone: 'note',
      text: `${partsWord(count)} added from the table.${placed}`,
    });
    onClose();
    onAdded();
  };
  return (
    <Modal title="Parts from a table" onClose={onClose} wide>
      <div className="table-import" data-testid="parts-table">
        <div className="table-source">
          <label>
            <span className="hint">Copy the rows in a spreadsheet and paste them here, heads and all.</span>
            <textarea
              rows={inHand ? 3 : 8}
              spellCheck={false}
              value={table.text}
              placeholder={'Name\tMass (g)\tLength (mm)\nServo\t12.5\t23'}
              onChange={({ target }) => table.setText(target.value)}
            />
          </label>
          <button type="button" className="button" onClick={() => void open()}>
            Open a CSV file
          </button>
        </div>
        <Refusal fault={fault ?? table.sentence} />
        {inHand && (
          <>
            <TableChoices table={table} inHand={inHand} />
            <p className="hint">
              Stations are read from {say.from}. A part without one goes to the first free place.
            </p>
            <TablePreview table={table} inHand={inHand} />
            <footer className="table-foot">
              <p>{leftWords(table, inHand)}</p>
              <button type="button" className="button strong" disabled={count === 0} onClick={add}>
                Add {partsWord(count)}
              </button>
            </footer>
          </>
        )}
      </div>
    </Modal>
  );
}

const takenRows = ({ isTaken }: TableState, { read }: TableInHand) =>
  read.rows.flatMap(({ read: part, row, isTotal }) => (part && isTaken(row, isTotal) ? [part] : []));

const partsWord = (count: number) => (count === 1 ? '1 part' : `${count} parts`);
const rowsWord = (count: number) => (count === 1 ? '1 row' : `${count} rows`);

/** What of the table does not come aboard: nothing of it goes without a word. */
function leftWords({ isTaken }: TableState, { read, matching }: TableInHand): string {
  const bad = read.rows.filter(({ faults }) => faults.length > 0).length;
  const left = read.rows.filter(({ read: part, row, isTotal }) => part && !isTaken(row, isTotal)).length;
  const out = matching.columns.filter(({ field }) => field === null).length;
  const words = [
    bad > 0 && `${rowsWord(bad)} cannot be read`,
    left > 0 && `${rowsWord(left)} left out`,
    read.above > 0 && `${rowsWord(read.above)} above the parts`,
    read.empty > 0 && `${rowsWord(read.empty)} empty`,
    out > 0 && `${out === 1 ? '1 column' : `${out} columns`} left out`,
  ].filter(Boolean);
  return words.length > 0 ? `Not taken: ${words.join(', ')}.` : 'Every row is taken.';
}
