import { type PointerEvent, type ReactNode, useLayoutEffect, useMemo, useRef } from 'react';
import { shownText } from '../../model/document/names';
import { axisToPx } from '../../store/axisStore';
import { useAxis, useBench, useView } from '../../store/react';
import { setAttribute, setText } from '../drawing';
import { useBenchValue } from '../Live';
import { useReadings } from '../readings';
import { roleLooks } from '../roleLooks';
import { useDrawn } from '../useDrawn';
import { useNudge } from '../useNudge';
import { type Drawn, drawnWeights, fittingScale, isHung, shownWeights, weightAt } from './drawnWeights';
import type { Line } from './lines';
import { rowsOf } from './rows';
import { TiltWords } from './TiltWords';
import { useWeightDrag } from './useWeightDrag';
import { tiltDeg } from './weights';

/** How far from a weight a press still finds it, px. */
const REACH_PX = { mouse: 4, touch: 22 };

/** A hatched square is drawn at its true size, so that the hatch of all is alike. */
function placeSquare(square: SVGRectElement, sizePx: number, footPx: number): void {
  setAttribute(square, 'x', String(-sizePx / 2));
  setAttribute(square, 'y', String(footPx - sizePx));
  setAttribute(square, 'width', String(sizePx));
  setAttribute(square, 'height', String(sizePx));
}

/** The lower edge of a weight, px below the beam. */
const footOf = (drawn: Drawn) => (isHung(drawn) ? drawn.offPx + drawn.sizePx : -drawn.offPx);

const isPlacedAlike = (a: Drawn, b: Drawn) =>
  a.xPx === b.xPx && a.offPx === b.offPx && a.sizePx === b.sizePx && isHung(a) === isHung(b);

/** Its stem, its shape and the sign that it does not fit. */
function placeWeight(element: SVGGElement, drawn: Drawn, beamPx: number): void {
  const { xPx, offPx, sizePx } = drawn;
  const hung = isHung(drawn);
  const footPx = footOf(drawn);
  setAttribute(element, 'transform', `translate(${xPx} ${hung ? beamPx + 4 : beamPx})`);
  const [stem, shape, sign] = element.children;
  setAttribute(stem, 'y2', String(hung ? offPx : -offPx));
  if (shape instanceof SVGRectElement) placeSquare(shape, sizePx, footPx);
  else setAttribute(shape, 'transform', `translate(0 ${footPx}) scale(${sizePx})`);
  setAttribute(sign, 'transform', `translate(0 ${hung ? footPx + 3 : footPx - sizePx - 3})`);
}

/** A small warning sign that touches its weight, from above or from below. */
const fitSigns = { above: 'M0 -10L6 0H-6ZM0 -7V-3', below: 'M0 0L6 10H-6ZM0 3V7' };

interface WeightsProps {
  readonly line: Line;
  readonly children: ReactNode;
  /** Drawn over the weights. */
  readonly over: ReactNode;
}

