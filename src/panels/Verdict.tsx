import './verdict.css';
import type { Balance } from '../model/balance/balance';
import { attitudeName, isLevel } from '../model/loads/attitude';
import type { LoadEnvelope } from '../model/loads/loadStates';
import { type Verdict as Answer, ballastG, verdict } from '../model/words/verdict';
import type { Figure } from '../model/words/workingSheet';
import type { Bench } from '../store/bench';
import { Icon, type IconName } from './icons';
import { Live, useBenchValue } from './Live';
import { type Readings, useReadings } from './readings';
import { SumButton } from './sums/SumButton';
import { useSettled } from './useSettled';

const signs: Readonly<Record<Answer['tone'], { readonly icon: IconName; readonly word: string }>> = {
  good: { icon: 'tick', word: 'Good' },
  caution: { icon: 'warn', word: 'Caution' },
  bad: { icon: 'bad', word: 'Out of balance' },
  unknown: { icon: 'question', word: 'Not known' },
};

let kept: {
  readonly balance: Balance;
  readonly say: Readings;
  readonly envelope: LoadEnvelope | null;
  readonly answer: Answer;
} | null = null;

/** The verdict of now; its three parts are asked for one by one. */
function answerOf(bench: Bench, say: Readings): Answer {
  const balance = bench.balance.get();
  const { envelope } = bench.rest.get();
  if (kept?.balance !== balance || kept.say !== say || kept.envelope !== envelope) {
    kept = { balance, say, envelope, answer: verdict(bench.document.current(), balance, say, envelope) };
  }
  return kept.answer;
}

/** "Knife edge: " while the aircraft is not held level, for then the verdict is of that attitude. */
function held({ view }: Bench): string {
  const { attitude } = view.getState();
  return isLevel(attitude) ? '' : `${attitudeName(attitude)}: `;
}

/** Whether it balances, in plain words, and the four figures that matter. */
export function Verdict() {
  const say = useReadings();
  const tone = useBenchValue((bench) => answerOf(bench, say).tone);
  const headline = useBenchValue((bench) => held(bench) + answerOf(bench, say).headline);
  const detail = useBenchValue((bench) => answerOf(bench, say).detail);
  const settled = useSettled(`${headline} ${detail}`);
  return (
    <div className="verdict" data-testid="verdict">
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a long verdict on a narrow screen is scrolled with the arrow keys */}
      <section className="verdict-words" data-tone={tone} aria-label="Verdict" tabIndex={0}>
        <span className="verdict-sign" role="img" aria-label={signs[tone].word}>
          <Icon name={signs[tone].icon} />
        </span>
        <p>
          <strong>{headline}</strong> {detail}
        </p>
        <p className="unseen" aria-live="polite">
          {settled}
        </p>
      </section>
      <dl className="verdict-figures">
        <FigureOf name="ready to fly" sum="mass" read={({ balance }) => say.mass(balance.get().massG)} />
        <FigureOf
          name="CG now"
          sum="station"
          read={({ balance }) => {
            const { cgMm } = balance.get();
            return cgMm ? say.stationFine(cgMm[0]) : '–';
          }}
        />
        <FigureOf
          name="lateral, right +"
          sum="buttline"
          read={({ balance }) => {
            const { cgMm } = balance.get();
            return cgMm ? say.offset(cgMm[1]) : '–';
          }}
        />
        <FigureOf name="ballast" read={({ document }) => say.mass(ballastG(document.current()))} />
      </dl>
    </div>
  );
}

interface FigureProps {
  readonly name: string;
  readonly read: (bench: Bench) => string;
  /** The sum that it opens into; none for a plain figure. */
  readonly sum?: Figure;
}

function FigureOf({ name, read, sum }: FigureProps) {
  const figure = <Live read={read} />;
  return (
    <div>
      <dt>{name}</dt>
      <dd className="figure">
        {sum ? (
          <SumButton figure={sum} name={name}>
            {figure}
          </SumButton>
        ) : (
          figure
        )}
      </dd>
    </div>
  );
}
