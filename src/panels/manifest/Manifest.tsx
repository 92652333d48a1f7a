import './manifest.css';
import { useEffect, useMemo, useRef, useState } from 'react';
import { inLoadState } from '../../model/airframe/loadSwitches';
import { type ManifestRow, manifestRows } from '../../model/words/manifestRows';
import { useBench, useCommitted, useView } from '../../store/react';
import { Icon } from '../icons';
import { Live } from '../Live';
import { later } from '../later';
import { useReadings } from '../readings';
import { orderRows, type Sort, type SortKey, usualSort } from './order';
import { isOff, Row } from './Row';
import { RowFigures } from './RowFigures';
import { useManifestKeys } from './useManifestKeys';
import { ownOrderSort, useOwnOrder } from './useOwnOrder';

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

const without = (groups: ReadonlySet<Group>, group: Group): ReadonlySet<Group> =>
  groups.has(group) ? new Set([...groups].filter((each) => each !== group)) : groups;

/**
 * Brings a row and its actions into the list's own window. Only the list scrolls: were the page to follow, the stage
 * would slide away under the hand that has just taken hold of the item.
 */
function showInList(line: Element): void {
  const list = line.closest('.manifest-scroll');
  if (!list) return;
  const last = line.nextElementSibling ?? line;
  const seen = list.getBoundingClientRect();
  const below = last.getBoundingClientRect().bottom - seen.bottom;
  if (below > 0) list.scrollTop += below;
  const above = seen.top - line.getBoundingClientRect().top;
  if (above > 0) list.scrollTop -= above;
}

/** All that is aboard, as a table. */
export function Manifest({ onOpenCard }: { readonly onOpenCard: () => void }) {
  const bench = useBench();
  const say = useReadings();
  const aircraft = useCommitted((committed) => committed);
  const [sort, setSort] = useState<Sort>(usualSort);
  const [words, setWords] = useState('');
  const [folded, setFolded] = useState<ReadonlySet<Group>>(new Set<Group>(['structure']));
  const [adding, setAdding] = useState(false);
  const rows = useMemo(() => manifestRows(aircraft), [aircraft]);
  const positions = useView((view) => view.positions);
  const aboard = useMemo(() => inLoadState(aircraft, positions), [aircraft, positions]);
  const cgMm = bench.balance.get().cgMm?.[0] ?? null;
  const shown = sections.map(({ group, title }) => {
    const all = rows.filter((row) => row.group === group);
    return { group, title, all, listed: orderRows(all, sort, words, cgMm) };
  });
  const isOpen = (group: Group) => words !== '' || !folded.has(group);
  const order = shown.flatMap(({ group, listed }) => (isOpen(group) ? listed.map(({ id }) => id) : []));
  const own = useOwnOrder(
    shown.map(({ listed }) => listed.map(({ id }) => id)),
    () => setSort(ownOrderSort),
  );
  const keys = useManifestKeys(order, own.step, onOpenCard);
  const table = useRef<HTMLTableElement>(null);
  const selectedId = useView((view) => view.selectedId);
  const selectedGroup = rows.find(({ id }) => id === selectedId)?.group;
  // What is selected elsewhere is shown here too.
  useEffect(() => {
    if (selectedGroup) setFolded((before) => without(before, selectedGroup));
  }, [selectedGroup]);
  useEffect(() => {
    if (selectedId === null) return;
    const line = table.current?.querySelector(`[data-item="${CSS.escape(selectedId)}"]`);
    if (line) showInList(line);
  }, [selectedId]);
  const toggle = (group: Group) =>
    setFolded((before) => {
      const next = new Set(before);
      if (!next.delete(group)) next.add(group);
      return next;
    });
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
          <thead>
            <tr>
              <SortHead label="Name" of="name" sort={sort} onSort={setSort} />
              <SortHead label="Mass" of="mass" sort={sort} onSort={setSort} />
              <SortHead
                label="Station"
                title={`Stations from ${say.from}`}
                of="station"
                sort={sort}
                onSort={setSort}
              />
            </tr>
            <tr className="moment-head">
              <SortHead
                label="Moment about the CG"
                title="Moment about the CG: nose-heavy to the left, tail-heavy to the right"
                of="moment"
                sort={sort}
                onSort={setSort}
                wide
              />
            </tr>
          </thead>
          {shown.map(
            ({ group, title, all, listed }) =>
              all.length > 0 && (
                <tbody key={group}>
                  <tr className="section">
                    <th colSpan={3} scope="rowgroup">
                      <button type="button" aria-expanded={isOpen(group)} onClick={() => toggle(group)}>
                        <Icon name={isOpen(group) ? 'up' : 'down'} />
                        {title} <span>{listed.length}</span>
                      </button>
                    </th>
                  </tr>
                  {isOpen(group) &&
                    listed.map((row) => (
                      <Row
                        key={row.id}
                        row={row}
                        isFirst={row.id === order[0]}
                        off={isOff(aboard, row)}
                        own={own}
                        onOpenCard={onOpenCard}
                      />
                    ))}
                </tbody>
              ),
          )}
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

interface SortHeadProps {
  readonly label: string;
  readonly title?: string;
  readonly of: SortKey;
  readonly sort: Sort;
  readonly onSort: (sort: Sort) => void;
  readonly wide?: boolean;
}

function SortHead({ label, title = label, of, sort, onSort, wide = false }: SortHeadProps) {
  const sorted = sort.key === of;
  return (
    <th
      scope="col"
      colSpan={wide ? 3 : 1}
      aria-sort={sorted ? (sort.falling ? 'descending' : 'ascending') : 'none'}
    >
      <button
        type="button"
        title={title}
        onClick={() => onSort({ key: of, falling: sorted && !sort.falling })}
      >
        {wide ? (
          <>
            <span aria-hidden="true">◂ Moment ▸</span>
            <span className="unseen">{label}</span>
          </>
        ) : (
          label
        )}
        {sorted && <Icon name={sort.falling ? 'down' : 'up'} />}
      </button>
    </th>
  );
}
