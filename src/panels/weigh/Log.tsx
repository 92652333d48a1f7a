import type { Aircraft, WeighIn } from '../../model/document/types';
import { heldAgainst } from '../../model/weigh/heldAgainst';
import { addWeighIn, freshScales, freshStand, weighInsOf } from '../../model/weigh/weighIns';
import { agreementFact, dayWords } from '../../model/words/weighWords';
import { useBench, useCommitted } from '../../store/react';
import { Icon } from '../icons';
import { useReadings } from '../readings';
import { today } from './today';

interface LogProps {
  readonly chosen: string | null;
  readonly onChoose: (id: string) => void;
}

const kinds = {
  scales: { label: 'On scales', tool: 'Scales' },
  stand: { label: 'Balance stand', tool: 'Balance stand' },
} as const;

/** Every weigh-in of this aircraft, the last on top. */
export function Log({ chosen, onChoose }: LogProps) {
  const bench = useBench();
  const log = useCommitted(weighInsOf);
  const start = (by: keyof typeof kinds) => {
    const { fuelFraction, positions } = bench.view.getState();
    const aircraft = bench.document.api.getState().committed;
    const stationMm = Math.round(bench.balance.get().cgMm?.[0] ?? 0);
    const added = addWeighIn(aircraft, {
      date: today(),
      tool: kinds[by].tool,
      fuelPct: Math.round(fuelFraction * 100),
      switches: Object.entries(positions).map(([switchId, positionId]) => ({ switchId, positionId })),
      notes: '',
      reading: by === 'scales' ? freshScales(aircraft) : freshStand(stationMm),
    });
    bench.document.commit(`Start a weigh-in (${kinds[by].label.toLowerCase()})`, added.aircraft);
    onChoose(added.id);
  };
  return (
    <section className="weigh-log" aria-label="Log">
      <div className="weigh-start">
        {(Object.keys(kinds) as (keyof typeof kinds)[]).map((by) => (
          <button key={by} type="button" className="button" onClick={() => start(by)}>
            <Icon name="plus" /> {kinds[by].label}
          </button>
        ))}
      </div>
      {log.length === 0 ? (
        <p className="hint">
          Nothing weighed yet. Put the wheels on scales, or find the balance on a stand: what you read is kept
          with the aircraft and held against the list.
        </p>
      ) : (
        <ul>
          {[...log]
            .sort((a, b) => (a.date < b.date ? 1 : -1))
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
  const held = heldAgainst(aircraft, entry);
  if (!held.ok) return <span className="weigh-open">not finished</span>;
  return <span data-agrees={held.reconciled.agrees}>{agreementFact(held, say)}</span>;
}
