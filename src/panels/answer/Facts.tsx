import { useBenchList } from '../Live';
import { useReadings } from '../readings';
import { answerOf } from './answerOf';
import { FactButton } from './FactButton';

/** The figures behind the headline, in one row; each opens what it is made of. */
export function Facts() {
  const say = useReadings();
  const facts = useBenchList((bench) => answerOf(bench, say).facts.map(({ key, label }) => ({ key, label })));
  return (
    <ul className="facts" aria-label="Facts">
      {facts.map(({ key, label }) => (
        <li key={key} data-fact={key}>
          <FactButton of={key} label={label} />
        </li>
      ))}
    </ul>
  );
}
