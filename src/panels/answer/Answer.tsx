import './answer.css';
import { shownText } from '../../model/document/names';
import type { Bench } from '../../store/bench';
import { useCommitted, useView } from '../../store/react';
import { Icon } from '../icons';
import { Live, useBenchValue, useRestingValue } from '../Live';
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

/** The verdict on what is on the bench; not over a place where another aircraft is being made, which it would not be about. */
export function Answer() {
  const beginning = useView(({ place }) => place === 'begin');
  return beginning ? <StaysOnBench /> : <Verdict />;
}

/** Which aircraft is on the bench while another begins. */
function StaysOnBench() {
  const name = useCommitted((aircraft) => shownText(aircraft.name));
  return (
    <p className="answer-aside" data-testid="verdict-aside">
      {name} stays on the bench, with its verdict, until the new aircraft takes its place.
    </p>
  );
}

/** Whether it balances and fits: the headline, its cause, the one thing that would mend it, and under them the facts. */
function Verdict() {
  const say = useReadings();
  const tone = useBenchValue((bench) => answerOf(bench, say).tone);
  const headline = (bench: Bench) => held(bench) + answerOf(bench, say).headline;
  const cause = (bench: Bench) => answerOf(bench, say).cause;
  const all = useRestingValue((bench) => {
    const fix = answerOf(bench, say).fix?.label ?? '';
    return [headline(bench), cause(bench), fix].filter(Boolean).join('. ');
  });
  const weighed = useCommitted(({ weighIns }) => (weighIns?.length ?? 0) > 0);
  const settled = useSettled(all);
  return (
    <div className="answer" data-testid="verdict" data-tone={tone}>
      <section className="answer-words" aria-label="Verdict">
        <span className="answer-sign" role="img" aria-label={signs[tone].word}>
          <Icon name={signs[tone].icon} />
        </span>
        <p className="answer-headline">
          <Live read={headline} />
        </p>
        <p className="answer-cause">
          <Live read={cause} />
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
