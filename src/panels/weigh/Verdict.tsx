import type { Culprit } from '../../engine/weigh/rankCulprits';
import { correctionOf, unaccountedEntry } from '../../model/weigh/correction';
import type { HeldAgainst } from '../../model/weigh/heldAgainst';
import { readingOf } from '../../model/weigh/weighIns';
import {
  agreementWords,
  culpritWords,
  quantityFigure,
  quantityName,
  unaccountedWords,
} from '../../model/words/weighWords';
import { useCommitted } from '../../store/react';
import { useReadings } from '../readings';
import { Apply } from './Apply';
import { Differences } from './Differences';
import { FiguresTable } from './FiguresTable';
import { Moved } from './Moved';
import { SwungVerdict } from './SwungVerdict';
import { useHeld } from './useHeld';

/** What was measured against the list: one picture, one sentence, and what would explain it. */
export function Verdict({ id }: { readonly id: string }) {
  const swung = useCommitted((aircraft) => readingOf(aircraft, id, 'swing') !== null);
  return swung ? <SwungVerdict id={id} /> : <CgVerdict id={id} />;
}

function CgVerdict({ id }: { readonly id: string }) {
  const held = useHeld(id);
  const say = useReadings();
  if (!held) return null;
  return (
    <section className="weigh-verdict" aria-label="Measured against listed" data-testid="weigh-verdict">
      {held.ok ? (
        <>
          <p className="weigh-sentence" data-agrees={held.reconciled.agrees} role="status">
            {agreementWords(held, say)}
          </p>
          <Differences
            rows={held.reconciled.differences.map((each) => ({ ...each, name: quantityName(each) }))}
          />
          {held.weighed.withoutLiquid && held.thought.balance.liquids.length > 0 && (
            <p className="hint">
              Both without the liquid aboard: it was taken off where it lay at each tilt.
            </p>
          )}
          <FiguresTable
            by={held.by}
            rows={held.reconciled.differences.map((each) => ({
              name: quantityName(each),
              listed: quantityFigure(each, each.predicted, say),
              measured: quantityFigure(each, each.measured, say),
            }))}
          />
          {!held.reconciled.agrees && <Explained held={held} id={id} />}
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

const measuredPlace = ({ weighed: { buttlineMm, waterlineMm } }: HeldAgainst) => ({
  buttline: buttlineMm !== null,
  waterline: waterlineMm !== null,
});

/** So many culprits are named. */
const MOST_NAMED = 4;

function Explained({ held, id }: { readonly held: HeldAgainst; readonly id: string }) {
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
            weighInId={id}
          />
        ))}
      </ol>
      {unaccounted && (
        <div className="unaccounted">
          <p>{unaccountedWords(unaccounted, say)}</p>
          {entry && (
            <Apply
              correction={entry}
              weighInId={id}
              placeKnown={{
                buttline: unaccounted.placeMm[1] !== null,
                waterline: unaccounted.placeMm[2] !== null,
              }}
            />
          )}
        </div>
      )}
    </>
  );
}

interface SuspectedProps {
  readonly culprit: Culprit;
  readonly held: HeldAgainst;
  readonly weighInId: string;
}

function Suspected({ culprit, held, weighInId }: SuspectedProps) {
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
        <Apply correction={correction} weighInId={weighInId} placeKnown={measuredPlace(held)} />
      ) : (
        <p className="hint">
          {held.thought.dryIds.has(culprit.id)
            ? 'Weigh it and enter it on its card: nothing is changed from here.'
            : 'Was there as much aboard as this weigh-in says? Set it right under “How the aircraft was”.'}
        </p>
      )}
    </li>
  );
}