/** The beam itself. Its weights are made by React and moved by hand, so that a drag renders nothing. */
export function Weights({ line, children, over }: WeightsProps) {
  const bench = useBench();
  const say = useReadings();
  const widthPx = useAxis((state) => state.widthPx);
  const rows = useView(rowsOf);
  const selectedId = useView((view) => view.selectedId);
  const hoveredId = useView((view) => view.hoveredId);
  // As one word: comparing some hundred records with each move of a hand would cost more than all the rest here.
  const seen = useBenchValue((live) =>
    shownWeights(live, line)
      .map(({ key, role }) => `${key} ${role}`)
      .join('\n'),
  );
  // biome-ignore lint/correctness/useExhaustiveDependencies: they are others where they read otherwise
  const made = useMemo(() => shownWeights(bench, line), [bench, line, seen]);
  const elements = useRef(new Map<string, SVGGElement>());
  const tipping = useRef<SVGGElement>(null);
  const fulcrum = useRef<SVGGElement>(null);
  const tag = useRef<SVGTextElement>(null);
  const tagHalfPx = useRef(0);
  const leader = useRef<SVGPathElement>(null);
  const drawn = useRef<readonly Drawn[]>([]);
  /** Where each stands on the page, so that only what moves is written. */
  const placed = useRef(new Map<SVGGElement, Drawn>());
  const scale = useRef(0);
  const nudge = useNudge();

  // What React has made anew is written anew.
  useLayoutEffect(() => placed.current.clear());
  useDrawn(() => {
    const axis = line.pick(bench.axis.getState());
    // While something is in hand sizes must not jump.
    if (scale.current === 0 || bench.drag.api.getState().itemId === null)
      scale.current = fittingScale(shownWeights(bench, line), axis, rows);
    drawn.current = drawnWeights(bench, line, scale.current);
    const { selectedId: selected, hoveredId: hovered } = bench.view.getState();
    const tagged = hovered ?? selected;
    let labelled = false;
    for (const one of drawn.current) {
      const { weight, xPx, sizePx } = one;
      const element = elements.current.get(weight.key);
      if (!element) continue;
      const hung = isHung(one);
      const footPx = footOf(one);
      const last = placed.current.get(element);
      if (!last || !isPlacedAlike(last, one)) placeWeight(element, one, rows.beam);
      placed.current.set(element, one);
      setAttribute(element, 'data-fit', bench.fit.mark(weight.sourceId)?.severity ?? 'fits');
      if (weight.sourceId === tagged && tag.current && !labelled) {
        labelled = true;
        // Measuring lays the page out again, so only a new text is measured.
        const text = `${shownText(weight.name)} · ${say.mass(weight.massG)}`;
        if (tag.current.textContent !== text) {
          tag.current.textContent = text;
          tagHalfPx.current = tag.current.getComputedTextLength() / 2 + 8;
        }
        const half = tagHalfPx.current;
        const width = bench.axis.getState().widthPx;
        setAttribute(tag.current, 'x', String(Math.min(Math.max(xPx, half), Math.max(half, width - half))));
        const topPx = rows.beam + footPx - sizePx;
        setAttribute(
          leader.current,
          'd',
          hung ? '' : `M${xPx} ${rows.tag + 4}V${Math.max(topPx - 2, rows.tag + 4)}`,
        );
      }
    }
    if (!labelled) {
      setText(tag.current, '');
      setAttribute(leader.current, 'd', '');
    }
    const balance = bench.balance.get();
    const pivotMm = line.pivot(balance);
    const cgMm = balance.cgMm?.[line.axis] ?? null;
    const zone = line.zone(bench.document.current(), balance);
    const facing = Math.sign(axis.mmPerPx) || 1;
    const tilt = zone && cgMm !== null ? tiltDeg(cgMm, zone) * facing : 0;
    const pivotPx = pivotMm === null ? 0 : axisToPx(axis, pivotMm);
    setAttribute(tipping.current, 'transform', `rotate(${tilt} ${pivotPx} ${rows.beam})`);
    setAttribute(fulcrum.current, 'transform', `translate(${pivotPx} ${rows.beam + 3})`);
    setAttribute(fulcrum.current, 'visibility', pivotMm === null ? 'hidden' : 'inherit');
  });

  const find = (event: PointerEvent<SVGSVGElement>) => {
    const box = event.currentTarget.getBoundingClientRect();
    const reach = event.pointerType === 'mouse' ? REACH_PX.mouse : REACH_PX.touch;
    return weightAt(drawn.current, rows.beam, event.clientX - box.left, event.clientY - box.top, reach);
  };
  const { onPointerMove, ...drag } = useWeightDrag(line, find);

  return (
    // biome-ignore lint/a11y/useSemanticElements: a drawing is no fieldset
    <svg
      className="beam-picture"
      width="100%"
      height="100%"
      role="group"
      // biome-ignore lint/a11y/noNoninteractiveTabindex: the arrow keys move what is selected
      tabIndex={0}
      aria-label="Beam. Arrow keys move the selected thing, square brackets select the next one."
      {...nudge}
      {...drag}
      onPointerMove={(event) => {
        onPointerMove(event);
        if (event.buttons === 0) bench.view.setState({ hoveredId: find(event) });
      }}
      onPointerLeave={() => bench.view.setState({ hoveredId: null })}
    >
      <defs>
        <pattern id="hatch" width="5" height="5" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
          <rect width="5" height="5" className="hatch-ground" />
          <line x1="0" x2="0" y1="0" y2="5" className="hatch-line" />
        </pattern>
      </defs>
      {children}
      <g ref={tipping} className="tipping">
        <line className="beam-bar" x1="14" x2={widthPx - 14} y1={rows.beam + 1} y2={rows.beam + 1} />
        {made.map(({ key, sourceId, role }) => (
          <g
            key={key}
            data-item={sourceId}
            className="weight"
            data-selected={sourceId === selectedId || undefined}
            data-hovered={sourceId === hoveredId || undefined}
            ref={(element) => {
              if (element) elements.current.set(key, element);
              else elements.current.delete(key);
            }}
          >
            <line className="stem" x1="0" x2="0" y1="0" y2="0" />
            {role === 'airframe' ? (
              <rect className="weight-shape" fill="url(#hatch)" />
            ) : (
              <path
                className="weight-shape"
                d={roleLooks[role].path}
                fill={roleLooks[role].colour}
                fillRule="evenodd"
              />
            )}
            <path className="weight-fit" d={role === 'airframe' ? fitSigns.below : fitSigns.above} />
          </g>
        ))}
      </g>
      <g ref={fulcrum} className="fulcrum">
        <path d={`M0 0L15 ${rows.ruler - rows.beam - 3}H-15Z`} />
      </g>
      {over}
      <path ref={leader} className="leader" />
      <text ref={tag} className="weight-tag" y={rows.tag} />
      <TiltWords line={line} widthPx={widthPx} />
    </svg>
  );
}
