import type { TradeOffPoint } from '../../engine/place/tradeOff';
import type { Arrangement } from '../../engine/place/types';
import { useReadings } from '../readings';

const WIDTH = 300;
const HEIGHT = 110;
/** Room for a point's circle, and for the figures beside the axes. */
const EDGE = { left: 14, right: 14, top: 14, bottom: 12 };

interface CurveProps {
  readonly title: string;
  readonly acrossName: string;
  readonly points: readonly TradeOffPoint[];
  readonly across: (arrangement: Arrangement) => number;
  readonly sayAcross: (value: number) => string;
  readonly pointed: Arrangement | null;
  readonly onPoint: (arrangement: Arrangement | null) => void;
  readonly onAccept: (arrangement: Arrangement) => void;
}

/** A trade-off with a button at every point. A mouse that points shows it; a finger shows it first and then accepts. */
export function Curve(props: CurveProps) {
  const { title, acrossName, points, across, sayAcross, pointed, onPoint, onAccept } = props;
  const say = useReadings();
  if (points.length === 0) return null;
  const list = points.map(({ arrangement }) => arrangement).sort((a, b) => across(a) - across(b));
  const span = (values: readonly number[]) => [Math.min(...values), Math.max(...values)] as const;
  const [left, right] = span(list.map(across));
  const [least, most] = span(list.map(({ ballastG }) => ballastG));
  const share = (value: number, low: number, high: number) =>
    high - low > 1e-9 ? (value - low) / (high - low) : 0.5;
  const x = (one: Arrangement) =>
    EDGE.left + share(across(one), left, right) * (WIDTH - EDGE.left - EDGE.right);
  const y = ({ ballastG }: Arrangement) =>
    HEIGHT - EDGE.bottom - share(ballastG, least, most) * (HEIGHT - EDGE.top - EDGE.bottom);
  const shown = pointed && list.includes(pointed) ? pointed : null;
  return (
    <figure className="curve">
      <figcaption>{title}</figcaption>
      <div className="curve-picture">
        <svg viewBox={`0 0 ${WIDTH} ${HEIGHT}`} aria-hidden="true" preserveAspectRatio="none">
          <path className="curve-axes" d={`M1 0V${HEIGHT - 1}H${WIDTH}`} />
          <path className="curve-line" d={`M${list.map((one) => `${x(one)} ${y(one)}`).join('L')}`} />
        </svg>
        {list.map((one) => (
          <button
            key={`${across(one)} ${one.ballastG}`}
            type="button"
            className="curve-point"
            aria-pressed={one === pointed}
            aria-label={`${say.mass(one.ballastG)} of ballast, ${sayAcross(across(one))} ${acrossName}`}
            style={{ left: `${(x(one) / WIDTH) * 100}%`, top: `${(y(one) / HEIGHT) * 100}%` }}
            onPointerEnter={({ pointerType }) => pointerType === 'mouse' && onPoint(one)}
            onFocus={({ currentTarget }) => currentTarget.matches(':focus-visible') && onPoint(one)}
            onClick={() => (one === pointed ? onAccept(one) : onPoint(one))}
          />
        ))}
      </div>
      <p className="curve-words figure">
        {shown
          ? `${say.mass(shown.ballastG)} · ${sayAcross(across(shown))} ${acrossName}`
          : `${say.mass(least)} to ${say.mass(most)} · ${sayAcross(left)} to ${sayAcross(right)} ${acrossName}`}
      </p>
    </figure>
  );
}
