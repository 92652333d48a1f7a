import { standardUncertainty } from '../../engine/balance/uncertainty';
import { periodOfRuns } from '../../engine/weigh/swingPeriod';
import { readingOf } from '../../model/weigh/weighIns';
import { periodWords } from '../../model/words/swingWords';
import { useCommitted } from '../../store/react';
import { EditButton } from '../fields/EditButton';
import { Measure } from '../fields/Measure';
import { RemoveButton } from './RemoveButton';
import { readingRows } from './readingField';
import { TapTimer } from './TapTimer';

/** Runs of the timer, tapped or typed, and the period that they make. */
export function Runs({ id }: { readonly id: string }) {
  const reading = useCommitted((aircraft) => readingOf(aircraft, id, 'swing'));
  if (!reading) return null;
  const rows = readingRows(id, 'swing', 'runs');
  const period = periodOfRuns(reading.runs, standardUncertainty(reading.thumbS));
  return (
    <section className="runs" aria-label="Timing">
      <TapTimer id={id} />
      {reading.runs.length > 0 && (
        <ol>
          {reading.runs.map((_, at) => (
            <li key={at}>
              <span className="run-name">{`Run ${at + 1}`}</span>
              <Measure
                bare
                label={`Run ${at + 1}: full swings`}
                quantity="number"
                suffix="swings"
                step="Change a run"
                read={(aircraft) => rows.rows(aircraft)[at]?.swings}
                write={(aircraft, swings) => rows.change(aircraft, at, { swings })}
              />
              <Measure
                bare
                label={`Run ${at + 1}: time`}
                quantity="number"
                suffix="s"
                step="Change a run"
                read={(aircraft) => rows.rows(aircraft)[at]?.timeS}
                write={(aircraft, timeS) => rows.change(aircraft, at, { timeS })}
              />
              <RemoveButton
                label={`Remove run ${at + 1}`}
                step="Remove a run"
                edit={(aircraft) => rows.remove(aircraft, at)}
              />
            </li>
          ))}
        </ol>
      )}
      <p className="runs-say">
        <EditButton
          className="link weigh-more"
          step="Type a run"
          edit={(aircraft) => rows.add(aircraft, { swings: 10, timeS: 0 })}
        >
          Type a run
        </EditButton>
        <span role="status">{period.ok ? periodWords(period, reading.runs.length) : period.sentence}</span>
      </p>
    </section>
  );
}
