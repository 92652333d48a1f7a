import { lazy, Suspense } from 'react';

// It is looked at now and then, and the first load is short of room.
const EstimateFigures = lazy(() => import('./EstimateFigures'));

/** The estimate's section of the card. */
export function EstimatePlace() {
  return (
    <section>
      <Suspense fallback={<p className="hint">Fetching the estimate…</p>}>
        <EstimateFigures />
      </Suspense>
    </section>
  );
}
