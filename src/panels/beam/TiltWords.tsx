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

/** What would level the wings: in full, and shorter where that has no room; only the side when nobody would notice. */
function levelling({ document, balance }: Bench, side: 'right' | 'left', say: Readings): readonly string[] {
  const { massG, cgMm } = balance.get();
  const lateralMm = cgMm?.[1] ?? 0;
  if (Math.abs(lateralMm) < LEAST_SHOWN_MM || lateralMm > 0 !== (side === 'right')) return [`${side} wing`];
  const heavy = `${side} wing heavy`;
  const tip = cgMm && levelTip(document.current(), { massG, cgMm });
  if (!tip) return [heavy];
  const levelled = `${heavy}: ${say.mass(tip.massG)} at the ${tip.side} tip would level it`;
  const shiftMm = tip.stationShiftMm;
  if (Math.abs(shiftMm) < LEAST_SHOWN_MM) return [levelled, heavy];
  const way = shiftMm > 0 ? 'aft' : 'forward';
  return [`${levelled} and move the CG ${say.lengthFine(Math.abs(shiftMm))} ${way}`, levelled, heavy];
}

/** A character at its widest on the whole; measuring would lay the page out again. */
const CHARACTER_PX = 6.8;
/** About the middle stand the limits with their figures, px. */
const LIMITS_PX = 90;

/** The fullest words that have room on their half of the beam. */
const fitting = (words: readonly string[], widthPx: number): string =>
  words.find(({ length }) => length * CHARACTER_PX <= widthPx / 2 - LIMITS_PX) ?? words.at(-1) ?? '';

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
    write(nose.current, lateral ? fitting(levelling(bench, 'right', say), widthPx) : ahead, byMm !== 0);
    write(tail.current, lateral ? fitting(levelling(bench, 'left', say), widthPx) : behind, byMm !== 0);
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
