import './rows.css';
import { memo } from 'react';
import { perObject } from '../../engine/memory/memory';
import { BARE_AIRFRAME_ID } from '../../model/airframe/bareAirframe';
import type { Aircraft, MassFrom } from '../../model/document/types';
import type { ManifestRow } from '../../model/words/manifestRows';
import { useBench, useView } from '../../store/react';
import { RowFit, useRowFit } from '../fit/RowFit';
import { Icon, RoleMark } from '../icons';
import { RowActions } from './RowActions';
import type { OwnOrder } from './useOwnOrder';
import { useRowPress } from './useRowPress';

const idsOf = perObject(
  (things: readonly { readonly id: string }[]): ReadonlySet<string> => new Set(things.map(({ id }) => id)),
);

/** Whether a switch has taken the item off, of what is aboard with the switches so. */
export const isOff = ({ structure, parts, tanks }: Aircraft, { id, group }: ManifestRow): boolean => {
  if (group === 'structure') return id !== BARE_AIRFRAME_ID && !idsOf(structure).has(id);
  return (group === 'part' || group === 'tank') && !idsOf(parts).has(id) && !idsOf(tanks).has(id);
};

/** What stands beside the name of an item that nobody weighed. */
const rowMarks: Readonly<Record<MassFrom, { readonly sign: string; readonly says: string } | null>> = {
  weighed: null,
  measured: null,
  typical: { sign: '≈', says: 'typical, weigh yours' },
  assumed: { sign: '≈', says: 'assumed, weigh yours' },
  unknown: { sign: '?', says: 'mass unknown' },
};

interface RowProps {
  readonly row: ManifestRow;
  readonly isFirst: boolean;
  /** A switch has taken it off. */
  readonly off: boolean;
  readonly ownOrder: OwnOrder;
  readonly onOpenCard: () => void;
}

/** One item aboard. The selected one opens its actions below. */
export const Row = memo(function Row({ row, isFirst, off, ownOrder, onOpenCard }: RowProps) {
  const bench = useBench();
  const { id, name, role, locked, massFrom, counted } = row;
  const mark = massFrom && rowMarks[massFrom];
  const selected = useView((view) => view.selectedId === id);
  const chosen = useView(({ groupIds }) => groupIds.length > 1 && groupIds.includes(id));
  const press = useRowPress(id);
  const hidden = useView((view) => view.hiddenIds.includes(id));
  const nothingSelected = useView((view) => view.selectedId === null);
  const unfit = useRowFit(id);
  return (
    <>
      <tr
        data-item={id}
        className="row"
        data-selected={selected || undefined}
        data-chosen={chosen || undefined}
        data-uncounted={!counted || off || undefined}
        {...press}
        onDoubleClick={onOpenCard}
        onPointerEnter={() => bench.view.setState({ hoveredId: id })}
        onPointerLeave={() => bench.view.setState({ hoveredId: null })}
      >
        <th scope="row">
          <span
            className="row-grip"
            aria-hidden="true"
            title="Drag it to its place in your own order"
            onPointerDown={(event) => ownOrder.drag(event, id)}
          />
          <button
            type="button"
            aria-pressed={selected || chosen}
            tabIndex={selected || (nothingSelected && isFirst) ? 0 : -1}
            title={name}
            data-fit={unfit === '' ? undefined : 'words'}
          >
            <RoleMark of={role} />
            <span className="row-name">{name}</span>
            {mark && (
              <span className="typical" title={mark.says}>
                {mark.sign}
                <span className="unseen">{mark.says}</span>
              </span>
            )}
            {locked && <Icon name="lock" />}
            {hidden && <Icon name="hidden" />}
            {off && <span className="typical">off</span>}
            {unfit !== '' && <RowFit id={id} words={unfit} />}
          </button>
        </th>
        {/* The figures are written by hand: see RowFigures. */}
        <td className="figure">
          <span data-of="mass" />
        </td>
        <td className="figure">
          <span data-of="station" />
          <span className="moment" aria-hidden="true" />
        </td>
      </tr>
      {selected && !chosen && <RowActions row={row} ownOrder={ownOrder} />}
    </>
  );
});
