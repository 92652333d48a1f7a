import './choice.css';
import { chooseVariant, type EditScope, type Variant, variantsOf } from '../../model/document/variants';
import type { Bench } from '../../store/bench';
import { useBench, useCommitted, useSteadyList, useView } from '../../store/react';

/** Puts a variant on the bench: one step, which undo takes back. */
export function choose({ document, drag }: Bench, { id, name }: Variant): void {
  drag.cancel();
  document.commitVariants(`Choose ${name}`, chooseVariant(document.api.getState().committed, id));
}

/** The variants of the aircraft, one tap each, and for whom an edit is. Nothing on an aircraft without. */
export function VariantChoice() {
  const bench = useBench();
  const variants = useCommitted(useSteadyList(variantsOf));
  const chosenId = useCommitted((aircraft) => aircraft.variants?.chosenId);
  if (variants.length === 0) return null;
  return (
    <div className="variant-choice" data-testid="variants">
      <fieldset>
        <legend className="unseen">Variant</legend>
        {variants.map((variant) => (
          <button
            key={variant.id}
            type="button"
            aria-pressed={variant.id === chosenId}
            onClick={() => choose(bench, variant)}
          >
            {variant.name}
          </button>
        ))}
      </fieldset>
      <Scope name={variants.find(({ id }) => id === chosenId)?.name ?? ''} />
    </div>
  );
}

/** For whom what is moved, sized, weighed, added or taken out counts. */
function Scope({ name }: { readonly name: string }) {
  const { view } = useBench();
  const scope = useView(({ editScope }) => editScope);
  return (
    <label className="variant-scope" title={SCOPE_WORDS}>
      <span className="unseen">Changes count for</span>
      <select
        value={scope}
        onChange={(event) => view.setState({ editScope: event.target.value as EditScope })}
      >
        <option value="this">Changes for {name} only</option>
        <option value="all">Changes for all variants</option>
      </select>
    </label>
  );
}

const SCOPE_WORDS =
  'Where things stand, their size and mass, and what is aboard may differ between variants. Names, structure, limits and all else are shared: a change of those is always for all.';
