import type { PowerProblem } from '../../model/power/powerProblems';
import { powerSentence, powerWorking } from '../../model/words/powerWords';
import { useBench, useCommitted } from '../../store/react';
import { Icon } from '../icons';

const signs = { bad: 'bad', caution: 'warn', unknown: 'question' } as const;

/** What is wrong with the wiring, the worst first, each with its sum. */
export function Problems({ problems }: { readonly problems: readonly PowerProblem[] }) {
  const { view } = useBench();
  const aircraft = useCommitted((committed) => committed);
  if (problems.length === 0) {
    return (
      <p className="power-holds">
        <Icon name="tick" /> By the figures entered, everything is fed what it takes for as long as the flight
        lasts with its reserve.
      </p>
    );
  }
  // Things may have the same name, so that their sentences are the same too.
  return (
    <ul className="power-problems">
      {problems.map((problem, at) => {
        const sentence = powerSentence(problem);
        const working = powerWorking(aircraft, problem);
        const id = 'part' in problem ? problem.part.id : null;
        return (
          <li key={`${at} ${sentence}`} data-tone={problem.severity}>
            <Icon name={signs[problem.severity]} />
            <div>
              <p>
                {sentence}{' '}
                {id !== null && (
                  <button type="button" className="link" onClick={() => view.setState({ selectedId: id })}>
                    Show it
                  </button>
                )}
              </p>
              {working.length > 0 && (
                <details>
                  <summary>The sum</summary>
                  {working.map((line) => (
                    <p key={line} className="figure">
                      {line}
                    </p>
                  ))}
                </details>
              )}
            </div>
          </li>
        );
      })}
    </ul>
  );
}
