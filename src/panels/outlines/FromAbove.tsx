import './outlines.css';
import type { Corner } from '../../engine/geometry/polygon';
import type { Outline } from '../../model/weigh/outlines';
import { Outlines } from './Outlines';

interface FromAboveProps {
  readonly outlines: readonly Outline[];
  readonly wide: number;
  readonly high: number;
}

const EDGE = 3;

/** A small picture of an airframe from above, nose up, as large as it just fits. Nothing built yet is an empty sheet. */
export function FromAbove({ outlines, wide, high }: FromAboveProps) {
  const corners = outlines.flatMap((outline) => outline.corners);
  const range = (axis: 0 | 1) => {
    const along = corners.map((corner) => corner[axis]);
    return [Math.min(...along), Math.max(...along)] as const;
  };
  const [[front, rear], [left, right]] = [range(0), range(1)];
  const scale = Math.min((wide - 2 * EDGE) / (right - left), (high - 2 * EDGE) / (rear - front));
  const at = ([station, buttline]: Corner): Corner => [
    wide / 2 + (buttline - (left + right) / 2) * scale,
    high / 2 + (station - (front + rear) / 2) * scale,
  ];
  return (
    <svg className="from-above" viewBox={`0 0 ${wide} ${high}`} aria-hidden="true">
      {Number.isFinite(scale) && <Outlines outlines={outlines} at={at} />}
    </svg>
  );
}
