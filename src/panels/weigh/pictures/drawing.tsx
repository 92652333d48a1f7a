import type { Corner } from '../../../engine/geometry/polygon';
import { type OutlineView, outlinesOf } from '../../../model/weigh/outlines';
import { useCommitted } from '../../../store/react';
import { Outlines } from '../../outlines/Outlines';
import { useReadings } from '../../readings';

/** Width of every drawing in its own units. */
export const WIDE = 720;
export const EDGE = 28;

/** From mm, to the right and up, to the drawing's own units, down. */
export type Place = (at: Corner) => Corner;

export interface Fitted {
  readonly place: Place;
  readonly perMm: number;
  /** How high what was fitted is, without what stands around it. */
  readonly high: number;
}

/** What is looked at where nothing has been built yet, mm. */
const NOTHING: readonly Corner[] = [
  [0, 0],
  [1000, 200],
];

/** Puts what is to be seen across the width of the drawing, or less where it would be higher than `mostHigh`. */
export function fitted(corners: readonly Corner[], mostHigh: number, top = EDGE): Fitted {
  const seen = corners.length > 0 ? corners : NOTHING;
  const [left, right] = [Math.min(...seen.map(([a]) => a)), Math.max(...seen.map(([a]) => a))];
  const [low, high] = [Math.min(...seen.map(([, b]) => b)), Math.max(...seen.map(([, b]) => b))];
  const perMm = Math.min((WIDE - 2 * EDGE) / Math.max(1, right - left), mostHigh / Math.max(1, high - low));
  const start = (WIDE - (right - left) * perMm) / 2;
  return {
    place: ([a, b]) => [start + (a - left) * perMm, top + (high - b) * perMm],
    perMm,
    high: (high - low) * perMm,
  };
}

/** Every corner of the airframe as a view shows it. */
export function useCorners(view: OutlineView): readonly Corner[] {
  const aircraft = useCommitted((committed) => committed);
  return outlinesOf(aircraft, view).flatMap(({ corners }) => corners);
}

/** The airframe, each corner turned as the aircraft is held and then put on the drawing. */
export function Airframe({ view, at }: { readonly view: OutlineView; readonly at: Place }) {
  const aircraft = useCommitted((committed) => committed);
  return <Outlines outlines={outlinesOf(aircraft, view)} at={at} />;
}

/** Words in the middle below a place, kept on the drawing. */
export const inSight = (x: number) => Math.min(Math.max(x, 110), WIDE - 110);

interface FiguresProps {
  readonly x: number;
  readonly y: number;
  /** Tare apart, g; 0 for nothing read yet. */
  readonly reads: number;
  readonly should: number | null;
  /** Beside the scale, not under it. */
  readonly beside?: boolean;
}

/** What a scale reads, and under it what it should read by the list. */
export function Figures({ x, y, reads, should, beside = false }: FiguresProps) {
  const say = useReadings();
  // By the right edge the figures stand to the left of their scale.
  const toTheLeft = beside && x > WIDE - 150;
  const at = toTheLeft ? x - 44 : beside ? x : inSight(x);
  return (
    <text y={y} className={toTheLeft ? 'to-the-left' : beside ? 'beside' : undefined}>
      {reads > 0 && (
        <tspan x={at} dy="1.15em">
          {say.mass(reads)}
        </tspan>
      )}
      {should !== null && <tspan x={at} dy="1.15em" className="should">{`should ${say.mass(should)}`}</tspan>}
    </text>
  );
}

export type CgKind = 'listed' | 'weighed';

/** A disc in quarters for the list, a ring with a point for what was measured: told apart without colour. */
export function CgMark({ kind, at: [cx, cy] }: { readonly kind: CgKind; readonly at: Corner }) {
  if (kind === 'weighed') {
    return (
      <g className="cg-weighed">
        <circle cx={cx} cy={cy} r="9" />
        <circle cx={cx} cy={cy} r="2" />
      </g>
    );
  }
  return (
    <g className="cg-listed">
      <circle cx={cx} cy={cy} r="5" />
      <path d={`M${cx} ${cy}h5a5 5 0 0 1-5 5zM${cx} ${cy}h-5a5 5 0 0 1 5-5z`} />
    </g>
  );
}

/** What the two marks mean. */
export const CgKey = () => (
  <figcaption>
    {(['listed', 'weighed'] as const).map((kind) => (
      <span key={kind}>
        <svg className="mark-of-cg" viewBox="0 0 20 20" aria-hidden="true">
          <CgMark kind={kind} at={[10, 10]} />
        </svg>
        {kind === 'listed' ? 'CG by the list' : 'CG as measured'}
      </span>
    ))}
  </figcaption>
);
