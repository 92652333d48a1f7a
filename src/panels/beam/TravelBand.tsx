import { useRef } from 'react';
import { type Axis, axisToPx } from '../../store/axisStore';
import type { Bench } from '../../store/bench';
import { useAxis, useBench, useView } from '../../store/react';
import { setAttribute, setText } from '../drawing';
import { useReadings } from '../readings';
import { useDrawn } from '../useDrawn';
import type { Line } from './lines';
import { rowsOf } from './rows';
import { type FigurePlace, limitPlaces } from './travelLimits';
import { type TravelScale, travelPx } from './travelScale';

/** A figure of the limits, px; measuring would lay the page out again. */
const CHARACTER_PX = 7.6;

interface TravelBandProps {
  readonly line: Line;
  readonly scaleOf: (bench: Bench) => TravelScale;
}

/**
 * The band behind the travel, with its limits, and the funnel that leads down from the same band on
 * the beam: so the eye sees that the picture is that strip enlarged.
 */
export function TravelBand({ line, scaleOf }: TravelBandProps) {
  const bench = useBench();
  const say = useReadings();
  const rows = useView(rowsOf);
  const widthPx = useAxis((state) => state.widthPx);
  const band = useRef<SVGRectElement>(null);
  const edges = useRef<SVGPathElement>(null);
  const funnel = useRef<SVGPathElement>(null);
  const fore = useRef<SVGTextElement>(null);
  const aft = useRef<SVGTextElement>(null);
  const inside = (px: number) => Math.min(widthPx, Math.max(0, px));

  useDrawn(() => {
    const zone = line.zone(bench.document.current(), bench.balance.get());
    const scale = scaleOf(bench);
    const axis: Axis = line.pick(bench.axis.getState());
    const limits = zone
      ? [zone.forwardMm, zone.aftMm].sort((a, b) => travelPx(scale, a) - travelPx(scale, b))
      : [];
    const [lowMm, highMm] = limits;
    const isShown = lowMm !== undefined && highMm !== undefined;
    const [left, right] = isShown ? [travelPx(scale, lowMm), travelPx(scale, highMm)] : [0, 0];
    const [from, to] = [inside(left), inside(right)];
    setAttribute(band.current, 'x', String(from));
    setAttribute(band.current, 'width', String(Math.max(0, to - from)));
    const seen = [left, right].filter((px) => isShown && px > 0 && px < widthPx);
    setAttribute(
      edges.current,
      'd',
      seen.map((px) => `M${px} ${rows.travelTop - 6}V${rows.travelHeight}`).join(''),
    );
    const [trueLeft, trueRight] = isShown
      ? [inside(axisToPx(axis, lowMm)), inside(axisToPx(axis, highMm))]
      : [0, 0];
    setAttribute(
      funnel.current,
      'd',
      isShown && scale.factor > 1 && to > from
        ? `M${trueLeft} 0H${Math.max(trueRight, trueLeft + 1)}L${to} ${rows.travelTop - 6}H${from}Z`
        : '',
    );
    const lateral = line.axis === 1;
    const name = (mm: number) => (lateral ? say.offset(mm) : say.station(mm));
    const [foreWords, aftWords] = [
      isShown && left >= 0 ? name(lowMm) : '',
      isShown && right <= widthPx ? name(highMm) : '',
    ];
    const end = bench.balance.get().travel.at(-1);
    const [forePlace, aftPlace] = limitPlaces({
      fromPx: from,
      toPx: to,
      pictureWidthPx: widthPx,
      foreWidthPx: foreWords.length * CHARACTER_PX,
      aftWidthPx: aftWords.length * CHARACTER_PX,
      dryPx: end ? travelPx(scale, end.cgMm[line.axis]) : null,
    });
    place(fore.current, foreWords, forePlace);
    place(aft.current, aftWords, aftPlace);
  });

  return (
    <g className="travel-band">
      <path ref={funnel} className="funnel" />
      <rect ref={band} y={rows.travelTop - 6} height={rows.travelHeight - rows.travelTop + 6} />
      <path ref={edges} />
      <text ref={fore} y={rows.travelHeight - 5} className="figure" />
      <text ref={aft} y={rows.travelHeight - 5} className="figure" />
    </g>
  );
}

function place(text: SVGTextElement | null, words: string, { xPx, anchor }: FigurePlace): void {
  if (!text) return;
  setText(text, words);
  setAttribute(text, 'x', String(xPx));
  setAttribute(text, 'text-anchor', anchor);
}
