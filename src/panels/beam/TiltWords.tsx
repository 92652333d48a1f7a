import { levelTip } from '../../model/balance/levelTip';
import { LEAST_SHOWN_MM } from '../../model/units';
import { lengthUp } from '../../model/words/say';
import type { Bench } from '../../store/bench';
import { useView } from '../../store/react';
import { useBenchValue } from '../Live';
import { type Readings, useReadings } from '../readings';
import type { Line } from './lines';
import { rowsOf } from './rows';

/** How far the CG lies beyond the zone, mm; below 0 ahead of it or to the left, 0 inside. */
function beyond({ document, balance }: Bench, line: Line): number {
  const answer = balance.get();
  const zone = line.zone(document.current(), answer);
  const at = answer.cgMm?.[line.axis];
  if (!zone || at === undefined) return 0;
  return at < zone.forwardMm ? at - zone.forwardMm : Math.max(0, at - zone.aftMm);
}

/** "tail-heavy"; "outside" against limits that were stated for another load state and are kept there. */
const heavyWord = ({ verdict }: Bench, end: 'nose' | 'tail'): string =>
  verdict.judgement().statedFor?.outsideMm === 0 ? 'outside' : `${end}-heavy`;

/** What would level the wings, in words; empty when nobody would notice. */
function levelling({ document, balance }: Bench, side: 'right' | 'left', say: Readings): string {
  const { massG, cgMm } = balance.get();
  const lateralMm = cgMm?.[1] ?? 0;
  if (Math.abs(lateralMm) < LEAST_SHOWN_MM || lateralMm > 0 !== (side === 'right')) return `${side} wing`;
  const tip = cgMm && levelTip(document.current(), { massG, cgMm });
  if (!tip) return `${side} wing heavy`;
  const shiftMm = tip.stationShiftMm;
  const moves =
    Math.abs(shiftMm) < LEAST_SHOWN_MM
      ? ''
      : ` and move the CG ${say.lengthFine(Math.abs(shiftMm))} ${shiftMm > 0 ? 'aft' : 'forward'}`;
  return `${side} wing heavy: ${say.mass(tip.massG)} at the ${tip.side} tip would level it${moves}`;
}

/** Says at the end that goes down what the tilt of the beam shows. */
export function TiltWords({ line, widthPx }: { readonly line: Line; readonly widthPx: number }) {
  const say = useReadings();
  const rows = useView(rowsOf);
  const lateral = line.axis === 1;
  const nose = useBenchValue((bench) => {
    if (lateral) return levelling(bench, 'right', say);
    const byMm = beyond(bench, line);
    return byMm < 0 ? `◂ ${heavyWord(bench, 'nose')} ${lengthUp(-byMm, say)}` : 'nose';
  });
  const tail = useBenchValue((bench) => {
    if (lateral) return levelling(bench, 'left', say);
    const byMm = beyond(bench, line);
    return byMm > 0 ? `${heavyWord(bench, 'tail')} ${lengthUp(byMm, say)} ▸` : 'tail';
  });
  const out = useBenchValue((bench) => Math.sign(beyond(bench, line)));
  return (
    <>
      <text className="tilt-words" data-out={out !== 0 && nose.includes('heavy')} x="14" y={rows.labels}>
        {nose}
      </text>
      <text
        className="tilt-words"
        data-out={out !== 0 && tail.includes('heavy')}
        x={widthPx - 14}
        y={rows.labels}
        textAnchor="end"
      >
        {tail}
      </text>
    </>
  );
}
