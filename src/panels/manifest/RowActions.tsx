import { useRef } from 'react';
import { BARE_AIRFRAME_ID } from '../../model/airframe/bareAirframe';
import { removeItem } from '../../model/document/edit';
import { twinOf } from '../../model/document/twins';
import type { ManifestRow } from '../../model/words/manifestRows';
import { useBench, useCommitted, useView } from '../../store/react';
import { toggleHidden } from '../../store/viewStore';
import { useEdit } from '../fields/useEdit';
import { Icon, type IconName } from '../icons';
import { type Added, duplicate, mirrored, toggleLock } from './actions';
import type { OwnOrder } from './useOwnOrder';

/** What can be done to anything aboard, by button or by key. */
export function useActions() {
  const bench = useBench();
  const edit = useEdit();
  /** A refusal is told as a notice, as a key may have been pressed with no button to say it beside. */
  const tell = (step: string, fault: string | null) => {
    if (fault === null) bench.notice.drop('edit');
    else bench.notice.tell({ about: 'edit', tone: 'bad', text: `${step}: ${fault}` });
  };
  const add = (step: string, make: (aircraft: Parameters<typeof duplicate>[0]) => Added | null) => {
    const added = make(bench.document.api.getState().committed);
    const fault = added ? edit(step, () => added.aircraft) : 'There is nothing to make another of.';
    tell(step, fault);
    if (added && fault === null) bench.view.setState({ selectedId: added.id });
  };
  return {
    hide: (id: string) => toggleHidden(bench.view, id),
    lock: (id: string, name: string) => {
      const step = `Lock or unlock ${name}`;
      tell(
        step,
        edit(step, (aircraft) => toggleLock(aircraft, id)),
      );
    },
    duplicate: (id: string, name: string) => add(`Duplicate ${name}`, (aircraft) => duplicate(aircraft, id)),
    mirror: (id: string, name: string) => add(`Mirror ${name}`, (aircraft) => mirrored(aircraft, id)),
    remove: (id: string, name: string) => {
      const step = `Take out ${name}`;
      const twin = twinOf(bench.document.api.getState().committed, id);
      const fault = edit(step, (aircraft) => removeItem(aircraft, id));
      tell(step, fault);
      if (fault === null && twin) {
        const text = `${name} is out. ${twin.name} stays where it is, in no pair any more.`;
        bench.notice.tell({ about: 'edit', tone: 'note', text });
      }
      if (fault === null) bench.view.setState({ selectedId: null });
      return fault === null;
    },
  };
}

/** The buttons under the selected row. */
export function RowActions({
  row: { id, name, group, locked },
  ownOrder,
}: {
  readonly row: ManifestRow;
  readonly ownOrder: OwnOrder;
}) {
  const bench = useBench();
  const act = useActions();
  const offCentre = useCommitted(({ parts, tanks }) =>
    [...parts, ...tanks].some(
      (item) => item.id === id && item.positionMm[1] !== 0 && item.twinId === undefined,
    ),
  );
  const hidden = useView(({ hiddenIds }) => hiddenIds.includes(id));
  const cell = useRef<HTMLTableCellElement>(null);
  if (id === BARE_AIRFRAME_ID) return null;
  /** The row that follows takes selection and focus; without one, the row before. */
  const remove = () => {
    const table = cell.current?.closest('table');
    const rows = [...(table?.querySelectorAll<HTMLElement>('tr[data-item]') ?? [])];
    const at = rows.findIndex(({ dataset }) => dataset.item === id);
    const next = (rows[at + 1] ?? rows[at - 1])?.dataset.item;
    if (!act.remove(id, name)) return;
    if (next !== undefined) bench.view.setState({ selectedId: next });
    queueMicrotask(() =>
      (next === undefined
        ? document.querySelector<HTMLElement>('.manifest > footer button')
        : table?.querySelector<HTMLElement>(`[data-item="${CSS.escape(next)}"] button`)
      )?.focus(),
    );
  };
  const stands = group === 'part' || group === 'tank';
  return (
    <tr className="row-actions">
      <td colSpan={3} ref={cell}>
        {stands && (
          <Action
            icon={locked ? 'lock' : 'unlocked'}
            label={locked ? `Unlock ${name}` : `Lock ${name}`}
            pressed={locked}
            onPick={() => act.lock(id, name)}
          />
        )}
        <Action
          icon={hidden ? 'hidden' : 'seen'}
          label={hidden ? `Show ${name}` : `Hide ${name}; it still weighs`}
          pressed={hidden}
          onPick={() => act.hide(id)}
        />
        {group !== 'lead' && (
          <Action icon="copy" label={`Duplicate ${name}`} onPick={() => act.duplicate(id, name)} />
        )}
        {stands && (
          <Action
            icon="mirror"
            label={`Mirror ${name} to the other side`}
            disabled={!offCentre}
            onPick={() => act.mirror(id, name)}
          />
        )}
        <Action
          icon="up"
          label={`Put ${name} higher in your own order`}
          onPick={() => ownOrder.step(id, -1)}
        />
        <Action
          icon="down"
          label={`Put ${name} lower in your own order`}
          onPick={() => ownOrder.step(id, 1)}
        />
        <Action icon="bin" label={`Take out ${name}`} onPick={remove} />
      </td>
    </tr>
  );
}

interface ActionProps {
  readonly icon: IconName;
  readonly label: string;
  readonly pressed?: boolean;
  readonly disabled?: boolean;
  readonly onPick: () => void;
}

function Action({ icon, label, pressed, disabled = false, onPick }: ActionProps) {
  return (
    <button
      type="button"
      className="button bare"
      aria-label={label}
      title={label}
      aria-pressed={pressed}
      disabled={disabled}
      onClick={onPick}
    >
      <Icon name={icon} />
    </button>
  );
}
