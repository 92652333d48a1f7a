import { wingPlanform } from '../../model/stability/band';
import { type Axis, axisToPx } from '../../store/axisStore';
import { useAircraft, useAxis, useView } from '../../store/react';
import { stationLine } from './lines';
import { macMarks } from './macScale';
import { rowsOf } from './rows';

const BAR_PX = 5;

/** Under the ruler, where the mean chord lies, a second scale in % MAC. */
export function MacScale() {
  const mac = useAircraft(wingPlanform);
  const axis: Axis = useAxis(stationLine.pick);
  const widthPx = useAxis((state) => state.widthPx);
  const rows = useView(rowsOf);
  if (!mac || widthPx <= 0) return null;
  const from = axisToPx(axis, mac.lemacMm);
  const to = axisToPx(axis, mac.lemacMm + mac.macMm);
  const quarter = (to - from) / 4;
  const marks = macMarks(mac, axis);
  return (
    // biome-ignore lint/a11y/noAriaHiddenOnFocusable: a group in a drawing takes no focus
    <g className="mac-scale" aria-hidden="true">
      <rect className="mac-bar" x={from} y={rows.ruler - BAR_PX} width={to - from} height={BAR_PX} />
      {[0, 2].map((part) => (
        <rect
          key={part}
          className="mac-part"
          x={from + part * quarter}
          y={rows.ruler - BAR_PX}
          width={quarter}
          height={BAR_PX}
        />
      ))}
      <path
        className="mac-ticks"
        d={marks.map(({ xPx, numeral }) => `M${xPx} ${rows.ruler}v${numeral ? 4 : 2.5}`).join('')}
      />
      {marks.map(
        ({ pct, xPx, numeral }) =>
          numeral && (
            <text key={pct} x={xPx} y={rows.ruler - 4} textAnchor="middle" className="figure">
              {pct}
            </text>
          ),
      )}
      <text x={Math.max(from, 0) - 14} y={rows.ruler - 4} textAnchor="end">
        % MAC
      </text>
    </g>
  );
}
