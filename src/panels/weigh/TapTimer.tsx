import { type KeyboardEvent, type PointerEvent, useState } from 'react';
import { runOfTaps } from '../../engine/weigh/swingPeriod';
import { formatNumber } from '../../model/units';
import { EditButton } from '../fields/EditButton';
import { readingRows } from './readingField';

/** Fewer taps than this make a run that is mostly thumb. */
const ENOUGH_TAPS = 11;

const round = (seconds: number) => Math.round(seconds * 1000) / 1000;

/** Tapped at every full swing; the taps become a run when they are taken. */
export function TapTimer({ id }: { readonly id: string }) {
  const [tapsS, setTaps] = useState<readonly number[]>([]);
  // Of the event, not of the moment that it is dealt with: nothing that the page is busy with gets into the time.
  const tap = (timeStampMs: number) => setTaps((before) => [...before, timeStampMs / 1000]);
  const run = runOfTaps(tapsS);
  const rows = readingRows(id, 'swing', 'runs');
  return (
    <div className="tap-timer">
      <button
        type="button"
        className="tap"
        onPointerDown={(event: PointerEvent) => event.button === 0 && tap(event.timeStamp)}
        onKeyDown={(event: KeyboardEvent) => {
          if (event.key !== ' ' && event.key !== 'Enter') return;
          event.preventDefault();
          if (!event.repeat) tap(event.timeStamp);
        }}
      >
        <strong>Tap as it passes, at every full swing</strong>
        <span className="figure">
          {run.ok
            ? `${run.swings} swings, ${formatNumber(run.timeS / run.swings, 3)} s each`
            : `${tapsS.length} of 3 taps or more`}
        </span>
      </button>
      {tapsS.length > 0 && (
        <p className="tap-then">
          {run.ok && (
            <EditButton
              step="Take a run"
              edit={(aircraft) => {
                const next = rows.add(aircraft, { swings: run.swings, timeS: round(run.timeS) });
                setTaps([]);
                return next;
              }}
            >
              Take this run
            </EditButton>
          )}
          <button type="button" className="link weigh-more" onClick={() => setTaps([])}>
            Start again
          </button>
          {run.ok && tapsS.length < ENOUGH_TAPS && (
            <span className="hint">{`Go on to ${ENOUGH_TAPS - 1} swings or more.`}</span>
          )}
        </p>
      )}
    </div>
  );
}
