import { alignCentred, alignFaces, distribute, type Face } from '../../model/airframe/align';
import { itemById } from '../../model/document/edit';
import type { Aircraft } from '../../model/document/types';
import { useBench, useCommitted, useSteadyList, useView } from '../../store/react';
import { toggleChosen } from '../../store/viewStore';
import { EditButton } from '../fields/EditButton';
import { Icon, RoleMark } from '../icons';
import { useReadings } from '../readings';
import './groupCard.css';

const aligned: readonly { readonly face: Face; readonly label: string }[] = [
  { face: 'front', label: 'Front faces' },
  { face: 'middle', label: 'Middles' },
  { face: 'rear', label: 'Rear faces' },
];

/** What is chosen and can be moved, in the order in which it was chosen. */
const itemsOf = (ids: readonly string[]) => (aircraft: Aircraft) =>
  ids.flatMap((id) => itemById(aircraft, id) ?? []);

/** Several things chosen together: lined up by the last of them, or spaced evenly, each in one step. */
export function GroupCard({ onClose }: { readonly onClose: () => void }) {
  const bench = useBench();
  const say = useReadings();
  const ids = useView((view) => view.groupIds);
  const items = useCommitted(useSteadyList(itemsOf(ids)));
  const last = items.at(-1);
  const itemIds = items.map(({ id }) => id);
  const locked = items.filter((item) => item.locked).map(({ name }) => name);
  return (
    <div className="card group-card">
      <header>
        <h2>{ids.length} chosen</h2>
        <button type="button" className="button bare" aria-label="Choose none" onClick={onClose}>
          <Icon name="cross" />
        </button>
      </header>
      <section>
        <ul>
          {items.map((item) => (
            <li key={item.id}>
              <RoleMark of={'role' in item ? item.role : 'fuel'} />
              <span>{item.name}</span>
              <span className="figure">{say.station(item.positionMm[0])}</span>
              <button
                type="button"
                className="button bare"
                aria-label={`Leave out ${item.name}`}
                onClick={() => toggleChosen(bench.view, item.id)}
              >
                <Icon name="cross" />
              </button>
            </li>
          ))}
        </ul>
        {items.length > 1 && (
          <p className="hint">Drag any of them, or press the arrow keys: they move together.</p>
        )}
        {items.length < ids.length && <p className="hint">Only parts and tanks are moved.</p>}
      </section>
      {last && items.length > 1 && (
        <>
          <section>
            <h3>Line up with {last.name}</h3>
            <div className="group-buttons">
              {aligned.map(({ face, label }) => (
                <EditButton
                  key={face}
                  step={`Line up ${label.toLowerCase()}`}
                  edit={(aircraft) => alignFaces(aircraft, itemIds, last.id, face)}
                >
                  {label}
                </EditButton>
              ))}
              <EditButton step="Put on the centre line" edit={(aircraft) => alignCentred(aircraft, itemIds)}>
                On the centre line
              </EditButton>
            </div>
          </section>
          <section>
            <h3>Space evenly</h3>
            <div className="group-buttons">
              <EditButton step="Space evenly" edit={(aircraft) => distribute(aircraft, itemIds)}>
                Same gaps, front to rear
              </EditButton>
            </div>
            <p className="hint">The foremost and the rearmost stay.</p>
          </section>
        </>
      )}
      {locked.length > 0 && <p className="hint group-locked">Locked, so it stays: {locked.join(', ')}.</p>}
    </div>
  );
}
