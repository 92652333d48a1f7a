import './lastWeighed.css';
import { useDeferredValue } from 'react';
import { heldAgainst } from '../../model/weigh/heldAgainst';
import { lastOfCg } from '../../model/weigh/weighIns';
import { agreementFact, dayWords } from '../../model/words/weighWords';
import { useBench, useCommitted } from '../../store/react';
import { useReadings } from '../readings';

/** The last weigh-in at the end of the verdict: when, and how far it is from the list as it is now. */
export function LastWeighed() {
  const { view } = useBench();
  const say = useReadings();
  const aircraft = useCommitted((committed) => committed);
  // What it comes to follows in a task of its own; meanwhile the day stands there alone.
  const followed = useDeferredValue(aircraft);
  const last = lastOfCg(aircraft);
  if (!last) return null;
  const held = followed === aircraft ? heldAgainst(aircraft, last) : null;
  const says = held && (held.ok ? agreementFact(held, say) : 'not finished');
  return (
    <>
      {/* A space between words: none is left of it where a new line begins. */}{' '}
      <button
        type="button"
        className="last-weighed"
        title="Open the weigh-in"
        onClick={() => view.setState({ place: 'weigh-in' })}
      >
        {`Weighed ${dayWords(last.date)}${says ? `: ${says}` : ''}.`}
      </button>
    </>
  );
}
