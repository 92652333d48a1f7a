import { useLayoutEffect, useRef } from 'react';
import { shownText } from '../../model/document/names';
import { type Axis, axisToPx } from '../../store/axisStore';
import type { Bench } from '../../store/bench';
import { useBench, useView } from '../../store/react';
import { setAttribute, setText } from '../drawing';
import { useReadings } from '../readings';
import { useDrawn } from '../useDrawn';
import { type Drawn, drawnWeights, fittingScale, isHung, shownWeights, weightAt } from './drawnWeights';
import type { Line } from './lines';
import { footOf, isPlacedAlike, placeWeight } from './placeWeight';
import { type Rows, rowsOf } from './rows';
import { tiltDeg } from './weights';

/** The drawing of the weights: its elements are made by React and written here, so that a drag renders nothing. */
export function useWeightPicture(line: Line) {
  const bench = useBench();
  const say = useReadings();
  const rows = useView(rowsOf);
  const elements = useRef(new Map<string, SVGGElement>());
  const tipping = useRef<SVGGElement>(null);
  const fulcrum = useRef<SVGPathElement>(null);
  const tag = useRef<SVGTextElement>(null);
  const leader = useRef<SVGPathElement>(null);
  const tagHalfPx = useRef(0);
  const drawn = useRef<readonly Drawn[]>([]);
  /** Where each stands on the page, so that only what moves is written. */
  const placed = useRef(new Map<SVGGElement, Drawn>());
  const marked = useRef(new Map<SVGGElement, string>());
  const scale = useRef(0);

  const placeAll = () => {
    for (const shown of drawn.current) {
      const { key, sourceId } = shown.weight;
      const element = elements.current.get(key);
      if (!element) continue;
      const last = placed.current.get(element);
      if (!last || !isPlacedAlike(last, shown)) placeWeight(element, shown, rows.beam);
      placed.current.set(element, shown);
      const fit = bench.fit.mark(sourceId)?.severity ?? 'fits';
      if (marked.current.get(element) !== fit) setAttribute(element, 'data-fit', fit);
      marked.current.set(element, fit);
    }
  };
  /** The name of what is pointed at or selected, over its weight. */
  const writeTag = () => {
    const { selectedId, hoveredId } = bench.view.getState();
    const tagged = hoveredId ?? selectedId;
    const shown = drawn.current.find(
      ({ weight }) => weight.sourceId === tagged && elements.current.has(weight.key),
    );
    if (!shown || !tag.current) {
      setText(tag.current, '');
      setAttribute(leader.current, 'd', '');
      return;
    }
    // Measuring lays the page out again, so only a new text is measured.
    const text = `${shownText(shown.weight.name)} · ${say.mass(shown.weight.massG)}`;
    if (tag.current.textContent !== text) {
      tag.current.textContent = text;
      tagHalfPx.current = tag.current.getComputedTextLength() / 2 + 8;
    }
    const half = tagHalfPx.current;
    const { widthPx } = bench.axis.getState();
    const xPx = Math.min(Math.max(shown.xPx, half), Math.max(half, widthPx - half));
    setAttribute(tag.current, 'x', String(xPx));
    setAttribute(leader.current, 'd', leaderTo(shown, rows));
  };

  // What React has made anew is written anew.
  useLayoutEffect(() => {
    placed.current.clear();
    marked.current.clear();
  });
  useDrawn(() => {
    const axis = line.pick(bench.axis.getState());
    // While something is in hand sizes must not jump.
    if (scale.current === 0 || bench.drag.api.getState().itemId === null)
      scale.current = fittingScale(shownWeights(bench, line), axis, rows);
    drawn.current = drawnWeights(bench, line, scale.current);
    placeAll();
    writeTag();
    const { tilt, pivotPx } = tippingOf(bench, line, axis);
    // A level beam is turned about nothing: another pivot would lay out all that hangs from it.
    const turn = tilt === 0 ? 'rotate(0)' : `rotate(${tilt} ${pivotPx ?? 0} ${rows.beam})`;
    setAttribute(tipping.current, 'transform', turn);
    const foot = `l15 ${rows.ruler - rows.beam - 3}h-30Z`;
    setAttribute(fulcrum.current, 'd', `M${pivotPx ?? 0} ${rows.beam + 3}${foot}`);
    setAttribute(fulcrum.current, 'visibility', pivotPx === null ? 'hidden' : 'inherit');
  });

  return {
    tipping,
    fulcrum,
    tag,
    leader,
    /** A weight's element, as React makes it. */
    take: (key: string) => (element: SVGGElement | null) => {
      if (element) elements.current.set(key, element);
      else elements.current.delete(key);
    },
    /** Whose weight a press finds, px of the picture. */
    at: (xPx: number, yPx: number, reachPx: number) => weightAt(drawn.current, rows.beam, xPx, yPx, reachPx),
  };
}

/** From a weight that stands on the beam up to its name. */
function leaderTo(shown: Drawn, rows: Rows): string {
  if (isHung(shown)) return '';
  const topPx = rows.beam + footOf(shown) - shown.sizePx;
  return `M${shown.xPx} ${rows.tag + 4}V${Math.max(topPx - 2, rows.tag + 4)}`;
}

/** How the beam hangs, degrees clockwise, and the column it hangs from; none where nothing holds it. */
function tippingOf(bench: Bench, line: Line, axis: Axis): { tilt: number; pivotPx: number | null } {
  const balance = bench.balance.get();
  const pivotMm = line.pivot(balance);
  const cgMm = balance.cgMm?.[line.axis] ?? null;
  const zone = line.zone(bench.document.current(), balance);
  const facing = Math.sign(axis.mmPerPx) || 1;
  return {
    tilt: zone && cgMm !== null ? tiltDeg(cgMm, zone) * facing : 0,
    pivotPx: pivotMm === null ? null : axisToPx(axis, pivotMm),
  };
}
