import './variants.css';
import { useState } from 'react';
import { addVariant } from '../../model/document/variantEdits';
import { variantsOf } from '../../model/document/variants';
import { useBench, useCommitted, useSteadyList } from '../../store/react';
import { Refusal } from '../fields/EditButton';
import { Differences } from './Differences';
import { useVariantEdit } from './useVariantEdit';
import { VariantTable } from './VariantTable';

/** The variants of the aircraft side by side, and what is otherwise about the one on the bench. */
export function Variants() {
  const { view } = useBench();
  const count = useCommitted(useSteadyList(variantsOf)).length;
  const name = useCommitted((aircraft) => aircraft.name);
  return (
    <main className="place variants" data-testid="variants-place">
      <header className="variants-head">
        <h2>Variants of {name}</h2>
        <button type="button" className="button" onClick={() => view.setState({ place: 'bench' })}>
          Back to the bench
        </button>
      </header>
      {count === 0 ? (
        <p className="variants-intro">
          One aircraft in several outfits: pack ahead or behind, wheels or skis, day or night. They share what
          they share; where things stand, what they weigh and what is aboard may differ. A new variant begins
          as the aircraft is now.
        </p>
      ) : (
        <VariantTable />
      )}
      <AddVariant count={count} />
      {count > 0 && <Differences />}
    </main>
  );
}

function AddVariant({ count }: { readonly count: number }) {
  const edit = useVariantEdit();
  const [name, setName] = useState('');
  const [fault, setFault] = useState<string | null>(null);
  const add = () => {
    const plain = name.trim() || `Variant ${Math.max(2, count + 1)}`;
    const refusal = edit(`Add the variant ${plain}`, (aircraft) => addVariant(aircraft, plain));
    setFault(refusal);
    if (refusal === null) setName('');
  };
  return (
    <form
      className="variants-add"
      onSubmit={(event) => {
        event.preventDefault();
        add();
      }}
    >
      <label>
        Name of a new variant
        <input
          type="text"
          autoComplete="off"
          value={name}
          onChange={(event) => setName(event.target.value)}
        />
      </label>
      <button type="submit" className={count === 0 ? 'button strong' : 'button'}>
        Add a variant
      </button>
      <Refusal fault={fault} />
    </form>
  );
}
