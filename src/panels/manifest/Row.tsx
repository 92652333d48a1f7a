import { memo } from 'react';
import { lastOnly } from '../../engine/memory/memory';
import { BARE_AIRFRAME_ID } from '../../model/airframe/bareAirframe';
import { itemById, structureById } from '../../model/document/edit';
import type { Aircraft } from '../../model/document/types';
import { type ManifestRow, manifestRows } from '../../model/words/manifestRows';
import { useBalance, useBench, useView } from '../../store/react';
import { RowFit } from '../fit/RowFit';
import { Icon, RoleMark } from '../icons';
import { Live } from '../Live';
import { useReadings } from '../readings';
import { RowActions } from './RowActions';

/** The rows of the aircraft as it is now, drag and all, by their id. */
const rowsNow = lastOnly(
  (aircraft: Aircraft): ReadonlyMap<string, ManifestRow> =>
    new Map(manifestRows(aircraft).map((row) => [row.id, row])),
);

/** Whether a switch has taken the thing off. */
const isOff = (loaded: Aircraft, { id, group }: ManifestRow): boolean => {
  if (group === 'structure') return id !== BARE_AIRFRAME_ID && !structureById(loaded, id);
  return (group === 'part' || group === 'tank') && !itemById(loaded, id);
};

interface RowProps {
  readonly row: ManifestRow;
  readonly isFirst: boolean;
  readonly onOpenCard: () => void;
}

/** One thing aboard. The selected one opens its actions below. */
export const Row = memo(function Row({ row, isFirst, onOpenCard }: RowProps) {
  const bench = useBench();
  const say = useReadings();
  const { id, name, role, locked, typical, counted } = row;
  const selected = useView((view) => view.selectedId === id);
  const hidden = useView((view) => view.hiddenIds.includes(id));
  const off = useBalance(({ loaded }) => isOff(loaded, row));
  const nothingSelected = useView((view) => view.selectedId === null);
  return (
    <>
      <tr
        data-item={id}
        className="row"
        data-selected={selected || undefined}
        data-uncounted={!counted || off || undefined}
        onClick={() => bench.view.setState({ selectedId: id })}
        onDoubleClick={onOpenCard}
        onPointerEnter={() => bench.view.setState({ hoveredId: id })}
        onPointerLeave={() => bench.view.setState({ hoveredId: null })}
      >
        <th scope="row">
          <button
            type="button"
            aria-pressed={selected}
            tabIndex={selected || (nothingSelected && isFirst) ? 0 : -1}
            title={name}
          >
            <RoleMark of={role} />
            <span className="row-name">{name}</span>
            {typical && (
              <span className="typical" title="Typical, weigh yours">
                ≈<span className="unseen">typical, weigh yours</span>
              </span>
            )}
            {locked && <Icon name="lock" />}
            {hidden && <Icon name="hidden" />}
            {off && <span className="typical">off</span>}
            <RowFit id={id} />
          </button>
        </th>
        <td className="figure">
          <Live
            read={({ document, balance }) => {
              const now = rowsNow(document.current()).get(id);
              const liquid = balance.get().liquids.find(({ tankId }) => tankId === id);
              return now ? say.massFigure(now.massG + (liquid?.mass.massG ?? 0)) : '';
            }}
          />
        </td>
        <td className="figure">
          <Live
            read={({ document }) => {
              const at = rowsNow(document.current()).get(id)?.cgMm?.[0];
              return at === undefined ? '–' : say.stationFigure(at);
            }}
          />
          <span className="moment" aria-hidden="true">
            <span data-moment={id} />
          </span>
        </td>
      </tr>
      {selected && <RowActions row={row} />}
    </>
  );
});
