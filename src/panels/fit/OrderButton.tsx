import { useState } from 'react';
import { useCommitted } from '../../store/react';
import { later } from '../later';

const OrderDialog = later(
  () => import('./OrderDialog'),
  (module) => module.default,
  { place: 'The order of fitting' },
);

/** Asks in which order all parts can go in. */
export function OrderButton() {
  const [asking, setAsking] = useState(false);
  const hatches = useCommitted((aircraft) => aircraft.hatches?.length ?? 0);
  if (hatches === 0) return null;
  return (
    <>
      <button type="button" className="button" aria-haspopup="dialog" onClick={() => setAsking(true)}>
        What goes in first
      </button>
      {asking && <OrderDialog onClose={() => setAsking(false)} />}
    </>
  );
}
