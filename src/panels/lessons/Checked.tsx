import { useId, useState } from 'react';
import type { Answer } from '../../model/lessons/answer';
import { figureText } from '../../model/lessons/figureText';
import { answerFillings, filled } from '../../model/lessons/fill';
import { type CheckReply, isRight } from '../../model/lessons/outcome';
import { Icon } from '../icons';
import { Said } from './Said';
import type { Draft, Told, WaysOn } from './told';

interface CheckedProps extends Told, WaysOn {
  readonly answer: Answer;
  /** Where the marker was left, or which choice was taken; null until then. */
  readonly reply: number | null;
  readonly draft: Draft;
  readonly onReply: (reply: number) => void;
}

/** One question on a new case, and then what to take home and the ways on. */
export function Checked(props: CheckedProps) {
  const { lesson, reading, fillings, answer, reply, draft, onReply } = props;
  const { question } = lesson.check;
  const [chosen, setChosen] = useState<number | null>(null);
  const group = useId();
  const all = { ...fillings, ...answerFillings(question, answer, reading) };
  const ask = filled(question.ask, all, reading);
  if (reply !== null) return <Closing {...props} reply={reply} all={all} />;
  const ready = question.by === 'marker' ? draft.placed : chosen !== null;
  return (
    <>
      <div className="lesson-says">
        <h3 tabIndex={-1}>
          <Said>{ask}</Said>
        </h3>
      </div>
      <div className="lesson-does">
        {question.by === 'marker' ? (
          <p>Drag the marker again, on a new case.</p>
        ) : (
          <fieldset className="lesson-choices">
            <legend className="unseen">{ask}</legend>
            {question.options.map(({ say }, at) => (
              <label key={say}>
                <input type="radio" name={group} checked={chosen === at} onChange={() => setChosen(at)} />
                {filled(say, all, reading)}
              </label>
            ))}
          </fieldset>
        )}
        <p className="lesson-go">
          <button
            type="button"
            className="button strong lesson-next"
            disabled={!ready}
            onClick={() => onReply(question.by === 'marker' ? draft.value : (chosen ?? 0))}
          >
            That is my answer
          </button>
        </p>
      </div>
    </>
  );
}

interface ClosingProps extends CheckedProps {
  readonly reply: number;
  readonly all: Told['fillings'];
}

function Closing({ lesson, reading, answer, reply, all, onLeave, onTake, next }: ClosingProps) {
  const { question } = lesson.check;
  const given: CheckReply =
    question.by === 'marker' ? { by: 'marker', at: reply } : { by: 'choice', index: reply };
  const right = isRight(question, answer, given);
  const chosen = question.by === 'choice' ? question.options[reply]?.say : undefined;
  return (
    <>
      <div className="lesson-says">
        <h3 tabIndex={-1} data-right={right || undefined}>
          {right ? <Icon name="tick" /> : null}{' '}
          <Said>{filled(lesson.check[right ? 'right' : 'wrong'], all, reading)}</Said>
        </h3>
        <p>
          {chosen === undefined
            ? `You said ${figureText(reply, question, reading)}`
            : `You chose “${filled(chosen, all, reading).replace(/\.$/, '')}”`}
          ; it comes to {figureText(answer.answer, question, reading)}.
        </p>
      </div>
      <div className="lesson-does">
        <p className="lesson-home">
          <Said>{filled(lesson.closing, all, reading)}</Said>
        </p>
        <p className="lesson-go">
          {next ? (
            <button type="button" className="button strong lesson-next" onClick={next.open}>
              Next: {next.title}
            </button>
          ) : (
            <button type="button" className="button strong lesson-next" onClick={onLeave}>
              Back to the lessons
            </button>
          )}
          <button type="button" className="button" onClick={onTake}>
            Take this aircraft to the bench
          </button>
        </p>
      </div>
    </>
  );
}
