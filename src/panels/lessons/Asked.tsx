import { filled } from '../../model/lessons/fill';
import { Said } from './Said';
import type { Draft, Told } from './told';

interface AskedProps extends Told {
  readonly draft: Draft;
  readonly onPredict: () => void;
}

/** The question; nothing is shown before it is answered. */
export function Asked({ lesson, reading, fillings, draft, onPredict }: AskedProps) {
  return (
    <>
      <div className="lesson-says">
        <h3 tabIndex={-1}>
          <Said>{filled(lesson.question.ask, fillings, reading)}</Said>
        </h3>
      </div>
      <div className="lesson-does">
        <p>
          {draft.placed
            ? 'Move it until you would bet on it. There is no harm in being wrong: the surprise is the lesson.'
            : 'Drag the marker along the line under the aircraft to where you think it will be. Arrow keys move it too.'}
        </p>
        <p className="lesson-go">
          <button
            type="button"
            className="button strong lesson-next"
            disabled={!draft.placed}
            onClick={onPredict}
          >
            That is my prediction
          </button>
        </p>
      </div>
    </>
  );
}
