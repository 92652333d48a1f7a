import './traceHand.css';
import { useEffect, useRef, useState } from 'react';
import type { Elevation } from '../../interaction/elevation';
import { levelledTrace, movedTrace, placeAtPx, pxOfPlace, type ViewPlace } from '../../interaction/trace';
import { useAxis, useBench, useTrace, useView } from '../../store/react';
import type { TraceStep } from '../../store/traceStore';
import { useTraceMove } from './useTraceMove';

/** Takes the stage for as long as a drawing is being laid: a cross to point with, or the drawing in hand. */
export function TraceHand() {
  const step = useTrace((trace) => (trace.shown() ? trace.api.getState().step : null));
  const view = useView((state) => state.view);
  if (step === null || view === 'free') return null;
  return step === 'move' ? <Mover view={view} /> : <Pointer key={step} step={step} view={view} />;
}

const WAYS: Readonly<Record<string, ViewPlace>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, -1],
  ArrowDown: [0, 1],
};

/** The element has the focus while it is there, so that keys do the same as the mouse. */
function useFocused() {
  const element = useRef<HTMLDivElement>(null);
  useEffect(() => element.current?.focus({ preventScroll: true }), []);
  return element;
}

const within = (at: number, most: number): number => Math.min(most, Math.max(0, at));

interface PointerProps {
  readonly step: Exclude<TraceStep, 'move'>;
  readonly view: Elevation;
}

function Pointer({ step, view }: PointerProps) {
  const { trace } = useBench();
  const axes = useAxis((state) => state);
  const points = useTrace(({ api }) => api.getState().points);
  const element = useFocused();
  const [cross, setCross] = useState<ViewPlace>([axes.widthPx / 2, axes.heightPx / 2]);
  const full = points.length === 2;
  const take = (px: ViewPlace) => {
    if (full) return;
    const at = placeAtPx(axes, view, px);
    trace.point(at);
    const [from] = points;
    const laid = trace.shown();
    if (step !== 'level' || !from || !laid) return;
    if (trace.put('Square the drawing', levelledTrace(laid.trace, [from, at]))) trace.begin(null);
  };
  const placeOf = (event: { clientX: number; clientY: number; currentTarget: HTMLElement }): ViewPlace => {
    const { left, top } = event.currentTarget.getBoundingClientRect();
    return [event.clientX - left, event.clientY - top];
  };
  const marks = points.map((at) => pxOfPlace(axes, view, at));
  const line = [...marks, ...(full ? [] : [cross])];
  return (
    <div
      ref={element}
      className="trace-hand"
      data-testid="trace-hand"
      role="application"
      // biome-ignore lint/a11y/noNoninteractiveTabindex: arrows move its cross, Enter sets a point
      tabIndex={0}
      aria-label="Cross on the drawing. Arrow keys move it, with Shift farther; Enter sets a point, Escape leaves."
      onPointerDown={(event) => {
        event.currentTarget.setPointerCapture(event.pointerId);
        setCross(placeOf(event));
      }}
      onPointerMove={(event) => setCross(placeOf(event))}
      onPointerUp={(event) => event.button === 0 && take(placeOf(event))}
      onKeyDown={(event) => {
        const way = WAYS[event.key];
        const px = event.shiftKey ? 10 : 1;
        if (way)
          setCross(([x, y]) => [
            within(x + way[0] * px, axes.widthPx),
            within(y + way[1] * px, axes.heightPx),
          ]);
        else if (event.key === 'Enter' || event.key === ' ') take(cross);
        else if (event.key === 'Escape') trace.begin(null);
        else return;
        event.preventDefault();
        event.stopPropagation();
      }}
    >
      <svg aria-hidden="true">
        {['halo', 'line'].map((look) => (
          <g key={look} className={`trace-${look}`}>
            {marks.length > 0 && <polyline points={line.map((at) => at.join(',')).join(' ')} />}
            {marks.map(([x, y]) => (
              <circle key={`${x} ${y}`} cx={x} cy={y} r={5} />
            ))}
            {!full && (
              <path d={`M${cross[0] - 14} ${cross[1]}h10m8 0h10M${cross[0]} ${cross[1] - 14}v10m0 8v10`} />
            )}
          </g>
        ))}
      </svg>
    </div>
  );
}

function Mover({ view }: { readonly view: Elevation }) {
  const { trace } = useBench();
  const element = useFocused();
  const move = useTraceMove(view, (by) => {
    const laid = trace.shown();
    return laid ? movedTrace(laid.trace, by) : '';
  });
  return (
    <div
      ref={element}
      className="trace-hand moving"
      data-testid="trace-hand"
      role="application"
      // biome-ignore lint/a11y/noNoninteractiveTabindex: arrows move the drawing
      tabIndex={0}
      aria-label="The drawing. Arrow keys move it by 1 mm, with Shift by 10 mm; Escape leaves."
      {...move}
    />
  );
}
