import { useState } from 'react';
import { later } from '../later';

const RoomLists = later(
  () => import('./RoomLists'),
  (module) => module.default,
  { place: 'Bays and hatches', meanwhile: <p className="hint">Fetching the lists…</p> },
);

/** What the aircraft says of room: bays, hatches, leads and rules, fetched when they are opened. */
export function RoomsPlace() {
  const [open, setOpen] = useState(false);
  return (
    <section className="fit" data-testid="rooms">
      <h3>Room, openings and leads</h3>
      <details className="more" onToggle={(event) => setOpen(event.currentTarget.open)}>
        <summary>Bays, hatches, keep-apart, leads, load factors</summary>
        {open && <RoomLists />}
      </details>
    </section>
  );
}
