import type { Answer } from '../../model/lessons/answer';
import { differenceText, figureText } from '../../model/lessons/figureText';
import { filled, predictionFillings } from '../../model/lessons/fill';
import { compared } from '../../model/lessons/outcome';
import { Said } from './Said';
import type { Told } from './told';

interface HappenedProps extends Told {
  readonly guess: number;
  readonly answer: Answer;
  readonly onDone: () => void;
}

/** What happened against what was predicted. */
export function Happened({ lesson, reading, fillings, guess, answer, onDone }: HappenedProps) {
  const { question, outcome } = lesson;
  const all = { ...fillings, ...predictionFillings(question, guess, answer, reading) };
  const comparison = compared(guess, answer, question.axis);
  const off = differenceText(guess - answer.answer, question, reading.units);
  return (
    <>
      <div className="lesson-says">
        <h3 tabIndex={-1} data-right={comparison === 'right' || undefined}>
          <Said>{filled(outcome[comparison], all, reading)}</Said>
        </h3>
        <p>
          <Said>{filled(outcome.why, all, reading)}</Said>
        </p>
      </div>
      <div className="lesson-does">
        <dl className="lesson-compared">
          <div>
            <dt>You said</dt>
            <dd className="figure">{figureText(guess, question, reading)}</dd>
          </div>
          <div>
            <dt>It came to</dt>
            <dd className="figure">{figureText(answer.answer, question, reading)}</dd>
          </div>
          <div>
            <dt>Apart</dt>
            <dd className="figure">{off}</dd>
          </div>
        </dl>
        <p className="lesson-go">
          <button type="button" className="button strong lesson-next" onClick={onDone}>
            Show me the sum
          </button>
        </p>
      </div>
    </>
  );
}
