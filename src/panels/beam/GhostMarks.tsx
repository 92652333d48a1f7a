import { axisToPx } from '../../store/axisStore';
import { useAxis, useCommitted, usePlace, useView } from '../../store/react';
import { roleLooks } from '../roleLooks';
import type { Line } from './lines';
import { rowsOf } from './rows';

/** A ghost's outline on the beam, px across. */
const SIZE_PX = 24;
/** How high the way from the old place to the new one bends over the beam, px. */
const BEND_PX = 26;

/** Where an arrangement that is only looked at would put things on the beam, and where it would rest. */
export function GhostMarks({ line }: { readonly line: Line }) {
  const axis = useAxis(line.pick);
  const rows = useView(rowsOf);
  const ghost = usePlace((place) => place.ghost);
  const parts = useCommitted((aircraft) => aircraft.parts);
  const tanks = useCommitted((aircraft) => aircraft.tanks);
  if (!ghost) return null;
  const foot = rows.beam - SIZE_PX;
  return (
    // biome-ignore lint/a11y/noAriaHiddenOnFocusable: a group in a drawing takes no focus
    <g className="ghost" data-testid="ghost" aria-hidden="true">
      {ghost.parts.map(({ id, role, positionMm }) => {
        const x = axisToPx(axis, positionMm[line.axis]);
        const now = [...parts, ...tanks].find((item) => item.id === id)?.positionMm;
        const from = now ? axisToPx(axis, now[line.axis]) : x;
        const way = Math.sign(x - from);
        return (
          <g key={id}>
            <path
              className="ghost-outline"
              d={roleLooks[role].path}
              transform={`translate(${x} ${rows.beam}) scale(${SIZE_PX})`}
              vectorEffect="non-scaling-stroke"
            />
            {Math.abs(x - from) > 4 && (
              <path
                className="ghost-way"
                d={`M${from} ${foot}Q${(from + x) / 2} ${foot - BEND_PX} ${x} ${foot - 2}m${-4 * way - 3} -6l${4 * way + 3} 6l${-7 * way} 1`}
              />
            )}
          </g>
        );
      })}
      {ghost.cgMm && line.axis === 0 && (
        <path
          className="ghost-fulcrum"
          transform={`translate(${axisToPx(axis, ghost.cgMm[0])} ${rows.beam + 3})`}
          d={`M0 0L15 ${rows.ruler - rows.beam - 3}H-15Z`}
        />
      )}
    </g>
  );
}
