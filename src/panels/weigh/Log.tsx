import type { Aircraft, WeighIn } from '../../model/document/types';
import { heldAgainst } from '../../model/weigh/heldAgainst';
import { swungAgainst } from '../../model/weigh/swung';
import { weighInsOf } from '../../model/weigh/weighIns';
import { swungFact } from '../../model/words/swingWords';
import { agreementFact, dayWords } from '../../model/words/weighWords';
import { useCommitted } from '../../store/react';
import { useReadings } from '../readings';
import { Start } from './Start';

interface LogProps {
  readonly chosen: string | null;
  readonly onChoose: (id: string) => void;
}

/** Every weigh-in of this aircraft, the last on top. */
export function Log({ chosen, onChoose }: LogProps) {
  const log = useCommitted(weighInsOf);
  return (
    <section className="weigh-log" aria-label="Log">
      <Start open={log.length === 0} onStart={onChoose} />
      {log.length > 0 && (
        <ul>
          {[...log]
            .reverse()
            .sort((a, b) => b.date.localeCompare(a.date))
            .map((entry) => (
              <li key={entry.id}>
                <button type="button" aria-pressed={entry.id === chosen} onClick={() => onChoose(entry.id)}>
                  <strong>{dayWords(entry.date, true)}</strong>
                  <span>{entry.tool}</span>
                  <Agreement entry={entry} />
                </button>
              </li>
            ))}
        </ul>
      )}
    </section>
  );
}

function Agreement({ entry }: { readonly entry: WeighIn }) {
  const say = useReadings();
  const aircraft = useCommitted((committed: Aircraft) => committed);
  if (entry.reading.by === 'swing') {
    const swung = swungAgainst(aircraft, entry);
    return swung.ok ? <Fact agrees={swung.agrees}>{swungFact(swung)}</Fact> : <Unfinished />;
  }
  const held = heldAgainst(aircraft, entry);
  return held.ok ? <Fact agrees={held.reconciled.agrees}>{agreementFact(held, say)}</Fact> : <Unfinished />;
}

const Fact = ({ agrees, children }: { readonly agrees: boolean; readonly children: string }) => (
  <span data-agrees={agrees}>{children}</span>
);

const Unfinished = () => <span className="weigh-open">not finished</span>;
