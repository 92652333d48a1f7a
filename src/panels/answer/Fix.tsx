import { applyRemedy } from '../../model/advice/remedy';
import { useBench } from '../../store/react';
import { useBenchValue } from '../Live';
import { useReadings } from '../readings';
import { answerOf } from './answerOf';

/** The one remedy as a button that carries it out in one step, with what comes of it; or that none was found. */
export function Fix() {
  const bench = useBench();
  const say = useReadings();
  const label = useBenchValue((now) => answerOf(now, say).fix?.label ?? '');
  const consequence = useBenchValue((now) => answerOf(now, say).fix?.consequence ?? '');
  const offered = useBenchValue((now) => answerOf(now, say).fix?.remedy != null);
  const failed = useBenchValue((now) => now.verdict.get().failed ?? '');
  if (!label) return failed ? <p className="answer-nofix">{failed}</p> : <SearchAgain />;
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

/** Why the other load states could not be searched, and another try; nothing while that goes well. */
function SearchAgain() {
  const bench = useBench();
  const sentence = useBenchValue(({ rest }) => {
    const { loadSearch } = rest.get();
    return 'sentence' in loadSearch ? loadSearch.sentence : '';
  });
  if (!sentence) return null;
  return (
    <p className="answer-nofix">
      {sentence}{' '}
      <button type="button" className="link" onClick={bench.rest.retrySearch}>
        Retry
      </button>
    </p>
  );
}
