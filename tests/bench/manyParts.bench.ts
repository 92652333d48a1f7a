import { judging } from '../../src/judging';
import { placeItem } from '../../src/model/document/edit';
import type { Aircraft } from '../../src/model/document/types';
import { writeAircraft } from '../../src/model/document/write';
import { parseAircraft } from '../../src/model/reading/read';
import { drawnWeights, fittingScale, shownWeights } from '../../src/panels/beam/drawnWeights';
import { stationLine } from '../../src/panels/beam/lines';
import { rowsOf } from '../../src/panels/beam/rows';
import { type Bench, createBench } from '../../src/store/bench';
import { demo } from '../demo/demoAircraft';
import { randomFrom } from '../randomFrom';
import type { BenchRow } from './measure';

const PARTS = 2000;
/** What the page may take to open such an aircraft, and to answer one edit, ms; drawing comes on top. */
const [OPEN_MS, EDIT_MS] = [4000, 200];

/** Sandmartin's airframe with its parts replaced by 2 000 small ones, strewn through the pod and out of it. */
function strewn(): Aircraft {
  const random = randomFrom(2000);
  const between = (low: number, high: number) => low + (high - low) * random();
  return {
    ...demo('sandmartin'),
    leads: [],
    switches: [],
    weighIns: [],
    keepApart: [],
    parts: Array.from({ length: PARTS }, (_, i) => ({
      id: `part-${i}`,
      name: `Part ${i}`,
      role: 'other' as const,
      shape:
        i % 3 === 0
          ? { kind: 'cylinder' as const, lengthMm: between(10, 20), diameterMm: between(5, 13) }
          : {
              kind: 'box' as const,
              lengthMm: between(8, 28),
              widthMm: between(6, 16),
              heightMm: between(4, 12),
            },
      massG: between(0.5, 3.5),
      positionMm: [between(50, 1550), between(-60, 60), between(-50, 50)] as const,
      yawDeg: 0,
      pitchDeg: 0,
      rollDeg: 0,
    })),
  };
}

/** What the page asks of the bench for one picture: the judgement with the whole fit, and the beam. */
function answered(bench: Bench): number {
  const weights = shownWeights(bench, stationLine);
  const scale = fittingScale(weights, bench.axis.getState().station, rowsOf(bench.view.getState()));
  return bench.verdict.judgement().findings.length + drawnWeights(bench, stationLine, scale).length;
}

function opened(text: string): Bench {
  const read = parseAircraft(text);
  if (!read.ok) throw new Error(read.faults[0]!.sentence);
  const bench = createBench(read.aircraft);
  bench.axis.setState({ station: { atLeftMm: 0, mmPerPx: 2.5 } });
  bench.fit.startJudge(judging);
  answered(bench);
  return bench;
}

/** Median processor time of some runs after a first one, ms: a busy machine does not lengthen it much. */
function processorMs(work: () => unknown, runs: number): number {
  work();
  const times = Array.from({ length: runs }, () => {
    const before = process.cpuUsage();
    work();
    const { user, system } = process.cpuUsage(before);
    return (user + system) / 1000;
  });
  return times.sort((a, b) => a - b)[runs >> 1]!;
}

const within = (name: string, ours: number, limitMs: number): BenchRow => ({
  name,
  ours,
  theirs: limitMs,
  unit: 'ms',
  against: 'stated limit, processor time without drawing',
  ratio: limitMs / ours,
});

export default async function rows(): Promise<BenchRow[]> {
  const text = writeAircraft(strewn());
  const openMs = processorMs(() => {
    opened(text).rest.stop();
  }, 3);
  const bench = opened(text);
  let step = 0;
  const edit = () => {
    step = (step + 1) % 200;
    bench.document.commit('Move', placeItem(bench.document.current(), 'part-7', [400 + step, 0, 0]));
    return answered(bench) + writeAircraft(bench.document.current()).length;
  };
  const editMs = processorMs(edit, 9);
  bench.rest.stop();
  return [
    within(`opening ${PARTS} parts: read, balanced, fitted, judged`, openMs, OPEN_MS),
    within(`one edit of ${PARTS} parts: balanced, fitted, judged, written for keeping`, editMs, EDIT_MS),
  ];
}
