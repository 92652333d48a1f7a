import { heldAgainst } from '../../model/weigh/heldAgainst';
import { lastWeighIn } from '../../model/weigh/weighIns';
import { agreementFact, dayWords } from '../../model/words/weighWords';
import { useBench, useCommitted } from '../../store/react';
import { useReadings } from '../readings';

/** The last weigh-in in the row of facts; nothing where nothing was weighed. */
export function WeighedFact() {
  const { view } = useBench();
  const say = useReadings();
  const aircraft = useCommitted((committed) => committed);
  const last = lastWeighIn(aircraft);
  if (!last) return null;
  const held = heldAgainst(aircraft, last);
  const value = held.ok ? agreementFact(held, say) : 'not finished';
  return (
    <li data-fact="weighed">
      <button
        type="button"
        data-tone={held.ok ? (held.reconciled.agrees ? 'good' : 'caution') : 'unknown'}
        title="The last weigh-in against the list as it is now. Press to open it."
        onClick={() => view.setState({ place: 'weigh-in' })}
      >
        <span className="fact-label">{`Weighed ${dayWords(last.date)}`}</span>
        <span className="fact-value figure">{value}</span>
        <span className="unseen">: open the weigh-in</span>
      </button>
    </li>
  );
}
