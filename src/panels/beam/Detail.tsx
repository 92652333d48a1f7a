import { useRef } from 'react';
import { type Axis, axisToPx } from '../../store/axisStore';
import { useBench } from '../../store/react';
import { QuarteredDisc } from '../icons';
import { useBenchValue } from '../Live';
import { useReadings } from '../readings';
import { useDrawn } from '../useDrawn';
import { type Line, pathThrough, rows } from './lines';
import { MarginEnds } from './MarginPlot';
import { Spread } from './Spread';
import { detailFactor } from './ticks';

const WIDTH_PX = 176;
/** What the detail takes up with its caption, px. */
export const DETAIL_PX = WIDTH_PX + 136;
/** A strip narrower than this has no room for it, px. */
export const LEAST_DETAIL_PX = 560;
const HEIGHT_PX = rows.travelBottom - rows.travelTop;

/** Full at the top, dry at the foot. */
const toDetailY = (fraction: number) => (1 - fraction) * HEIGHT_PX;

interface DetailProps {
  readonly line: Line;
  readonly axis: Axis;
  readonly widthPx: number;
  /** Names the margins at either end too, where they have no picture of their own. */
  readonly margins: boolean;
}

/** The CG travel enlarged along the axis only, and saying so, when at true scale its shape cannot be seen. */
export function Detail({ line, axis, widthPx, margins }: DetailProps) {
  const bench = useBench();
  const say = useReadings();
  const curve = useRef<SVGPathElement>(null);
  const zone = useRef<SVGRectElement>(null);
  const limits = useRef<SVGPathElement>(null);
  const disc = useRef<SVGGElement>(null);
  const ends = useRef<SVGTextElement>(null);

  /** The travel's ends, and the stretch shown: the travel with the limits that lie near it, mm. */
  const stretch = () => {
    const balance = bench.balance.get();
    const at = balance.travel.map((point) => point.cgMm[line.axis]);
    // Nothing aboard has no travel; the drawing is then on its way out.
    const [lowMm, highMm] = at.length > 0 ? [Math.min(...at), Math.max(...at)] : [0, 0];
    const zone = line.zone(bench.document.current(), balance);
    const limits = zone ? [zone.forwardMm, zone.aftMm] : [];
    const reachMm = Math.max(highMm - lowMm, 2) * 2;
    const near = limits.filter((mm) => mm > lowMm - reachMm && mm < highMm + reachMm);
    const [fromMm, toMm] = [Math.min(lowMm, ...near), Math.max(highMm, ...near)];
    return { lowMm, highMm, stretchMm: toMm - fromMm, middleMm: (fromMm + toMm) / 2 };
  };
  const factor = useBenchValue(() => {
    return detailFactor(axis, stretch().stretchMm, WIDTH_PX - 32);
  });
  const onLeft = useBenchValue(() => axisToPx(axis, stretch().middleMm) > widthPx / 2);

  useDrawn(() => {
    const { travel, cgMm } = bench.balance.get();
    const live = line.pick(bench.axis.getState());
    const { lowMm, highMm, middleMm } = stretch();
    const x = (mm: number) => WIDTH_PX / 2 + ((mm - middleMm) / live.mmPerPx) * factor;
    const y = toDetailY;
    curve.current?.setAttribute(
      'd',
      pathThrough(travel.map((p) => `${x(p.cgMm[line.axis])} ${y(p.fuelFraction)}`)),
    );
    const band = line.zone(bench.document.current(), bench.balance.get());
    const edges = band ? [x(band.forwardMm), x(band.aftMm)].sort((a, b) => a - b) : [0, 0];
    const [from, to] = edges.map((px) => Math.min(WIDTH_PX, Math.max(0, px)));
    zone.current?.setAttribute('x', String(from ?? 0));
    zone.current?.setAttribute('width', String((to ?? 0) - (from ?? 0)));
    const seen = edges.filter((px) => band && px > 0 && px < WIDTH_PX);
    limits.current?.setAttribute('d', seen.map((px) => `M${px} 0V${HEIGHT_PX}`).join(''));
    if (cgMm) {
      const at = `translate(${x(cgMm[line.axis])} ${y(bench.view.getState().fuelFraction)}) scale(6)`;
      disc.current?.setAttribute('transform', at);
    }
    if (ends.current) ends.current.textContent = `${say.lengthFine(highMm - lowMm)} of travel`;
  });

  const toPx = (mm: number) => {
    const live = line.pick(bench.axis.getState());
    return WIDTH_PX / 2 + ((mm - stretch().middleMm) / live.mmPerPx) * factor;
  };
  if (factor < 2 || widthPx < LEAST_DETAIL_PX) return null;
  const left = onLeft ? 76 : widthPx - WIDTH_PX - 16;
  return (
    // biome-ignore lint/a11y/noAriaHiddenOnFocusable: a group in a drawing takes no focus
    <g className="detail" transform={`translate(${left} ${rows.travelTop})`} aria-hidden="true">
      <clipPath id="detail-edge">
        <rect y="-6" width={WIDTH_PX} height={HEIGHT_PX + 12} />
      </clipPath>
      <rect className="detail-paper" width={WIDTH_PX} height={HEIGHT_PX} />
      <rect ref={zone} className="detail-zone" height={HEIGHT_PX} />
      <g clipPath="url(#detail-edge)">
        <Spread line={line} x={toPx} y={toDetailY} />
        <path ref={curve} className="travel-curve" />
        <g ref={disc}>
          <QuarteredDisc />
        </g>
      </g>
      <rect className="detail-frame" width={WIDTH_PX} height={HEIGHT_PX} />
      <path ref={limits} className="detail-limits" />
      <g textAnchor={onLeft ? 'start' : 'end'} transform={`translate(${onLeft ? WIDTH_PX + 8 : -8} 0)`}>
        {margins && <MarginEnds />}
        <text y="24">enlarged ×{factor}</text>
        <text y="40">along the axis</text>
        <text ref={ends} y="56" />
      </g>
    </g>
  );
}
