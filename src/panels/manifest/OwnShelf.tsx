import { useContext, useState } from 'react';
import type { ShelfPart } from '../../model/airframe/shelf';
import { Refusal } from '../fields/EditButton';
import { FilesContext } from '../filesContext';
import { Icon, RoleMark } from '../icons';
import { useReadings } from '../readings';
import { sizeWords } from './sizeWords';

interface OwnShelfProps {
  /** Whether a thing answers to what is searched for. */
  readonly fits: (text: string) => boolean;
  readonly onAdd: (part: ShelfPart) => void;
}

/** What a person has put on the shelf; each can be taken off again. Nothing while there is nothing. */
export function OwnShelf({ fits, onAdd }: OwnShelfProps) {
  const files = useContext(FilesContext);
  const say = useReadings();
  const [kept, setKept] = useState(() => files?.shelf.read() ?? { parts: [], fault: null });
  const [fault, setFault] = useState<string | null>(kept.fault);
  const parts = kept.parts.filter(({ name, role }) => fits(`${name} ${role} own`));
  if (!files || (parts.length === 0 && fault === null)) return null;
  const takeOff = (name: string) => {
    setFault(files.shelf.remove(name));
    setKept(files.shelf.read());
  };
  return (
    <section className="shelf-group" data-testid="own-shelf">
      <h3>Your own, kept in this browser</h3>
      <Refusal fault={fault} />
      <ul>
        {parts.map((part) => (
          <li key={part.name} className="shelf-kept">
            <button type="button" onClick={() => onAdd(part)}>
              <span>
                <RoleMark of={part.role} /> {part.name}
              </span>
              <span className="figure">{sizeWords(part, say.length)}</span>
              <span className="figure">{say.mass(part.massG)}</span>
            </button>
            <button
              type="button"
              className="button bare"
              aria-label={`Take ${part.name} off the shelf`}
              onClick={() => takeOff(part.name)}
            >
              <Icon name="cross" />
            </button>
          </li>
        ))}
      </ul>
    </section>
  );
}
