import { applyRemedy } from '../../model/advice/remedy';
import { useBench } from '../../store/react';
import { useBenchList, useBenchValue } from '../Live';
import { useReadings } from '../readings';
import { answerOf } from './answerOf';

/** The one remedy as a button that carries it out in one step, with what comes of it; and what stopped, with a retry. */
export function Fix() {
  return (
    <div className="answer-fixes">
      <Remedy />
      <StoppedChecks />
    </div>
  );
}

/** The remedy, or that none was found; nothing where there is nothing to mend. */
function Remedy() {
  const bench = useBench();
  const say = useReadings();
  const label = useBenchValue((now) => answerOf(now, say).fix?.label ?? '');
  const consequence = useBenchValue((now) => answerOf(now, say).fix?.consequence ?? '');
  const offered = useBenchValue((now) => answerOf(now, say).fix?.remedy != null);
  if (!label) return null;
  if (!offered) {
    return (
      <p className="answer-nofix">
        <strong>{label}</strong> {consequence}
      </p>
    );
  }
  const carryOut = () => {
    const remedy = bench.verdict.get().advice?.remedy;
    const { document } = bench;
    if (remedy) document.commit(remedy.words, applyRemedy(document.api.getState().committed, remedy));
  };
  return (
    <button type="button" className="answer-fix" onClick={carryOut}>
      {label}
      <small>{consequence}</small>
    </button>
  );
}

/** Why something of the answer could not be worked out, and another try; nothing while that goes well. */
function StoppedChecks() {
  const bench = useBench();
  const [first, ...others] = useBenchList(({ verdict }) => verdict.stopped());
  if (!first) return null;
  return (
    <p className="answer-nofix" data-testid="stopped">
      {first.sentence}
      {others.length > 0 && ` Nor is there an answer for ${others.map(({ what }) => what).join(' and ')}.`}{' '}
      <button type="button" className="link" onClick={bench.verdict.retry}>
        Retry
      </button>
    </p>
  );
}
