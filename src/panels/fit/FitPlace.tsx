import { later } from '../later';

// Nothing is selected at the start, and the first load is short of room.
const FitSection = later(
  () => import('./FitSection'),
  (module) => module.default,
  { place: 'The check of fit', meanwhile: <p className="hint">Fetching the distances…</p> },
);

/** The section of the card that says whether the selected part or tank fits. */
export function FitPlace({ id }: { readonly id: string }) {
  return (
    <section className="fit" data-testid="fit">
      <h3>Fit</h3>
      <FitSection id={id} />
    </section>
  );
}
