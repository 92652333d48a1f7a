import { useEffect, useRef, useState } from 'react';
import type { Vec3 } from '../../engine/geometry/types';
import { add } from '../../engine/geometry/vec3';
import { itemById, placeItem, updatePart, updateTank } from '../../model/document/edit';
import type { Aircraft } from '../../model/document/types';
import type { FitProblem } from '../../model/fit/wholeFit';
import { problemSentence } from '../../model/words/fitWords';
import { useBench, useCommitted, useFail, useFitOf } from '../../store/react';
import { EditButton } from '../fields/EditButton';
import { Icon } from '../icons';
import { useRestingValue } from '../Live';
import { useReadings } from '../readings';
import { wayWords } from './wayWords';

/** How soon it is looked again whether the hand has let go, ms. */
const IN_HAND_MS = 150;

/** Said in sections of their own. */
const elsewhere: readonly FitProblem['kind'][] = ['shortLead', 'outOfBay'];

/**
 * All that is wrong with where an item stands, in whatever load state, each with a button that mends it where one can.
 * The sentences follow where the hand rests; stage, beam and manifest mark what is wrong as it happens.
 */
export function Problems({ id }: { readonly id: string }) {
  const all = useRestingValue(({ fit }) => fit.problemsOf(id));
  const judged = useFitOf((fit) => fit.whole() !== null);
  if (!judged) return <p className="hint">Not judged yet.</p>;
  if (all.length === 0)
    return (
      <p className="fit-good">
        <Icon name="tick" /> Fits, in every load state.
      </p>
    );
  return (
    <ul className="fit-problems">
      {all
        .filter(({ kind }) => !elsewhere.includes(kind))
        .map((problem) => (
          <li
            key={`${problem.key} ${problem.states.map(({ positions }) => positions.map((at) => at.id)).join()}`}
          >
            <ProblemLine id={id} problem={problem} />
          </li>
        ))}
    </ul>
  );
}

function ProblemLine({ id, problem }: { readonly id: string; readonly problem: FitProblem }) {
  const say = useReadings();
  const { severity, rule, kind } = problem;
  return (
    <div className="fit-clash">
      <p className={severity === 'bad' ? 'clash' : 'fit-note'}>
        <Icon name={severity === 'bad' ? 'bad' : 'warn'} />{' '}
        <span>
          {problemSentence(problem, id, say)}
          {rule?.commonPractice && <em> Common practice.</em>}
        </span>
      </p>
      <div className="fit-buttons">
        <MoveClear id={id} problem={problem} />
        {(kind === 'through' || kind === 'outside') && <MeantSo id={id} />}
      </div>
    </div>
  );
}

/**
 * Offered only where the whole fit is no worse for it. Looked for at rest, each in a task of its own, for among many
 * items it takes longer than an edit may; in a drag the words are enough.
 */
function MoveClear({ id, problem }: { readonly id: string; readonly problem: FitProblem }) {
  const bench = useBench();
  const say = useReadings();
  const committed = useCommitted((aircraft) => aircraft);
  const atRest = bench.document.current() === committed;
  const item = itemById(committed, id);
  const [found, setFound] = useState<Looked | null>(null);
  const fail = useRef(useFail());
  useEffect(() => {
    if (!atRest) return;
    const look = () => {
      // Taken in hand in the meantime: it is looked for once that has ended where it began.
      if (bench.document.api.getState().preview !== null || bench.drag.api.getState().itemId !== null) {
        timer = setTimeout(look, IN_HAND_MS);
        return;
      }
      try {
        setFound({ committed, problem, by: bench.fit.judge()?.clearMove(committed, id, problem) ?? null });
      } catch (error) {
        fail.current(error);
      }
    };
    let timer = setTimeout(look);
    return () => clearTimeout(timer);
  }, [atRest, bench, committed, id, problem]);
  if (!item || !atRest) return null;
  if (found?.committed !== committed || found.problem !== problem) {
    return (
      <button type="button" className="button" disabled>
        Move clear …
      </button>
    );
  }
  const { by } = found;
  if (!by) return <p className="hint">No short move of it ends this and leaves all else as it is.</p>;
  const other = problem.parties.find((party) => party.id !== id)?.name ?? '';
  return (
    <EditButton
      disabled={item.locked === true}
      step={`Move ${item.name} clear of ${other}`}
      edit={(aircraft) => placeItem(aircraft, id, add(item.positionMm, by))}
    >
      Move clear ({wayWords(by, say)})
    </EditButton>
  );
}

/** What was found, and for what. */
interface Looked {
  readonly committed: Aircraft;
  readonly problem: FitProblem;
  readonly by: Vec3 | null;
}

/** What is meant to stand in the open, or to reach through the skin, is marked so once. */
function MeantSo({ id }: { readonly id: string }) {
  const name = useCommitted((aircraft) => itemById(aircraft, id)?.name ?? '');
  const open = (aircraft: Aircraft) =>
    updateTank(updatePart(aircraft, id, { inTheOpen: true }), id, { inTheOpen: true });
  return (
    <EditButton step={`Let ${name} stand in the open`} edit={open}>
      It is meant to
    </EditButton>
  );
}
