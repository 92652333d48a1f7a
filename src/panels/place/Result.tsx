import { useState } from 'react';
import type { Arrangement } from '../../engine/place/types';
import { ballastG } from '../../model/words/verdict';
import { later } from '../later';
import { useReadings } from '../readings';
import { Aims } from './Aims';
import { Moves } from './Moves';
import { Proposal } from './Proposal';
import { Reasons } from './Reasons';
import { type Outcome, useOutcome } from './useOutcome';
import { type Search, startOf } from './useSearch';

const Choices = later(
  () => import('./Choices'),
  (module) => module.Choices,
  { place: 'The list of choices' },
);

interface ResultProps {
  readonly search: Extract<Search, { phase: 'done' }>;
  readonly stale: boolean;
  readonly onPutAway: () => void;
  /** Searches the aircraft as it is now. */
  readonly onAgain: () => void;
  readonly onRelaxed: (partIds: readonly string[]) => void;
}

/** What was found and what is proved, what it would do, and the other choices. */
export function Result({ search, stale, onPutAway, onAgain, onRelaxed }: ResultProps) {
  const { asked, found, reasons } = search;
  const [pointed, setPointed] = useState<Arrangement | null>(null);
  const [choosing, setChoosing] = useState(false);
  const [shown, setShown] = useState<number | null>(null);
  const [accepted, setAccepted] = useState<Outcome | null>(null);
  const best = found?.answer.best ?? null;
  const outcome = useOutcome(asked, found, accepted ? null : (pointed ?? best), shown);
  if (accepted) return <Plan outcome={accepted} onPutAway={onPutAway} />;
  const point = (arrangement: Arrangement | null) => {
    setShown(null);
    setPointed(arrangement);
  };
  return (
    <div className="result">
      <Findings search={search} />
      {stale && (
        <div className="arrange-stale" role="status">
          <p>This is for the aircraft as it was when the search was started.</p>
          <button type="button" className="button" onClick={onAgain}>
            Search again
          </button>
        </div>
      )}
      {!best && found && !search.cancelled && asked.request.probability === null && (
        <Reasons asked={asked} answer={found.answer} reasons={reasons} onRelaxed={onRelaxed} />
      )}
      {outcome ? (
        <Proposal
          outcome={outcome}
          stale={stale}
          shown={shown}
          onShow={setShown}
          onAccepted={setAccepted}
          onPutAway={onPutAway}
          beside={
            best &&
            !choosing && (
              <button type="button" className="button" onClick={() => setChoosing(true)}>
                Show choices
              </button>
            )
          }
        >
          {best && found && choosing && (
            <Choices
              ask={{
                aircraft: startOf(asked, found),
                settings: asked.request.settings,
                problem: found.problem,
                offered: best,
              }}
              pointed={pointed}
              stale={stale}
              onPoint={point}
            />
          )}
        </Proposal>
      ) : (
        <div className="arrange-buttons">
          <button type="button" className="button" onClick={onPutAway}>
            Put away
          </button>
        </div>
      )}
    </div>
  );
}

/** The headline, what is proved of each aim, and what had to be left aside. */
function Findings({ search }: { readonly search: Extract<Search, { phase: 'done' }> }) {
  const say = useReadings();
  const { asked, found, cancelled } = search;
  const answer = found?.answer ?? null;
  const best = answer?.best ?? null;
  const wantedMm = asked.request.settings.wantedMarginMm ?? 0;
  const nowG = ballastG(asked.committed);
  const variant = found && found.variant > 0 ? asked.request.variants[found.variant]!.name : null;
  return (
    <>
      <p className="arrange-sentence" role="status" data-proved={answer?.proved === true && !cancelled}>
        {headline()}
      </p>
      {variant && <p>It takes {variant}.</p>}
      {best && !cancelled && <Aims answer={answer!} />}
      {best && wantedMm > 0 && answer!.keptMarginMm === 0 && (
        <p>
          No arrangement keeps {say.lengthFine(wantedMm)} inside the limits; this one only keeps the limits.
        </p>
      )}
      {found?.price && <p>{found.price}</p>}
      {best && nowG > 0 && (asked.request.settings.emptied ?? []).length > 0 && (
        <p>
          There {nowG === best.ballastG ? 'is as much' : `are ${say.mass(nowG)}`} of ballast aboard now
          {best.ballastG < nowG ? `: ${say.mass(nowG - best.ballastG)} less to carry.` : '.'}
        </p>
      )}
      {found && found.notUsed.length > 0 && (
        <details className="arrange-more">
          <summary>What could not be used</summary>
          <ul className="arrange-notes">
            {found.notUsed.map((note) => (
              <li key={note}>{note}</li>
            ))}
          </ul>
        </details>
      )}
      {found && found.notes.length > 0 && (
        <details className="arrange-more">
          <summary>What is not as it was asked</summary>
          <ul className="arrange-notes">
            {found.notes.map((note) => (
              <li key={note}>{note}</li>
            ))}
          </ul>
        </details>
      )}
    </>
  );

  function headline(): string {
    if (cancelled && !best) return 'Cancelled before anything was found.';
    if (cancelled) return `Cancelled. ${answer?.sentence ?? ''}`;
    if (!answer) return 'Nothing was found.';
    if (found?.price && !best) return found.price;
    if (!best && found!.notUsed.length > 0) return 'Nothing that was found in the time given can be built.';
    return answer.proved && best && best.ballastG > 0 ? `${answer.sentence} Proved.` : answer.sentence;
  }
}

interface PlanProps {
  readonly outcome: Outcome;
  readonly onPutAway: () => void;
}

/** What has been accepted, to be ticked off in the workshop. */
function Plan({ outcome, onPutAway }: PlanProps) {
  return (
    <div className="result">
      <p className="arrange-sentence" role="status">
        Accepted. This is what to do, in this order.
      </p>
      <div className="arrange-buttons held">
        <button type="button" className="button" onClick={onPutAway}>
          Put away
        </button>
      </div>
      <Moves rows={outcome.rows} ticks />
    </div>
  );
}
