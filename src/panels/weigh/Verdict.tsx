import type { Culprit } from '../../engine/weigh/rankCulprits';
import {
  applyCorrection,
  type Correction,
  correctionOf,
  unaccountedEntry,
} from '../../model/weigh/correction';
import type { HeldAgainst } from '../../model/weigh/heldAgainst';
import {
  agreementWords,
  correctionWords,
  culpritWords,
  quantityFigure,
  quantityName,
  unaccountedWords,
} from '../../model/words/weighWords';
import { useCommitted } from '../../store/react';
import { EditButton } from '../fields/EditButton';
import { useReadings } from '../readings';
import { Differences } from './Differences';
import { Moved } from './Moved';
import { useHeld } from './useHeld';

/** Scales against list: one picture, one sentence, and what would explain it. */
export function Verdict({ id }: { readonly id: string }) {
  const held = useHeld(id);
  const say = useReadings();
  if (!held) return null;
  return (
    <section className="weigh-verdict" aria-label="Scales against list" data-testid="weigh-verdict">
      {held.ok ? (
        <>
          <p className="weigh-sentence" data-agrees={held.reconciled.agrees} role="status">
            {agreementWords(held, say)}
          </p>
          <Differences differences={held.reconciled.differences} />
          <table className="weigh-figures">
            <caption className="unseen">By the list and by the scales</caption>
            <thead>
              <tr>
                <td />
                <th scope="col">By the list</th>
                <th scope="col">By the scales</th>
              </tr>
            </thead>
            <tbody>
              {held.reconciled.differences.map((one) => (
                <tr key={one.quantity}>
                  <th scope="row">{quantityName(one)}</th>
                  <td className="figure">{quantityFigure(one, one.predicted, say)}</td>
                  <td className="figure">{quantityFigure(one, one.measured, say)}</td>
                </tr>
              ))}
            </tbody>
          </table>
          {!held.reconciled.agrees && <Explained held={held} />}
          <Moved held={held} />
        </>
      ) : (
        <p className="weigh-sentence" role="status">
          {held.sentence}
        </p>
      )}
    </section>
  );
}

/** So many culprits are named. */
const MOST_NAMED = 4;

function Explained({ held }: { readonly held: HeldAgainst }) {
  const say = useReadings();
  const { unaccounted } = held;
  const ranking = held.ranking();
  if (!ranking) return null;
  const entry = unaccounted && unaccountedEntry(unaccounted);
  const alike = ranking.alike.length;
  return (
    <>
      <h3>What would explain it</h3>
      {ranking.culprits.length === 0 && (
        <p className="hint">No single slip in the list does. Two at once are not looked for.</p>
      )}
      {alike > 1 && (
        <p className="hint">
          {`The first ${alike} cannot be told apart by this weigh-in: look at those on the aircraft, or weigh it again another way, before you change the list.`}
        </p>
      )}
      <ol className="culprits">
        {ranking.culprits.slice(0, MOST_NAMED).map((culprit) => (
          <Suspected
            key={`${culprit.kind} ${culprit.id} ${culprit.axis} ${culprit.factor}`}
            culprit={culprit}
            held={held}
          />
        ))}
      </ol>
      {unaccounted && (
        <div className="unaccounted">
          <p>{unaccountedWords(unaccounted, say)}</p>
          {entry && <Apply correction={entry} />}
        </div>
      )}
    </>
  );
}

function Suspected({ culprit, held }: { readonly culprit: Culprit; readonly held: HeldAgainst }) {
  const say = useReadings();
  const aircraft = useCommitted((committed) => committed);
  const correction = correctionOf(aircraft, culprit, held.thought);
  return (
    <li>
      <p>{culpritWords(culprit, held.thought, say)}</p>
      <span className="likely figure" title="How likely, of everything that was thought of">
        {`${Math.floor(culprit.probability * 100)} %`}
      </span>
      {correction ? (
        <Apply correction={correction} />
      ) : (
        <p className="hint">Weigh it and enter it on its card: nothing is changed from here.</p>
      )}
    </li>
  );
}

function Apply({ correction }: { readonly correction: Correction }) {
  const say = useReadings();
  const aircraft = useCommitted((committed) => committed);
  const words = correctionWords(aircraft, correction, say);
  return (
    <EditButton step={`${words} (by the scales)`} edit={(now) => applyCorrection(now, correction)}>
      {words}
    </EditButton>
  );
}
