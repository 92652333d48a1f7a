import { useEffect, useRef, useState } from 'react';
import type { TradeOffPoint } from '../../engine/place/tradeOff';
import type { Arrangement } from '../../engine/place/types';
import { recheckArrangement } from '../../model/place/applyArrangement';
import type { ChoicesAsk } from '../../model/place/tasks';
import { useBench } from '../../store/react';
import { useReadings } from '../readings';
import { Curve } from './Curve';

/** Points of the curve of margins, and how long each curve may take, ms. */
const POINTS = 11;
const CURVE_MS = 20_000;

interface ChoicesProps {
  readonly ask: ChoicesAsk;
  readonly pointed: Arrangement | null;
  /** They are for another aircraft than the one on the bench: only looked at. */
  readonly stale: boolean;
  readonly onPoint: (arrangement: Arrangement | null) => void;
}

/** Ballast against margin, and against the number of moves: each point is an arrangement to look at and to accept. */
export function Choices({ ask, pointed, stale, onPoint }: ChoicesProps) {
  const bench = useBench();
  const say = useReadings();
  const [forMargin, setForMargin] = useState<readonly TradeOffPoint[]>([]);
  const [forMoves, setForMoves] = useState<readonly TradeOffPoint[]>([]);
  const [busy, setBusy] = useState(true);
  const [failed, setFailed] = useState('');
  const [attempt, setAttempt] = useState(1);
  // The question is the one that it was opened with.
  const asking = useRef(ask);
  useEffect(() => {
    const solve = bench.place.solver();
    if (!solve) return;
    setBusy(true);
    setFailed('');
    setForMargin([]);
    setForMoves([]);
    const given = asking.current;
    let live = true;
    let cancel = () => {};
    const collect = (into: typeof setForMargin) => (progress: object) => {
      if (live && 'asked' in progress) into((points) => [...points, progress as TradeOffPoint]);
    };
    const search = async () => {
      const margins = solve(
        { task: 'ballast for margin', ask: given, points: POINTS, timeMs: CURVE_MS },
        collect(setForMargin),
      );
      cancel = margins.cancel;
      await margins.answer;
      if (!live) return;
      const moves = solve({ task: 'ballast for moves', ask: given, timeMs: CURVE_MS }, collect(setForMoves));
      cancel = moves.cancel;
      await moves.answer;
    };
    search()
      .catch((error: unknown) => live && setFailed(error instanceof Error ? error.message : String(error)))
      .finally(() => live && setBusy(false));
    return () => {
      live = false;
      cancel();
    };
  }, [bench, attempt]);
  const accept = (arrangement: Arrangement) => {
    if (stale) {
      const text = 'Arrange: the choices are for the aircraft as it was. Search again first.';
      return bench.notice.tell({ about: 'edit', tone: 'bad', text });
    }
    const { aircraft: start, problem, settings } = ask;
    const { down, alsoDown = [], emptied = [] } = settings;
    const { aircraft, faults } = recheckArrangement(start, problem, arrangement, [down, ...alsoDown], {
      emptied,
    });
    if (faults.length === 0) bench.document.commit('Arrange', aircraft);
    else bench.notice.tell({ about: 'edit', tone: 'bad', text: `Arrange: ${faults.join(' ')}` });
  };
  const shared = { pointed, onPoint, onAccept: accept };
  return (
    <section className="choices" aria-label="Choices">
      <h3>Choices</h3>
      <p className="hint" role="status">
        {busy ? 'Working out the choices…' : failed || 'Point at one to see it; press it to accept it.'}
      </p>
      {failed && (
        <button type="button" className="button" onClick={() => setAttempt((before) => before + 1)}>
          Retry
        </button>
      )}
      <Curve
        {...shared}
        title="Ballast for more margin"
        acrossName="least margin"
        points={forMargin}
        moreIsBetter={true}
        none="More margin was not to be had"
        across={({ marginMm }) => marginMm}
        sayAcross={(mm) => say.lengthFine(mm)}
      />
      <Curve
        {...shared}
        title="Ballast for fewer moves"
        acrossName="moves"
        points={forMoves}
        moreIsBetter={false}
        none="Fewer moves were not to be had"
        across={({ moves }) => moves}
        sayAcross={(moves) => String(moves)}
      />
    </section>
  );
}
