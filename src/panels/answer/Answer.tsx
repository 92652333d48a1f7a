import './answer.css';
import { useCommitted } from '../../store/react';
import { Icon } from '../icons';
import { useBenchValue } from '../Live';
import { later } from '../later';
import { useReadings } from '../readings';
import { useSettled } from '../useSettled';
import { answerOf, held } from './answerOf';
import { Facts } from './Facts';
import { Fix } from './Fix';
import { signs } from './signs';

const LastWeighed = later(
  () => import('../weigh/LastWeighed'),
  (module) => module.LastWeighed,
  { place: 'The last weighing' },
);

/** Whether it balances and fits: the headline, its cause, the one thing that would mend it, and under them the facts. */
export function Answer() {
  const say = useReadings();
  const tone = useBenchValue((bench) => answerOf(bench, say).tone);
  const headline = useBenchValue((bench) => held(bench) + answerOf(bench, say).headline);
  const cause = useBenchValue((bench) => answerOf(bench, say).cause);
  const fix = useBenchValue((bench) => answerOf(bench, say).fix?.label ?? '');
  const weighed = useCommitted(({ weighIns }) => (weighIns?.length ?? 0) > 0);
  const settled = useSettled([headline, cause, fix].filter(Boolean).join('. '));
  return (
    <div className="answer" data-testid="verdict" data-tone={tone}>
      <section className="answer-words" aria-label="Verdict">
        <span className="answer-sign" role="img" aria-label={signs[tone].word}>
          <Icon name={signs[tone].icon} />
        </span>
        <p className="answer-headline">{headline}</p>
        <p className="answer-cause">
          {cause}
          {weighed && <LastWeighed />}
        </p>
        <Fix />
        <p className="unseen" aria-live="polite">
          {settled}
        </p>
      </section>
      <Facts />
    </div>
  );
}
