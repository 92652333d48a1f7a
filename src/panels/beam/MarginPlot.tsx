import { useRef } from 'react';
import { formatNumber } from '../../model/units';
import { useBench, useStability } from '../../store/react';
import { useBenchValue } from '../Live';
import { useDrawn } from '../useDrawn';
import { pathThrough, rows } from './lines';
import { marginSpan, marginToPx } from './marginCurve';

const WIDTH_PX = 104;
const HEIGHT_PX = rows.travelBottom - rows.travelTop;

const pct = (value: number | undefined) => (value === undefined ? '–' : `${formatNumber(value, 1)} %`);

/** The estimated static margin over the burn, on the same rows as the travel: aft is to the right here too. */
export function MarginPlot({ leftPx }: { readonly leftPx: number }) {
  const bench = useBench();
  const curve = useRef<SVGPathElement>(null);
  const zero = useRef<SVGPathElement>(null);
  const dot = useRef<SVGCircleElement>(null);
  const fresh = useStability((stability) => stability.fresh);
  const most = useBenchValue(({ balance }) => marginSpan(balance.get().travelMarginsPct).mostPct);
  const zeroPx = useBenchValue(({ balance }) =>
    marginToPx(marginSpan(balance.get().travelMarginsPct), 0, WIDTH_PX),
  );
  const full = useBenchValue(({ balance }) => pct(balance.get().travelMarginsPct[0]));
  const now = useBenchValue(({ balance }) => pct(balance.get().margin?.nowPct));
  const dry = useBenchValue(({ balance }) => pct(balance.get().travelMarginsPct.at(-1)));

  useDrawn(() => {
    const { travel, travelMarginsPct, margin } = bench.balance.get();
    const span = marginSpan(travelMarginsPct);
    const x = (value: number) => marginToPx(span, value, WIDTH_PX);
    const y = (fraction: number) => (1 - fraction) * HEIGHT_PX;
    const points = travel.map((point, i) => `${x(travelMarginsPct[i] ?? 0)} ${y(point.fuelFraction)}`);
    curve.current?.setAttribute('d', pathThrough(points));
    zero.current?.setAttribute('d', `M${x(0)} 0V${HEIGHT_PX}`);
    if (!margin) return;
    dot.current?.setAttribute('cx', String(x(margin.nowPct)));
    dot.current?.setAttribute('cy', String(y(bench.view.getState().fuelFraction)));
  });

  return (
    // biome-ignore lint/a11y/noAriaHiddenOnFocusable: a group in a drawing takes no focus
    <g
      className="margin-plot"
      data-fresh={fresh}
      transform={`translate(${leftPx} ${rows.travelTop})`}
      aria-hidden="true"
    >
      <rect width={WIDTH_PX} height={HEIGHT_PX} />
      <path ref={zero} className="margin-zero" />
      <path ref={curve} className="margin-curve" />
      <circle ref={dot} className="margin-now" r="4" />
      <text x="4" y={HEIGHT_PX - 5} className="margin-end">
        {most} %
      </text>
      <text x={Math.min(zeroPx, WIDTH_PX) - 4} y={HEIGHT_PX - 5} textAnchor="end" className="margin-end">
        NP
      </text>
      <g transform={`translate(${WIDTH_PX + 8} 0)`}>
        <text y="5">est. margin</text>
        <text y="24">{full} full</text>
        <text y="42">{now} now</text>
        <text y="60">{dry} dry</text>
      </g>
    </g>
  );
}

/** The margins full and dry in a few words, where the picture has no room. */
export function MarginEnds() {
  const fresh = useStability((stability) => stability.fresh);
  const words = useBenchValue(({ balance }) => {
    const margins = balance.get().travelMarginsPct;
    const [full, dry] = [margins[0], margins.at(-1)];
    if (full === undefined || dry === undefined) return '';
    return `margin est. ${formatNumber(full, 1)} to ${formatNumber(dry, 1)} %`;
  });
  return (
    <text className="margin-ends" data-fresh={fresh} y="8">
      {words}
    </text>
  );
}
