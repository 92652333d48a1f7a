import { useRef } from 'react';
import { levelTip } from '../../model/balance/levelTip';
import { LEAST_SHOWN_MM } from '../../model/units';
import { lengthUp } from '../../model/words/say';
import type { Bench } from '../../store/bench';
import { useView } from '../../store/react';
import { setAttribute, setText } from '../drawing';
import { useWritten } from '../Live';
import { type Readings, useReadings } from '../readings';
import type { Line } from './lines';
import { rowsOf } from './rows';

/** What is nearer than this is the same place, mm. */
const SAME_MM = 0.001;

/**
 * How far the CG lies beyond the zone, mm; below 0 ahead of it or to the left, 0 inside. Where the answer tells of this
 * very state it is what the answer says, with what may lie farther aft.
 */
function beyond({ document, balance, verdict }: Bench, line: Line): number {
  const answer = balance.get();
  const zone = line.zone(document.current(), answer);
  const at = answer.cgMm?.[line.axis];
  if (!zone || at === undefined) return 0;
  if (line.axis === 0) {
    for (const finding of verdict.judgement().findings)
      if (
        (finding.kind === 'tail-heavy' || finding.kind === 'nose-heavy') &&
        Math.abs(finding.at.cgMm[0] - at) < SAME_MM
      )
        return finding.outsideMm;
  }
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

/** Says at the end that goes down what the tilt of the beam shows; by hand, for it changes with each move of a hand. */
export function TiltWords({ line, widthPx }: { readonly line: Line; readonly widthPx: number }) {
  const say = useReadings();
  const rows = useView(rowsOf);
  const nose = useRef<SVGTextElement>(null);
  const tail = useRef<SVGTextElement>(null);
  const lateral = line.axis === 1;
  useWritten((bench) => {
    const byMm = beyond(bench, line);
    const ahead = byMm < 0 ? `◂ ${heavyWord(bench, 'nose')} ${lengthUp(-byMm, say)}` : 'nose';
    const behind = byMm > 0 ? `${heavyWord(bench, 'tail')} ${lengthUp(byMm, say)} ▸` : 'tail';
    write(nose.current, lateral ? levelling(bench, 'right', say) : ahead, byMm !== 0);
    write(tail.current, lateral ? levelling(bench, 'left', say) : behind, byMm !== 0);
  });
  return (
    <>
      <text ref={nose} className="tilt-words" x="14" y={rows.labels} />
      <text ref={tail} className="tilt-words" x={widthPx - 14} y={rows.labels} textAnchor="end" />
    </>
  );
}

function write(text: SVGTextElement | null, words: string, isOut: boolean): void {
  setText(text, words);
  setAttribute(text, 'data-out', String(isOut && words.includes('heavy')));
}
