import type { ArrangeAnswer } from '../../engine/place/searchState';
import type { Reason, WhyNot } from '../../engine/place/whyNot';
import { isEdit, relaxed } from '../../model/place/relaxed';
import { useBench } from '../../store/react';
import type { Asked } from './useSearch';

interface ReasonsProps {
  readonly asked: Asked;
  readonly answer: ArrangeAnswer | null;
  readonly reasons: WhyNot | null;
  /** The aircraft has been relaxed; parts that were held by a choice here are free again. */
  readonly onRelaxed: (partIds: readonly string[]) => void;
}

/** More ways than these are read by nobody. */
const MOST_SHOWN = 5;

/** Why nothing works: the smallest sets of things to let go, each with a button that does. */
export function Reasons({ asked, answer, reasons, onRelaxed }: ReasonsProps) {
  const bench = useBench();
  if (!reasons)
    return answer?.boundG === Number.POSITIVE_INFINITY ? <p role="status">Finding out why…</p> : null;
  if (reasons.possible) return null;
  if (reasons.reasons.length === 0) {
    return (
      <p>
        {reasons.proved
          ? 'Letting go of any three things does not help either.'
          : 'The time was too short to find what must give way.'}
      </p>
    );
  }
  const relax = ({ lifts, breachMm }: Reason) => {
    const next = relaxed(asked.committed, { lifts, breachMm });
    bench.document.commit('Let go of what stands in the way', next);
    onRelaxed(lifts.flatMap((lift) => ('partId' in lift ? [lift.partId] : [])));
  };
  return (
    <section className="reasons" aria-label="Why not">
      <h3>Why not</h3>
      <p>{reasons.proved ? 'The least that must give way, proved:' : 'What could give way:'}</p>
      <ul>
        {reasons.reasons.slice(0, MOST_SHOWN).map((reason) => (
          <li key={reason.sentence}>
            <span>{reason.sentence}</span>
            {reason.lifts.every(isEdit) && (
              <button type="button" className="button" onClick={() => relax(reason)}>
                Do that
              </button>
            )}
          </li>
        ))}
      </ul>
    </section>
  );
}
