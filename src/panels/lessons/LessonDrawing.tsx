import '../outlines/outlines.css';
import type { Corner } from '../../engine/geometry/polygon';
import { itemExtent } from '../../model/airframe/extent';
import type { Aircraft } from '../../model/document/types';
import { axesOfView, type OutlineView, outlinesOf } from '../../model/weigh/outlines';
import { Outlines } from '../outlines/Outlines';

const WIDE = 240;
const HIGH = 96;
const EDGE = 6;

interface LessonDrawingProps {
  readonly aircraft: Aircraft;
  readonly view: OutlineView;
}

/** A small drawing of a lesson's aircraft with what it carries, from the side that the lesson looks at. */
export function LessonDrawing({ aircraft, view }: LessonDrawingProps) {
  const outlines = outlinesOf(aircraft, view);
  const [across, up] = axesOfView[view];
  const items = [...aircraft.parts, ...aircraft.tanks].map((item) => {
    const { minMm, maxMm } = itemExtent(item);
    const role = 'role' in item ? item.role : 'fuel';
    return { id: item.id, role, low: [minMm[across], minMm[up]], high: [maxMm[across], maxMm[up]] } as const;
  });
  const corners = [
    ...outlines.flatMap((outline) => outline.corners),
    ...items.flatMap(({ low, high }): readonly Corner[] => [low, high]),
  ];
  const range = (axis: 0 | 1) => {
    const along = corners.map((corner) => corner[axis]);
    return [Math.min(...along), Math.max(...along)] as const;
  };
  const [[left, right], [bottom, top]] = [range(0), range(1)];
  const scale = Math.min((WIDE - 2 * EDGE) / (right - left), (HIGH - 2 * EDGE) / (top - bottom));
  if (!Number.isFinite(scale))
    return <svg className="lesson-drawing" viewBox={`0 0 ${WIDE} ${HIGH}`} aria-hidden="true" />;
  // From above, right is down the page, as the nose is to the left.
  const flip = view === 'top' ? 1 : -1;
  const at = ([x, y]: Corner): Corner => [
    WIDE / 2 + (x - (left + right) / 2) * scale,
    HIGH / 2 + flip * (y - (bottom + top) / 2) * scale,
  ];
  return (
    <svg className="lesson-drawing from-above" viewBox={`0 0 ${WIDE} ${HIGH}`} aria-hidden="true">
      <Outlines outlines={outlines} at={at} />
      {items.map(({ id, role, low, high }) => {
        const [a, b] = [at(low), at(high)];
        return (
          <rect
            key={id}
            data-role={role}
            x={Math.min(a[0], b[0])}
            y={Math.min(a[1], b[1])}
            width={Math.max(3, Math.abs(b[0] - a[0]))}
            height={Math.max(3, Math.abs(b[1] - a[1]))}
            rx="1"
          />
        );
      })}
    </svg>
  );
}
