import { memo, useMemo } from 'react';
import { useAxis, useView } from '../../store/react';
import { useReadings } from '../readings';
import type { Line } from './lines';
import { rowsOf } from './rows';
import { rulerTicks } from './ticks';

/** The word at the ruler's left end needs so much, px. */
const CLEAR_PX = 72;

/** The rule that the fulcrum stands on, numbered from the person's reference point. */
export const Ruler = memo(function Ruler({ line }: { readonly line: Line }) {
  const axis = useAxis(line.pick);
  const rows = useView(rowsOf);
  const widthPx = useAxis((state) => state.widthPx);
  const { units, fromMm } = useReadings();
  const origin = line.axis === 0 ? fromMm : 0;
  const ticks = useMemo(
    () => rulerTicks(axis, widthPx, units, origin, line.axis === 0),
    [axis, widthPx, units, origin, line.axis],
  );
  return (
    // biome-ignore lint/a11y/noAriaHiddenOnFocusable: a group in a drawing takes no focus
    <g className="ruler" aria-hidden="true">
      <line x1="0" x2={widthPx} y1={rows.ruler} y2={rows.ruler} />
      {ticks.map(({ xPx, numeral }) => (
        <line key={xPx} x1={xPx} x2={xPx} y1={rows.ruler} y2={rows.ruler + (numeral === null ? 4 : 7)} />
      ))}
      {ticks.map(
        ({ xPx, numeral }) =>
          numeral !== null &&
          xPx > (line.axis === 0 ? CLEAR_PX : 16) &&
          xPx < widthPx - 16 && (
            <text key={xPx} x={xPx} y={rows.numerals} className="figure">
              {numeral}
            </text>
          ),
      )}
    </g>
  );
});
