import './sources.css';
import { type MassOnScales, massOnScales } from '../../model/balance/massOnScales';
import { restsOnWords } from '../../model/words/sourceWords';
import type { Bench } from '../../store/bench';
import { useBench } from '../../store/react';
import { useRestingValue } from '../Live';
import { type Readings, useReadings } from '../readings';
import { SourceMark } from './SourceMark';

const answerOf = ({ document, balance }: Bench): MassOnScales | null =>
  massOnScales(document.current(), balance.get());

/** How much of the mass ready to fly rests on a scale and how much on assumption, and what to weigh next. */
export function OnScales() {
  const bench = useBench();
  const say = useReadings();
  // What is drawn follows the figures only where they read differently.
  useRestingValue((now) => JSON.stringify(answerOf(now)));
  const answer = answerOf(bench);
  if (!answer) return <p className="hint">Nothing aboard weighs anything yet.</p>;
  return (
    <div className="on-scales" data-testid="on-scales">
      <Strip answer={answer} />
      <ul className="on-scales-shares">
        {answer.shares.map(({ restsOn, massG }) => (
          <li key={restsOn}>
            <SourceMark of={restsOn} />
            <span>{restsOnWords[restsOn]}</span>
            <span className="figure">{say.mass(massG)}</span>
            <span className="figure">{percent(massG / answer.massG)}</span>
          </li>
        ))}
      </ul>
      <Next answer={answer} say={say} />
    </div>
  );
}

/** Whole percents; what is there at all is never nothing. */
const percent = (share: number): string => (share < 0.01 ? 'under 1 %' : `${Math.round(100 * share)} %`);

function Strip({ answer: { shares, massG: wholeG } }: { readonly answer: MassOnScales }) {
  return (
    <div className="on-scales-strip" aria-hidden="true">
      {shares.map(({ restsOn, massG }) => (
        <span key={restsOn} data-source={restsOn} style={{ flexGrow: Math.max(0.004, massG / wholeG) }} />
      ))}
    </div>
  );
}

function Next({ answer: { next, nowMm }, say }: { readonly answer: MassOnScales; readonly say: Readings }) {
  const { view } = useBench();
  if (next.length === 0) {
    return (
      <p className="hint">
        CG ± {say.lengthFine(nowMm)}. Weighing any one thing would not make that noticeably less.
      </p>
    );
  }
  return (
    <>
      <p className="hint">CG ± {say.lengthFine(nowMm)}. Weigh next, for the most gain:</p>
      <ol className="on-scales-next">
        {next.map(({ id, name, thenMm }) => (
          <li key={`${id} ${name}`}>
            <button type="button" className="link" onClick={() => view.setState({ selectedId: id })}>
              {name}
            </button>
            <span className="figure">
              then ± {say.lengthFine(thenMm)}, −{Math.round(100 * (1 - thenMm / nowMm))} %
            </span>
          </li>
        ))}
      </ol>
    </>
  );
}
