import { useState } from 'react';
import type { Arrangement } from '../../engine/place/types';
import { ballastG } from '../../model/words/verdict';
import { later } from '../later';
import { useReadings } from '../readings';
import { Proposal } from './Proposal';
import { Reasons } from './Reasons';
import { useOutcome } from './useOutcome';
import type { Search } from './useSearch';

const Choices = later(
  () => import('./Choices'),
  (module) => module.Choices,
);

interface ResultProps {
  readonly search: Extract<Search, { phase: 'done' }>;
  readonly onPutAway: () => void;
  readonly onRelaxed: (partIds: readonly string[]) => void;
}

/** What was found and what is proved, what it would do, and the other choices. */
export function Result({ search, onPutAway, onRelaxed }: ResultProps) {
  const say = useReadings();
  const { asked, answer, price, reasons, cancelled } = search;
  const [pointed, setPointed] = useState<Arrangement | null>(null);
  const [choosing, setChoosing] = useState(false);
  const outcome = useOutcome(asked, pointed ?? answer?.best ?? null);
  const best = answer?.best ?? null;
  const nowG = ballastG(asked.committed);
  return (
    <div className="result">
      <p className="arrange-sentence" role="status" data-proved={answer?.proved === true && !cancelled}>
        {headline()}
      </p>
      {price && <p>{price.sentence}</p>}
      {best && nowG > 0 && asked.start !== asked.committed && (
        <p>
          There {nowG === best.ballastG ? 'is as much' : `are ${say.mass(nowG)}`} of ballast aboard now
          {best.ballastG < nowG ? `: ${say.mass(nowG - best.ballastG)} less to carry.` : '.'}
        </p>
      )}
      {!best && !cancelled && price === null && (
        <Reasons asked={asked} answer={answer} reasons={reasons} onRelaxed={onRelaxed} />
      )}
      {outcome ? (
        <Proposal
          outcome={outcome}
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
          {best && choosing && <Choices asked={asked} pointed={pointed} onPoint={setPointed} />}
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

  function headline(): string {
    if (cancelled && !best) return 'Cancelled before anything was found.';
    if (cancelled) return `Cancelled. ${answer?.sentence ?? ''}`;
    if (!answer) return 'The band is too narrow for that certainty.';
    return answer.proved && best && best.ballastG > 0 ? `${answer.sentence} Proved.` : answer.sentence;
  }
}
