import { later } from '../later';

// It is looked at now and then, and the first load is short of room.
const EstimateFigures = later(async () => (await import('./EstimateFigures')).default, {
  meanwhile: <p className="hint">Fetching the estimate…</p>,
});

/** The estimate's section of the card. */
export function EstimatePlace() {
  return (
    <section>
      <EstimateFigures />
    </section>
  );
}
