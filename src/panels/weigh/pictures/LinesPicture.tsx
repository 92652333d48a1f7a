import type { Corner } from '../../../engine/geometry/polygon';
import { axesOfView } from '../../../model/weigh/outlines';
import { readingOf } from '../../../model/weigh/weighIns';
import { useCommitted } from '../../../store/react';
import { useHeld } from '../useHeld';
import { useListedCg } from '../useListedCg';
import { Airframe, CgKey, CgMark, EDGE, fitted, useCorners, WIDE } from './drawing';

const MOST_HIGH = 420;

/** The lines drawn across the aircraft, and where they cross. */
export function LinesPicture({ id }: { readonly id: string }) {
  const reading = useCommitted((aircraft) => readingOf(aircraft, id, 'lines'));
  const view = reading?.view ?? 'side';
  const held = useHeld(id);
  const corners = useCorners(view);
  const [right, up] = axesOfView[view];
  const listed = useListedCg(id);
  const { place, high } = fitted(corners, MOST_HIGH);
  if (!reading) return null;
  const weighed = held?.ok ? held.weighed : null;
  const across = view === 'side' ? weighed?.waterlineMm : weighed?.buttlineMm;
  return (
    <figure className="scales-picture">
      <svg
        viewBox={`0 0 ${WIDE} ${high + 2 * EDGE}`}
        role="img"
        aria-label={`The lines on the aircraft, seen from ${view === 'side' ? 'the left' : 'above'}`}
      >
        <Airframe view={view} at={place} />
        {reading.lines.map(({ name, throughMm, andMm }, at) => {
          const from = place([throughMm[right], throughMm[up]]);
          const to = place([andMm[right], andMm[up]]);
          // Nobody has measured it yet.
          if (from.join() === to.join()) return null;
          return (
            <g key={at} className="cg-line">
              <path d={acrossAll(from, to)} />
              {[from, to].map(([x, y], end) => (
                <circle key={end} cx={x} cy={y} r="4" />
              ))}
              <title>{name}</title>
            </g>
          );
        })}
        {listed && <CgMark kind="listed" at={place([listed[right], listed[up]])} />}
        {weighed && across && <CgMark kind="weighed" at={place([weighed.stationMm.value, across.value])} />}
      </svg>
      <CgKey />
    </figure>
  );
}

/** The line through two places, from edge to edge of the drawing. */
function acrossAll([x1, y1]: Corner, [x2, y2]: Corner): string {
  const long = Math.hypot(x2 - x1, y2 - y1);
  const [dx, dy] = [((x2 - x1) / long) * 2 * WIDE, ((y2 - y1) / long) * 2 * WIDE];
  return `M${x1 - dx} ${y1 - dy}L${x2 + dx} ${y2 + dy}`;
}
