import { type PointerEvent, type ReactNode, useRef } from 'react';
import { useAxis, useBench, useView } from '../../store/react';
import { useBenchValue } from '../Live';
import { roleLooks } from '../roleLooks';
import { useNudge } from '../useNudge';
import { shownWeights } from './drawnWeights';
import type { Line } from './lines';
import { rowsOf } from './rows';
import { TiltWords } from './TiltWords';
import { useWeightDrag } from './useWeightDrag';
import { useWeightPicture } from './useWeightPicture';
import type { Weight } from './weights';

/** How far from a weight a press still finds it, px. */
const REACH_PX = { mouse: 4, touch: 22 };

interface WeightsProps {
  readonly line: Line;
  readonly children: ReactNode;
  /** Drawn over the weights. */
  readonly over: ReactNode;
}

/** What stands on the beam, the very same list while each has the same role: where it stands is written by hand. */
function useMadeWeights(line: Line): readonly Weight[] {
  const kept = useRef<{ readonly weights: readonly Weight[]; readonly times: number }>({
    weights: [],
    times: 0,
  });
  useBenchValue((bench) => {
    const weights = shownWeights(bench, line);
    const last = kept.current.weights;
    const alike = ({ key, role }: Weight, i: number) => key === last[i]?.key && role === last[i]?.role;
    if (weights.length !== last.length || !weights.every(alike))
      kept.current = { weights, times: kept.current.times + 1 };
    return kept.current.times;
  });
  return kept.current.weights;
}

/** The beam itself. Its weights are made by React and moved by hand, so that a drag renders nothing. */
export function Weights({ line, children, over }: WeightsProps) {
  const bench = useBench();
  const widthPx = useAxis((state) => state.widthPx);
  const rows = useView(rowsOf);
  const selectedId = useView((view) => view.selectedId);
  const hoveredId = useView((view) => view.hoveredId);
  const made = useMadeWeights(line);
  const { take, tipping, fulcrum, tag, leader, at } = useWeightPicture(line);
  const nudge = useNudge();

  const find = (event: PointerEvent<SVGSVGElement>) => {
    const box = event.currentTarget.getBoundingClientRect();
    const reach = event.pointerType === 'mouse' ? REACH_PX.mouse : REACH_PX.touch;
    return at(event.clientX - box.left, event.clientY - box.top, reach);
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
            ref={take(key)}
          >
            <path className="stem" />
            {role === 'airframe' ? (
              <rect className="weight-shape" fill="url(#hatch)" />
            ) : (
              <path className="weight-shape" fill={roleLooks[role].colour} fillRule="evenodd" />
            )}
            <path className="weight-fit" />
          </g>
        ))}
      </g>
      <path ref={fulcrum} className="fulcrum" />
      {over}
      <path ref={leader} className="leader" />
      <text ref={tag} className="weight-tag" y={rows.tag} />
      <TiltWords line={line} widthPx={widthPx} />
    </svg>
  );
}
