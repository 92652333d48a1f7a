import { useContext, useState } from 'react';
import { offAircraft } from '../../model/airframe/offAircraft';
import { useBench } from '../../store/react';
import { Refusal } from '../fields/EditButton';
import { FilesContext } from '../filesContext';

/** Puts a part as it is on the person's own shelf: what it weighs, measures and is, not where it stands in this aircraft. */
export function KeepOnShelf({ id }: { readonly id: string }) {
  const { document } = useBench();
  const files = useContext(FilesContext);
  const [kept, setKept] = useState<string | null>(null);
  const [fault, setFault] = useState<string | null>(null);
  if (!files) return null;
  const keep = () => {
    const part = document.current().parts.find((each) => each.id === id);
    if (!part) return;
    const refused = files.shelf.keep(offAircraft(part));
    setFault(refused);
    setKept(refused === null ? `${part.name} is on your shelf, under “Add”.` : null);
  };
  return (
    <div className="keep-on-shelf">
      <button type="button" className="button" onClick={keep}>
        Put it on your shelf
      </button>
      {kept && (
        <p className="hint" role="status">
          {kept}
        </p>
      )}
      <Refusal fault={fault} />
    </div>
  );
}
