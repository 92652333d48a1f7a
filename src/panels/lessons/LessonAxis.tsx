import './lessonAxis.css';
import { useEffect, useState } from 'react';
import { type Axis, axisToPx } from '../../store/axisStore';
import { QuarteredDisc } from '../icons';
import { type Scale, scaleTicks } from './scale';
import { useMarker } from './useMarker';

/** Rows of the axis, px from its upper edge. */
const RULE_PX = 58;
const NUMERALS_PX = 77;
const HIGH_PX = 136;
const DISC_PX = 11;
/** How high the funnel between the stage and an enlarged axis is, px. */
const FUNNEL_PX = 30;

export interface AxisOfQuestion {
  readonly scale: Scale;
  readonly least: number;
  readonly most: number;
  readonly step: number;
  /** Where a value falls on the stage, px; null where the axis is of no place on it. */
  readonly onStage: ((value: number) => number) | null;
  /** What is asked for is where the CG is, so the answer is its disc. */
  readonly isOfCg: boolean;
  /** How much of a value the unit of the numerals is, and where they begin. */
  readonly size: number;
  readonly zero: number;
  /** What the numerals count: "mm from the nose". */
  readonly unit: string;
  /** What lies to the left and to the right; null where that is only less and more. */
  readonly ends: readonly [left: string, right: string] | null;
  /** A value in words. */
  readonly say: (value: number) => string;
}

interface LessonAxisProps {
  readonly of: AxisOfQuestion;
  /** Where the marker stands. */
  readonly value: number;
  /** Whether somebody has put it there. */
  readonly placed: boolean;
  /** Given while the marker may be moved. */
  readonly onMove: ((value: number) => void) | null;
  /** How it stands while it is tried, or what happened, once it may be seen. */
  readonly answer: { readonly value: number; readonly isLive: boolean } | null;
  /** What the marker is for whoever hears it. */
  readonly name: string;
}

/** The axis of a prediction: above its rule the marker, below it what happened. */
export function LessonAxis({ of, value, placed, onMove, answer, name }: LessonAxisProps) {
  const { scale, least, most, say } = of;
  const hand = useMarker(scale, of, value, onMove ?? (() => {}));
  const markerPx = axisToPx(scale.axis, value);
  if (scale.widthPx === 0) return <div className="lesson-axis" />;
  const marker = (
    <>
      <span
        className="lesson-marker-value figure"
        style={{ translate: `${heldIn(markerPx, scale.widthPx)}px` }}
      >
        {placed || answer !== null ? say(value) : '‹ drag ›'}
      </span>
      <svg viewBox="-12 0 24 22" width="24" height="22" aria-hidden="true">
        <path d="M-9 0H9L0 20Z" />
      </svg>
    </>
  );
  return (
    <div
      className="lesson-axis"
      data-testid="lesson-axis"
      data-open={onMove !== null || undefined}
      {...(onMove && hand)}
    >
      <Rule of={of} value={value} />
      {answer !== null && <Answer key={String(answer.isLive)} of={of} from={value} {...answer} />}
      {onMove ? (
        <div
          className="lesson-marker"
          role="slider"
          tabIndex={0}
          aria-label={name}
          aria-valuemin={least}
          aria-valuemax={most}
          aria-valuenow={value}
          aria-valuetext={placed ? say(value) : `${say(value)}, not placed yet`}
          data-placed={placed || undefined}
          style={{ left: markerPx }}
        >
          {marker}
        </div>
      ) : (
        <div className="lesson-marker" data-placed style={{ left: markerPx }} aria-hidden="true">
          {marker}
        </div>
      )}
    </div>
  );
}

