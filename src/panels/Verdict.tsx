import './verdict.css';
import { applyRemedy } from '../model/advice/remedy';
import { attitudeName, isLevel } from '../model/loads/attitude';
import { type Verdict as Answer, ballastG, type Tone, verdict } from '../model/words/verdict';
import type { Figure } from '../model/words/workingSheet';
import type { Bench } from '../store/bench';
import { useBench } from '../store/react';
import { Icon, type IconName } from './icons';
import { Live, useBenchValue } from './Live';
import { type Readings, useReadings } from './readings';
import { SumButton } from './sums/SumButton';
import { useSettled } from './useSettled';

const signs: Readonly<Record<Tone, { readonly icon: IconName; readonly word: string }>> = {
  good: { icon: 'tick', word: 'Good' },
  caution: { icon: 'warn', word: 'Caution' },
  bad: { icon: 'bad', word: 'Not good' },
  danger: { icon: 'bad', word: 'Danger' },
  unknown: { icon: 'question', word: 'Not known' },
};

let kept: { readonly causes: readonly unknown[]; readonly answer: Answer } | null = null;

/** The answer of now; its parts are asked for one by one. */
function answerOf(bench: Bench, say: Readings): Answer {
  const judgement = bench.verdict.judgement();
  const { advice } = bench.verdict.get();
  const causes = [judgement, advice, say, bench.verdict.checking()];
  if (!kept?.causes.every((cause, index) => cause === causes[index])) {
    const mass = { massG: bench.balance.get().massG, plusMinusG: bench.verdict.massPlusMinusG() };
    const checking = bench.verdict.checking();
    const answer = verdict(bench.document.current(), judgement, say, { advice, mass, checking });
    kept = { causes, answer };
  }
  return kept!.answer;
}

/** "Knife edge: " while the aircraft is not held level, for then the verdict is of that attitude. */
function held({ view }: Bench): string {
  const { attitude } = view.getState();
  return isLevel(attitude) ? '' : `${attitudeName(attitude)}: `;
}

/** Whether it balances and fits, why not, one remedy with its button, and the four figures that matter. */
export function Verdict() {
  const say = useReadings();
  const tone = useBenchValue((bench) => answerOf(bench, say).tone);
  const headline = useBenchValue((bench) => `${held(bench)}${answerOf(bench, say).headline}.`);
  const cause = useBenchValue((bench) => answerOf(bench, say).cause);
  const fix = useBenchValue((bench) => answerOf(bench, say).fix?.label ?? '');
  const settled = useSettled(`${headline} ${cause} ${fix}`);
  return (
    <div className="verdict" data-testid="verdict">
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a long verdict on a narrow screen is scrolled with the arrow keys */}
      <section className="verdict-words" data-tone={tone} aria-label="Verdict" tabIndex={0}>
        <span className="verdict-sign" role="img" aria-label={signs[tone].word}>
          <Icon name={signs[tone].icon} />
        </span>
        <p>
          <strong>{headline}</strong> {cause} <FixOf say={say} />
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

/** The remedy as a button that carries it out in one step, and what comes of it. */
function FixOf({ say }: { readonly say: Readings }) {
  const bench = useBench();
  const label = useBenchValue((now) => answerOf(now, say).fix?.label ?? '');
  const consequence = useBenchValue((now) => answerOf(now, say).fix?.consequence ?? '');
  const failed = useBenchValue((now) => now.verdict.get().failed ?? '');
  const remedy = answerOf(bench, say).fix?.remedy ?? null;
  if (!label) return failed;
  const carryOut = () => {
    const { document } = bench;
    const now = bench.verdict.get().advice?.remedy;
    if (now) document.commit(now.words, applyRemedy(document.api.getState().committed, now));
  };
  return (
    <span className="verdict-fix">
      {remedy ? (
        <button type="button" className="link" onClick={carryOut}>
          {label}
        </button>
      ) : (
        label
      )}
      {'. '}
      {consequence}
    </span>
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
