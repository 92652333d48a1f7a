import './answer.css';
import { shownText } from '../../model/document/names';
import type { Tone } from '../../model/words/verdict';
import { useCommitted, useView } from '../../store/react';
import { Icon, type IconName } from '../icons';
import { useBenchValue } from '../Live';
import { later } from '../later';
import { useReadings } from '../readings';
import { useSettled } from '../useSettled';
import { answerOf, held } from './answerOf';
import { Facts } from './Facts';
import { Fix } from './Fix';

const LastWeighed = later(
  () => import('../weigh/LastWeighed'),
  (module) => module.LastWeighed,
  { place: 'The last weighing' },
);

const signs: Readonly<Record<Tone, { readonly icon: IconName; readonly word: string }>> = {
  good: { icon: 'tick', word: 'Good' },
  caution: { icon: 'warn', word: 'Caution' },
  bad: { icon: 'bad', word: 'Not good' },
  danger: { icon: 'bad', word: 'Danger' },
  unknown: { icon: 'question', word: 'Not known' },
};

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
