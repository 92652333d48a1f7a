import type { TradeOffPoint } from '../../engine/place/tradeOff';
import type { Arrangement } from '../../engine/place/types';
import { useReadings } from '../readings';

const WIDTH = 300;
const HEIGHT = 110;
const AXIS = 38;
/** Room for a point's circle, and for the figures beside the axes. */
const EDGE = { left: 52, right: 14, top: 14, bottom: 12 };

interface CurveProps {
  readonly title: string;
  readonly acrossName: string;
  readonly points: readonly TradeOffPoint[];
  readonly across: (arrangement: Arrangement) => number;
  /** More across is better, and what gives less of it for as much ballast is no choice. */
  readonly moreIsBetter: boolean;
  /** Said where there is one choice alone. */
  readonly none: string;
  readonly sayAcross: (value: number) => string;
  readonly pointed: Arrangement | null;
  readonly onPoint: (arrangement: Arrangement | null) => void;
  readonly onAccept: (arrangement: Arrangement) => void;
}

/** A trade-off with a button at every point. A mouse that points shows it; a finger shows it first and then accepts. */
export function Curve(props: CurveProps) {
  const { title, acrossName, points, across, moreIsBetter, none, sayAcross, pointed, onPoint, onAccept } =
    props;
  const say = useReadings();
  if (points.length === 0) return null;
  const list = choicesOf(
    points.map(({ arrangement }) => arrangement),
    across,
    moreIsBetter,
  ).sort((a, b) => across(a) - across(b));
  const span = (values: readonly number[]) => [Math.min(...values), Math.max(...values)] as const;
  const [left, right] = span(list.map(across));
  const [least, most] = span(list.map(({ ballastG }) => ballastG));
  const share = (value: number, low: number, high: number) =>
    high - low > 1e-9 ? (value - low) / (high - low) : 0.5;
  const x = (arrangement: Arrangement) =>
    EDGE.left + share(across(arrangement), left, right) * (WIDTH - EDGE.left - EDGE.right);
  const y = ({ ballastG }: Arrangement) =>
    HEIGHT - EDGE.bottom - share(ballastG, least, most) * (HEIGHT - EDGE.top - EDGE.bottom);
  const shown = pointed && list.includes(pointed) ? pointed : null;
  const only = list.length === 1 ? list[0]! : null;
  if (only)
    return (
      <figure className="curve">
        <figcaption>{title}</figcaption>
        <p className="curve-words">
          {none}: {say.mass(only.ballastG)} · {sayAcross(across(only))} {acrossName}
        </p>
      </figure>
    );
  return (
    <figure className="curve">
      <figcaption>{title}</figcaption>
      <div className="curve-picture">
        <span className="curve-end figure" data-at="most">
          {say.mass(most)}
        </span>
        {most > least && (
          <span className="curve-end figure" data-at="least">
            {say.mass(least)}
          </span>
        )}
        <svg viewBox={`0 0 ${WIDTH} ${HEIGHT}`} aria-hidden="true" preserveAspectRatio="none">
          <path className="curve-axes" d={`M${AXIS} 0V${HEIGHT - 1}H${WIDTH}`} />
          <path className="curve-line" d={`M${list.map((each) => `${x(each)} ${y(each)}`).join('L')}`} />
        </svg>
        {list.map((each) => (
          <button
            key={`${across(each)} ${each.ballastG}`}
            type="button"
            className="curve-point"
            aria-pressed={each === pointed}
            aria-label={`${say.mass(each.ballastG)} of ballast, ${sayAcross(across(each))} ${acrossName}`}
            style={{ left: `${(x(each) / WIDTH) * 100}%`, top: `${(y(each) / HEIGHT) * 100}%` }}
            onPointerEnter={({ pointerType }) => pointerType === 'mouse' && onPoint(each)}
            onFocus={({ currentTarget }) => currentTarget.matches(':focus-visible') && onPoint(each)}
            onClick={() => (each === pointed ? onAccept(each) : onPoint(each))}
          />
        ))}
      </div>
      <p className="curve-ends figure">
        <span>{sayAcross(left)}</span>
        <span>{acrossName}</span>
        <span>{sayAcross(right)}</span>
      </p>
      <p className="curve-words figure">
        {shown ? `${say.mass(shown.ballastG)} · ${sayAcross(across(shown))} ${acrossName}` : '\u00a0'}
      </p>
    </figure>
  );
}

/** Each only once, and where more is better without those that another beats. */
function choicesOf(
  list: readonly Arrangement[],
  across: (one: Arrangement) => number,
  moreIsBetter: boolean,
): Arrangement[] {
  return list.filter(
    (arrangement, i) =>
      !list.some((other, k) => {
        const [lessG, more] = [arrangement.ballastG - other.ballastG, across(other) - across(arrangement)];
        const isSame = Math.abs(lessG) < SAME && Math.abs(more) < SAME;
        const isBeaten = moreIsBetter && lessG > -SAME && more > -SAME;
        return k !== i && (isSame ? k < i : isBeaten);
      }),
  );
}

/** Ballast and margins that differ by less are the same, g and mm. */
const SAME = 0.05;
