import type { Stretch } from '../../engine/geometry/types';

const WIDTH = 250;
/** The margin's curve above the strip, and the strip, in the drawing's own units. */
const CURVE_HEIGHT = 30;
const STRIP_TOP = 36;
const STRIP_HEIGHT = 10;
const HEIGHT = 52;
const SAMPLES = 60;

interface RoomStripProps {
  readonly fromMm: number;
  readonly toMm: number;
  readonly allowed: Stretch | null;
  readonly free: readonly Stretch[];
  /** The least margin with the item there, mm. */
  readonly marginAt: (mm: number) => number;
  /** Half the band: more margin there cannot be, mm. */
  readonly mostMm: number;
  readonly hereMm: number;
  readonly bestMm: number | null;
}

/** One line that an item may be moved along: what is allowed, what is free of it, and the margin as a curve. */
export function RoomStrip({ fromMm, toMm, allowed, free, marginAt, mostMm, hereMm, bestMm }: RoomStripProps) {
  const x = (mm: number) => Math.min(WIDTH, Math.max(0, ((mm - fromMm) / (toMm - fromMm)) * WIDTH));
  // The curve's foot is a margin of nothing; what fails runs along just under it.
  const y = (mm: number) =>
    CURVE_HEIGHT - 4 - Math.max(-3, (mm / Math.max(mostMm, 1e-6)) * (CURVE_HEIGHT - 6));
  const points = Array.from({ length: SAMPLES + 1 }, (_, i) => {
    const mm = fromMm + ((toMm - fromMm) * i) / SAMPLES;
    return `${x(mm).toFixed(1)} ${y(marginAt(mm)).toFixed(1)}`;
  });
  const bar = (stretch: Stretch, name: string, top = STRIP_TOP, height = STRIP_HEIGHT) => {
    const [left, right] = [x(stretch.fromMm), x(stretch.toMm)];
    return (
      <rect
        key={`${name} ${stretch.fromMm}`}
        className={name}
        x={left}
        width={Math.max(2, right - left)}
        y={top}
        height={height}
      />
    );
  };
  return (
    <svg className="room-strip" viewBox={`-6 0 ${WIDTH + 12} ${HEIGHT}`} aria-hidden="true">
      <path className="room-zero" d={`M0 ${CURVE_HEIGHT - 4}H${WIDTH}`} />
      <path className="room-margin" d={`M${points.join('L')}`} />
      <rect className="room-all" width={WIDTH} y={STRIP_TOP} height={STRIP_HEIGHT} />
      {allowed && bar(allowed, 'room-allowed')}
      {free.map((stretch) => bar(stretch, 'room-free', STRIP_TOP + 2, STRIP_HEIGHT - 4))}
      {bestMm !== null && bestMm >= fromMm && bestMm <= toMm && (
        <path className="room-best" d={`M${x(bestMm)} 2V${STRIP_TOP + STRIP_HEIGHT + 3}`} />
      )}
      <circle className="room-now" cx={x(hereMm)} cy={y(marginAt(hereMm))} r="2.6" />
      <path className="room-here" d={`M${x(hereMm) - 6} ${STRIP_TOP - 5}h12v5l-4.5 4.5v6h-3v-6l-4.5 -4.5z`} />
    </svg>
  );
}
