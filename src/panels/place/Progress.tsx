import { useEffect, useState } from 'react';
import { useReadings } from '../readings';
import { Moves } from './Moves';
import { useOutcome } from './useOutcome';
import type { Search } from './useSearch';

interface ProgressProps {
  readonly search: Extract<Search, { phase: 'running' }>;
  /** The aircraft is no longer what is searched. */
  readonly stale: boolean;
  readonly onCancel: () => void;
  /** Searches the aircraft as it is now. */
  readonly onAgain: () => void;
}

/** How often the time is told, ms. */
const TICK_MS = 200;

/** A search under way: the time it has taken, the best so far and what is proved already. */
export function Progress({ search, stale, onCancel, onAgain }: ProgressProps) {
  const say = useReadings();
  const { sinceMs, found, asked } = search;
  const [nowMs, setNowMs] = useState(sinceMs);
  useEffect(() => {
    const timer = setInterval(() => setNowMs(performance.now()), TICK_MS);
    return () => clearInterval(timer);
  }, []);
  const answer = found?.answer ?? null;
  const outcome = useOutcome(asked, found, answer?.best ?? null, null, true);
  const seconds = (Math.max(0, nowMs - sinceMs) / 1000).toFixed(1);
  return (
    <div className="progress">
      <p className="arrange-sentence" role="status">
        Looking for the least ballast…
      </p>
      <div className="arrange-buttons held">
        <button type="button" className="button" onClick={onCancel}>
          Cancel
        </button>
      </div>
      {stale && (
        <div className="arrange-stale" role="status">
          <p>It goes on with the aircraft as it was when it was started.</p>
          <button type="button" className="button" onClick={onAgain}>
            Search as it is now
          </button>
        </div>
      )}
      <dl className="arrange-figures">
        <dt>Time</dt>
        <dd className="figure">{seconds} s</dd>
        <dt>Best so far</dt>
        <dd className="figure">{answer?.best ? say.mass(answer.best.ballastG) : 'none yet'}</dd>
        <dt>No less than</dt>
        <dd className="figure">{answer && Number.isFinite(answer.boundG) ? say.mass(answer.boundG) : '–'}</dd>
        <dt>Gap</dt>
        <dd className="figure">{answer?.gapG == null ? '–' : say.mass(answer.gapG)}</dd>
      </dl>
      {outcome && <Moves rows={outcome.rows} />}
    </div>
  );
}