function Rule({ of, value }: { readonly of: AxisOfQuestion; readonly value: number }) {
  const { scale, least, most, size, zero, unit, ends: sides } = of;
  const ends = [axisToPx(scale.axis, least), axisToPx(scale.axis, most)];
  return (
    <svg className="lesson-rule" width={scale.widthPx} height={HIGH_PX} aria-hidden="true">
      {scale.stage && <Funnel of={of} stage={scale.stage} value={value} />}
      <line x1={Math.min(...ends)} x2={Math.max(...ends)} y1={RULE_PX} y2={RULE_PX} />
      {scaleTicks(scale, of, size, zero).map(({ px, numeral }) => (
        <g key={px}>
          <line x1={px} x2={px} y1={RULE_PX} y2={RULE_PX + (numeral === null ? 5 : 9)} />
          {numeral !== null && (
            <text className="figure" x={px} y={NUMERALS_PX}>
              {numeral}
            </text>
          )}
        </g>
      ))}
      <text className="lesson-unit" x="14" y={HIGH_PX - 11}>
        {sides ? `◂ ${sides[0]} · ${unit}` : unit}
      </text>
      {sides && (
        <text className="lesson-unit-end" x={scale.widthPx - 14} y={HIGH_PX - 11}>
          {sides[1]} ▸
        </text>
      )}
    </svg>
  );
}

/** From the stretch of the stage that the axis shows enlarged to the axis itself, and the marker's way from one to the other. */
function Funnel({ of: { scale, least, most }, stage, value }: FunnelProps) {
  const [a, b] = [axisToPx(stage, least), axisToPx(stage, most)];
  const [c, d] = [axisToPx(scale.axis, most), axisToPx(scale.axis, least)];
  return (
    <>
      <path className="lesson-funnel" d={`M${a} -2H${b}L${c} ${FUNNEL_PX}V${RULE_PX}H${d}V${FUNNEL_PX}Z`} />
      <path
        className="lesson-funnel-way"
        d={`M${axisToPx(stage, value)} 0L${axisToPx(scale.axis, value)} ${FUNNEL_PX}`}
      />
    </>
  );
}

interface FunnelProps {
  readonly of: AxisOfQuestion;
  readonly stage: Axis;
  /** Where the marker stands. */
  readonly value: number;
}

interface AnswerProps {
  readonly of: AxisOfQuestion;
  readonly from: number;
  readonly value: number;
  readonly isLive: boolean;
}

/**
 * What the figure is: live while it is tried; then it goes from the prediction to where it came to, and what lies between
 * is marked. It may lie beyond the axis' end.
 */
function Answer({ of: { scale, say, isOfCg }, from, value, isLive }: AnswerProps) {
  const [there, setThere] = useState(isLive);
  useEffect(() => {
    const frame = requestAnimationFrame(() => setThere(true));
    return () => cancelAnimationFrame(frame);
  }, []);
  const fromPx = axisToPx(scale.axis, from);
  const atPx = Math.min(scale.widthPx - DISC_PX, Math.max(DISC_PX, axisToPx(scale.axis, value)));
  return (
    <>
      {!isLive && (
        <span
          className="lesson-gap"
          style={{ left: Math.min(fromPx, atPx), width: Math.abs(atPx - fromPx), top: RULE_PX }}
        />
      )}
      <span
        className="lesson-answer"
        data-live={isLive || undefined}
        data-testid="lesson-answer"
        style={{ left: there ? atPx : fromPx, top: RULE_PX }}
      >
        <svg viewBox="-1.1 -1.1 2.2 2.2" width={2 * DISC_PX} height={2 * DISC_PX} aria-hidden="true">
          {isOfCg ? <QuarteredDisc /> : <circle className="lesson-dot" r="0.75" />}
        </svg>
        <span
          className="lesson-answer-value figure"
          style={{ translate: `${heldIn(atPx, scale.widthPx, isLive ? HALF_NOW_PX : HALF_WORDS_PX)}px` }}
        >
          {isLive && 'now '}
          {say(value)}
        </span>
      </span>
    </>
  );
}

/** Half of what a value takes in words at its longest, px. */
const HALF_WORDS_PX = 70;
/** The same with "now" before it. */
const HALF_NOW_PX = 88;

/** How far words over a place must move so as to stay on the page, px. */
const heldIn = (px: number, widthPx: number, halfPx = HALF_WORDS_PX): number =>
  Math.max(0, halfPx - px) - Math.max(0, px + halfPx - widthPx);
