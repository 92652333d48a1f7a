import './manifest.css';
import { useMemo, useRef, useState } from 'react';
import { inLoadState } from '../../model/airframe/loadSwitches';
import { type ManifestRow, manifestRows } from '../../model/words/manifestRows';
import { useBench, useCommitted, useView } from '../../store/react';
import { Icon } from '../icons';
import { Live } from '../Live';
import { later } from '../later';
import { useReadings } from '../readings';
import { ManifestHead } from './ManifestHead';
import { orderRows, type Sort, usualSort } from './order';
import { isOff, Row } from './Row';
import { RowFigures } from './RowFigures';
import { useFolded } from './useFolded';
import { useManifestKeys } from './useManifestKeys';
import { type OwnOrder, ownOrderSort, useOwnOrder } from './useOwnOrder';
import { useSelectedInSight } from './useSelectedInSight';

const AddDialog = later(
  () => import('./AddDialog'),
  (module) => module.AddDialog,
  { place: 'Adding' },
);

type Group = ManifestRow['group'];

const sections: readonly { readonly group: Group; readonly title: string }[] = [
  { group: 'part', title: 'Parts' },
  { group: 'tank', title: 'Tanks' },
  { group: 'lead', title: 'Leads' },
  { group: 'structure', title: 'Structure' },
];

/** All that is aboard, as a table. */
export function Manifest({ onOpenCard }: { readonly onOpenCard: () => void }) {
  const bench = useBench();
  const say = useReadings();
  const aircraft = useCommitted((committed) => committed);
  const [sort, setSort] = useState<Sort>(usualSort);
  const [words, setWords] = useState('');
  const [adding, setAdding] = useState(false);
  const rows = useMemo(() => manifestRows(aircraft), [aircraft]);
  const { folded, toggle } = useFolded(rows);
  const cgMm = bench.balance.get().cgMm?.[0] ?? null;
  const shown = sections.map(({ group, title }) => {
    const all = rows.filter((row) => row.group === group);
    const isOpen = words !== '' || !folded.has(group);
    return { group, title, isEmpty: all.length === 0, isOpen, listed: orderRows(all, sort, words, cgMm) };
  });
  const order = shown.flatMap(({ isOpen, listed }) => (isOpen ? listed.map(({ id }) => id) : []));
  const ownOrder = useOwnOrder(
    shown.map(({ listed }) => listed.map(({ id }) => id)),
    () => setSort(ownOrderSort),
  );
  const keys = useManifestKeys(order, ownOrder.step, onOpenCard);
  const table = useRef<HTMLTableElement>(null);
  useSelectedInSight(table);
  return (
    <div className="manifest" data-units={say.units}>
      <header>
        <h2>Manifest</h2>
        <label className="filter">
          <Icon name="search" />
          <span className="unseen">Filter by name or role</span>
          <input type="search" value={words} onChange={(event) => setWords(event.target.value)} />
        </label>
      </header>
      <div className="manifest-scroll">
        <table ref={table} onKeyDown={keys}>
          <caption className="unseen">What is aboard, with mass, station and moment about the CG</caption>
          <ManifestHead sort={sort} onSort={setSort} />
          {shown.map(
            ({ group, isEmpty, ...section }) =>
              !isEmpty && (
                <Section
                  key={group}
                  {...section}
                  onToggle={() => toggle(group)}
                  firstId={order[0]}
                  ownOrder={ownOrder}
                  onOpenCard={onOpenCard}
                />
              ),
          )}
          <AllUp />
        </table>
        <RowFigures />
        {rows.length === 0 && (
          <p className="nothing">
            Nothing aboard yet. Add a part, or begin a{' '}
            <button type="button" className="link" onClick={() => bench.view.setState({ place: 'begin' })}>
              New aircraft
            </button>
            .
          </p>
        )}
      </div>
      <footer>
        <button type="button" className="button" aria-label="Add a part" onClick={() => setAdding(true)}>
          <Icon name="plus" /> Add
        </button>
        <button type="button" className="button" onClick={() => bench.place.api.setState({ open: true })}>
          Arrange…
        </button>
      </footer>
      {adding && <AddDialog onClose={() => setAdding(false)} onAdded={onOpenCard} />}
    </div>
  );
}

interface SectionProps {
  readonly title: string;
  readonly isOpen: boolean;
  readonly listed: readonly ManifestRow[];
  /** The first row of the whole table: where the Tab key arrives while nothing is selected. */
  readonly firstId: string | undefined;
  readonly ownOrder: OwnOrder;
  readonly onToggle: () => void;
  readonly onOpenCard: () => void;
}

function Section({ title, isOpen, listed, firstId, ownOrder, onToggle, onOpenCard }: SectionProps) {
  const aircraft = useCommitted((committed) => committed);
  const positions = useView((view) => view.positions);
  const aboard = useMemo(() => inLoadState(aircraft, positions), [aircraft, positions]);
  return (
    <tbody>
      <tr className="section">
        <th colSpan={3} scope="rowgroup">
          <button type="button" aria-expanded={isOpen} onClick={onToggle}>
            <Icon name={isOpen ? 'up' : 'down'} />
            {title} <span>{listed.length}</span>
          </button>
        </th>
      </tr>
      {isOpen &&
        listed.map((row) => (
          <Row
            key={row.id}
            row={row}
            isFirst={row.id === firstId}
            off={isOff(aboard, row)}
            ownOrder={ownOrder}
            onOpenCard={onOpenCard}
          />
        ))}
    </tbody>
  );
}

/** The sum of all, with the CG's station. */
function AllUp() {
  const say = useReadings();
  return (
    <tfoot>
      <tr>
        <td colSpan={3}>
          <span className="all-up">
            <span>All up</span>
            <span className="figure">
              <Live read={({ balance }) => say.mass(balance.get().massG)} />
            </span>
            <span className="figure">
              <Live
                read={({ balance }) => {
                  const at = balance.get().cgMm?.[0];
                  return at === undefined ? '–' : say.station(at);
                }}
              />
            </span>
          </span>
        </td>
      </tr>
    </tfoot>
  );
}
