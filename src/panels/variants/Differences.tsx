import { useState } from 'react';
import { asShared, putBack, removeVariant, renameVariant } from '../../model/document/variantEdits';
import { chosenVariant } from '../../model/document/variants';
import { type VariantDifference, variantDifferences } from '../../model/words/variantWords';
import { useCommitted } from '../../store/react';
import { Refusal } from '../fields/EditButton';
import { useEntry } from '../fields/useEntry';
import { useReadings } from '../readings';
import { useVariantEdit } from './useVariantEdit';

/** What is otherwise about the variant on the bench, each with the way back; its name, and the way out. */
export function Differences() {
  const say = useReadings();
  const aircraft = useCommitted((committed) => committed);
  const chosen = chosenVariant(aircraft);
  if (!chosen) return null;
  const list = variantDifferences(aircraft, say);
  return (
    <section className="variants-differs" aria-label="The variant on the bench">
      <h3>{chosen.name}, on the bench now</h3>
      {list.length === 0 ? (
        <p className="hint">It is as all share it. Move, weigh, add or take out something on the bench.</p>
      ) : (
        <ul>
          {list.map((difference) => (
            <Difference key={difference.id} {...difference} />
          ))}
        </ul>
      )}
      <NameAndEnd key={chosen.id} id={chosen.id} name={chosen.name} />
    </section>
  );
}

function Difference({ id, name, words, kind }: VariantDifference) {
  const edit = useVariantEdit();
  const [fault, setFault] = useState<string | null>(null);
  const [label, step, back] =
    kind === 'left-out'
      ? (['Put back', `Put ${name} back`, putBack] as const)
      : (['As all share it', `${name} as all share it`, asShared] as const);
  return (
    <li>
      <strong>{name}</strong>
      <span>{words}</span>
      <button
        type="button"
        className="link"
        aria-label={`${label}: ${name}`}
        onClick={() => setFault(edit(step, (aircraft) => back(aircraft, id)))}
      >
        {label}
      </button>
      <Refusal fault={fault} />
    </li>
  );
}

function NameAndEnd({ id, name }: { readonly id: string; readonly name: string }) {
  const edit = useVariantEdit();
  const entry = useEntry(name, (text) => {
    const plain = text.trim();
    if (plain === '') return 'It needs a name.';
    return edit(`Rename the variant ${name}`, (aircraft) => renameVariant(aircraft, id, plain));
  });
  return (
    <div className="variants-end">
      <label>
        Its name
        <input type="text" autoComplete="off" {...entry.input} />
      </label>
      <button
        type="button"
        className="button"
        onClick={() => edit(`Remove the variant ${name}`, (aircraft) => removeVariant(aircraft, id))}
      >
        Remove this variant
      </button>
      <Refusal fault={entry.fault} />
    </div>
  );
}
