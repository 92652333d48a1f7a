import { lazy, Suspense } from 'react';

// Nothing is selected at the start, and the first load is short of room.
const FitSection = lazy(() => import('./FitSection'));

/** The section of the card that says whether the selected part or tank fits. */
export function FitPlace({ id }: { readonly id: string }) {
  return (
    <section className="fit" data-testid="fit">
      <h3>Fit</h3>
      <Suspense fallback={<p className="hint">Fetching the distances…</p>}>
        <FitSection id={id} />
      </Suspense>
    </section>
  );
}
