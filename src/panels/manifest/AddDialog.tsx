import './shelf.css';
import { useContext, useState } from 'react';
import { type ShelfPart, shelf } from '../../model/airframe/shelf';
import { madeByClass } from '../../model/airframe/shelfMakers';
import { itemById } from '../../model/document/edit';
import { roles } from '../../model/document/schema/aircraft';
import { setDown } from '../../model/fit/setDown';
import { useBench } from '../../store/react';
import { Refusal } from '../fields/EditButton';
import { useEdit } from '../fields/useEdit';
import { FilesContext } from '../filesContext';
import { Icon, RoleMark } from '../icons';
import { later } from '../later';
import { Modal } from '../Modal';
import { useReadings } from '../readings';
import { roleLooks } from '../roleLooks';
import type { Added } from './actions';
import { addFromShelf, addThing, newThings } from './newThings';
import { OwnShelf } from './OwnShelf';
import { answering, ShelfMaker } from './ShelfMaker';
import { sizeWords } from './sizeWords';

const TableDialog = later(
  () => import('../partsTable/TableDialog'),
  (module) => module.TableDialog,
  { place: 'Parts from a table' },
);

interface AddDialogProps {
  readonly onClose: () => void;
  readonly onAdded: () => void;
}

/** The shelf of typical parts, and what can be built from its dimensions. */
export function AddDialog({ onClose, onAdded }: AddDialogProps) {
  const bench = useBench();
  const say = useReadings();
  const edit = useEdit();
  const files = useContext(FilesContext);
  const [words, setWords] = useState('');
  const [fault, setFault] = useState<string | null>(null);
  const [fromTable, setFromTable] = useState(false);
  const wanted = words.toLowerCase().split(/\s+/).filter(Boolean);
  const fits = (text: string) => wanted.every((word) => text.toLowerCase().includes(word));
  const grid = bench.document.current().gridMm;
  const atMm = Math.round((bench.balance.get().cgMm?.[0] ?? 200) / grid) * grid;
  const add = (name: string, make: () => Added) => {
    const added = make();
    const isItem = itemById(added.aircraft, added.id) !== undefined;
    const set = isItem ? setDown(added.aircraft, added.id, atMm) : { aircraft: added.aircraft, free: true };
    const refused = edit(`Add ${name}`, () => set.aircraft);
    setFault(refused);
    if (refused !== null) return;
    if (set.free) bench.notice.drop('edit');
    else bench.notice.tell({ about: 'edit', tone: 'note', text: noPlaceWords(name, say.station(atMm)) });
    bench.view.setState({ selectedId: added.id });
    onClose();
    onAdded();
  };
  const openMesh = async () => {
    await files?.openMesh();
    if (!bench.mesh.get()) return;
    onClose();
    onAdded();
  };
  const mesh = fits('own mesh file stl obj gltf glb hull part tank 3d model');
  const committed = () => bench.document.api.getState().committed;
  const built = newThings.filter(({ name, says }) => fits(`${name} ${says} airframe structure`));
  const groups = roles
    .map((role) => ({
      role,
      parts: shelf.filter(
        (part) => part.role === role && !madeByClass(part.name) && fits(`${part.name} ${role}`),
      ),
    }))
    .filter(({ parts }) => parts.length > 0);
  const addPart = (part: ShelfPart) => add(part.name, () => addFromShelf(committed(), part, [atMm, 0, 0]));
  if (fromTable) return <TableDialog onClose={onClose} onAdded={onAdded} />;
  return (
    <Modal title="Add a part" onClose={onClose} wide>
      <label className="filter shelf-filter">
        <Icon name="search" />
        <span className="unseen">Search the shelf</span>
        <input
          // A dialog gives the focus to what is marked so when it opens.
          ref={(field) => field?.setAttribute('autofocus', '')}
          type="search"
          placeholder="Search: servo, pack, wing…"
          value={words}
          onChange={(event) => setWords(event.target.value)}
        />
      </label>
      <p className="shelf-note">
        Masses on the shelf are typical, weigh yours. It is set down in the first free place near station{' '}
        {say.station(atMm)}.{' '}
        <button type="button" className="link" onClick={() => setFromTable(true)}>
          A whole list from a table
        </button>
      </p>
      <Refusal fault={fault} />
      <ShelfMaker fits={wanted.length > 0 ? fits : null} onAdd={addPart} />
      <OwnShelf fits={fits} onAdd={addPart} />
      {groups.map(({ role, parts }) => (
        <section key={role} className="shelf-group">
          <h3>
            <RoleMark of={role} /> {roleLooks[role].label}
          </h3>
          <ul>
            {parts.map((part) => (
              <li key={part.name}>
                <button type="button" onClick={() => addPart(part)}>
                  <span>{part.name}</span>
                  <span className="figure">{sizeWords(part, say.length)}</span>
                  <span className="figure">≈ {say.mass(part.massG)}</span>
                </button>
              </li>
            ))}
          </ul>
        </section>
      ))}
      {(built.length > 0 || mesh) && (
        <section className="shelf-group">
          <h3>
            <RoleMark of="airframe" /> airframe and tanks, from dimensions
          </h3>
          <ul>
            {built.map(({ kind, name, says }) => (
              <li key={kind}>
                <button type="button" onClick={() => add(name, () => addThing(committed(), kind, atMm))}>
                  <span>{name}</span>
                  <span className="says">{says}</span>
                </button>
              </li>
            ))}
            {mesh && (
              <li>
                <button type="button" onClick={() => void openMesh()}>
                  <span>From a mesh file…</span>
                  <span className="says">A closed STL, OBJ or glTF as hull, part or tank</span>
                </button>
              </li>
            )}
          </ul>
        </section>
      )}
      {!mesh && groups.length + built.length + answering(fits).length === 0 && (
        <p>Nothing on the shelf has these words.</p>
      )}
    </Modal>
  );
}

const noPlaceWords = (name: string, station: string) =>
  `No free place was found for the ${name}: it stands at station ${station}, where it does not fit.`;
