import { lazy, Suspense } from 'react';

// The first load is short of room.
const BandAndMargin = lazy(() => import('./BandAndMargin'));

/** Where the band and the margin are stated. */
export function BandPlace() {
  return (
    <Suspense fallback={<p className="hint">Fetching the limits…</p>}>
      <BandAndMargin />
    </Suspense>
  );
}
