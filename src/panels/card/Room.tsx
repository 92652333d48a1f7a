import { useMemo } from 'react';
import { type Balance, roomFor } from '../../model/balance';
import { itemById, placeItem } from '../../model/edit';
import { aircraftExtent } from '../../model/extent';
import type { Bench } from '../../store/bench';
import { useBench, useCommitted } from '../../store/react';
import { useBenchValue } from '../Live';
import { useReadings } from '../readings';

let kept: {
  readonly balance: Balance;
  readonly id: string;
  readonly room: ReturnType<typeof roomFor>;
} | null = null;

/** The room of now; its figures are asked for one by one. */
function roomOf({ document, balance }: Bench, id: string) {
  const answer = balance.get();
  if (kept?.balance !== answer || kept.id !== id) {
    kept = { balance: answer, id, room: roomFor(document.current(), answer, id) };
  }
  return kept.room;
}

/** The stations that keep every fuel state in the band, the present one among them, and the best. */
export function Room({ id }: { readonly id: string }) {
  const bench = useBench();
  const say = useReadings();
  const aircraft = useCommitted((committed) => committed);
  const { minMm, maxMm } = useMemo(() => aircraftExtent(aircraft), [aircraft]);
  const [noseMm, tailMm] = [minMm[0], maxMm[0]];
  const fromMm = useBenchValue((live) => roomOf(live, id)?.allowed?.fromMm ?? null);
  const toMm = useBenchValue((live) => roomOf(live, id)?.allowed?.toMm ?? null);
  const bestMm = useBenchValue((live) => roomOf(live, id)?.bestMm ?? null);
  const hereMm = useBenchValue(({ document }) => itemById(document.current(), id)?.positionMm[0] ?? 0);
  if (bestMm === null) return null;

  const share = (mm: number) => Math.min(100, Math.max(0, ((mm - noseMm) / (tailMm - noseMm)) * 100));
  const aboard = (mm: number) => mm >= noseMm && mm <= tailMm;
  const nowhere = fromMm === null || toMm === null || toMm < noseMm || fromMm > tailMm;
  const item = itemById(aircraft, id);
  const goMm = Math.round(bestMm);
  const move = () =>
    item &&
    bench.document.commit(
      `Move ${item.name}`,
      placeItem(aircraft, id, [goMm, item.positionMm[1], item.positionMm[2]]),
    );
  return (
    <section className="room">
      <h3>Where may it sit?</h3>
      <div className="room-strip" aria-hidden="true">
        {!nowhere && (
          <span
            className="room-allowed"
            style={{ left: `${share(fromMm)}%`, right: `${100 - share(toMm)}%` }}
          />
        )}
        {aboard(bestMm) && <span className="room-best" style={{ left: `${share(bestMm)}%` }} />}
        <span className="room-here" style={{ left: `${share(hereMm)}%` }} />
      </div>
      <p>{roomWords()}</p>
      {!nowhere && aboard(goMm) && (
        <button
          type="button"
          className="button strong"
          disabled={item?.locked === true || Math.abs(goMm - hereMm) < 0.5}
          onClick={move}
        >
          Move to {say.station(goMm)}
        </button>
      )}
    </section>
  );

  function roomWords(): string {
    if (nowhere || fromMm === null || toMm === null) {
      return 'No station aboard brings every fuel state into the band by moving this alone.';
    }
    const ahead = fromMm <= noseMm;
    const aft = toMm >= tailMm;
    if (ahead && aft) return 'Anywhere aboard keeps every fuel state in the band.';
    if (ahead) return `Anywhere ahead of ${say.station(toMm)} keeps every fuel state in the band.`;
    if (aft) return `Anywhere aft of ${say.station(fromMm)} keeps every fuel state in the band.`;
    return `Anywhere from ${say.station(fromMm)} to ${say.station(toMm)} keeps every fuel state in the band.`;
  }
}
