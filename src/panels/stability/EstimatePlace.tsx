import { later } from '../later';

// It is looked at now and then, and the first load is short of room.
const EstimateFigures = later(
  () => import('./EstimateFigures'),
  (module) => module.default,
  { place: 'The estimate of the neutral point', meanwhile: <p className="hint">Fetching the estimate…</p> },
);

/** The estimate's section of the card. */
export function EstimatePlace() {
  return (
    <section>
      <EstimateFigures />
    </section>
  );
}
