import type { Corner } from '../../engine/geometry/polygon';
import { alongDimension, type Dimension, dimensionsOf } from '../../model/begin/beginPicture';
import type { Tape, TapeField } from '../../model/begin/tape';
import type { Aircraft } from '../../model/document/types';
import { bandStations } from '../../model/stability/band';
import { type Outline, outlinesOf } from '../../model/weigh/outlines';
import { seenFromAbove } from '../../model/weigh/seenFromAbove';
import { Outlines } from '../outlines/Outlines';
import { useReadings } from '../readings';

const WIDE = 760;
const HIGH = 520;
const EDGE = 46;
/** Between the view from above and the one from the side. */
const BETWEEN = 34;

/** From a station to a station, mm from the nose, and what it is called. */
export interface MarkedDistance {
  readonly name: string;
  readonly fromMm: number;
  readonly toMm: number;
}

interface BeginDrawingProps {
  readonly aircraft: Aircraft;
  readonly tape: Tape;
  readonly arrangement: Parameters<typeof dimensionsOf>[0];
  /** The figure that is being typed. */
  readonly looking: TapeField | null;
  /** A distance along the body that is being typed instead: a balance point, a limit. */
  readonly marked: MarkedDistance | null;
  readonly names: Readonly<Record<TapeField, string>>;
}

/** The aircraft as it is so far from above and from the side, nose up, and on it what the tape measures. */
export function BeginDrawing({ aircraft, tape, arrangement, looking, marked, names }: BeginDrawingProps) {
  const [top, side] = [seenFromAbove(aircraft), outlinesOf(aircraft, 'side')];
  const stations = rangeOf([...top, ...side], 0);
  const [buttlines, waterlines] = [rangeOf(top, 1), rangeOf(side, 1)];
  const across = buttlines.long + waterlines.long;
  const scale = Math.min((WIDE - 2 * EDGE - BETWEEN) / across, (HIGH - 2 * EDGE) / stations.long);
  const used = across * scale + BETWEEN;
  const left = (WIDE - used) / 2;
  const down = (station: number) => (HIGH - stations.long * scale) / 2 + (station - stations.least) * scale;
  const fromAbove = ([station, buttline]: Corner): Corner => [
    left + (buttline - buttlines.least) * scale,
    down(station),
  ];
  const fromSide = ([station, waterline]: Corner): Corner => [
    left + buttlines.long * scale + BETWEEN + (waterlines.most - waterline) * scale,
    down(station),
  ];
  const dimensions = dimensionsOf(arrangement, tape, aircraft);
  const shown = looking ?? 'spanMm';
  const arrow = marked
    ? { ...marked, dimension: alongDimension(marked.fromMm, marked.toMm, tape) }
    : { name: names[shown], fromMm: 0, toMm: tape[shown], dimension: dimensions[shown] };
  const band = bandStations(aircraft);
  const middle = fromAbove([0, 0])[0];
  return (
    <svg
      className="begin-drawing"
      viewBox={`0 0 ${WIDE} ${HIGH}`}
      role="img"
      aria-label="The new aircraft from above and from the side, nose up"
      data-testid="begin-drawing"
    >
      <Outlines outlines={top} at={fromAbove} />
      <Outlines outlines={side} at={fromSide} />
      {band && (
        <rect
          className="begin-band"
          x={middle - 60}
          y={down(band.forwardMm)}
          width="120"
          height={Math.max(2, (band.aftMm - band.forwardMm) * scale)}
        />
      )}
      {arrow.dimension && (
        <Arrow
          dimension={arrow.dimension}
          at={fromAbove}
          name={arrow.name}
          figureMm={arrow.toMm - arrow.fromMm}
        />
      )}
    </svg>
  );
}

function rangeOf(outlines: readonly Outline[], axis: 0 | 1) {
  const along = outlines.flatMap(({ corners }) => corners.map((corner) => corner[axis]));
  const [least, most] = [Math.min(...along), Math.max(...along)];
  return { least, most, long: Math.max(1, most - least) };
}

interface ArrowProps {
  readonly dimension: Dimension;
  readonly at: (corner: Corner) => Corner;
  readonly name: string;
  readonly figureMm: number;
}

/** A dimension line with its arrows, the lines that lead to it, and what it says. */
function Arrow({ dimension, at, name, figureMm }: ArrowProps) {
  const say = useReadings();
  const [a, b] = dimension.drawn.map(at) as [Corner, Corner];
  const ends = dimension.ends.map(at) as [Corner, Corner];
  const level = Math.abs(b[1] - a[1]) < Math.abs(b[0] - a[0]);
  const middle: Corner = [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2];
  const words = `${name} ${say.length(figureMm)}`;
  const toTheLeft = !level && middle[0] > WIDE / 2;
  return (
    <g className="begin-dimension">
      {[a, b].map((end, i) => (
        <line key={i} className="leader" x1={ends[i]![0]} y1={ends[i]![1]} x2={end[0]} y2={end[1]} />
      ))}
      <line x1={a[0]} y1={a[1]} x2={b[0]} y2={b[1]} />
      <Head tip={a} from={b} />
      <Head tip={b} from={a} />
      <text
        x={level ? Math.min(Math.max(middle[0], 120), WIDE - 120) : middle[0] + (toTheLeft ? -10 : 10)}
        y={level ? Math.max(16, middle[1] - 8) : middle[1] + 5}
        textAnchor={level ? 'middle' : toTheLeft ? 'end' : 'start'}
      >
        {words}
      </text>
    </g>
  );
}

function Head({ tip, from }: { readonly tip: Corner; readonly from: Corner }) {
  const length = Math.hypot(from[0] - tip[0], from[1] - tip[1]);
  if (!(length > 1)) return null;
  const [x, y] = [(from[0] - tip[0]) / length, (from[1] - tip[1]) / length];
  const corner = (side: number) => `${tip[0] + 10 * x - side * 4 * y},${tip[1] + 10 * y + side * 4 * x}`;
  return <polygon className="head" points={`${tip[0]},${tip[1]} ${corner(1)} ${corner(-1)}`} />;
}
