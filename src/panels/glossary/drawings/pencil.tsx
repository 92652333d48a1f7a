import type { ReactNode } from 'react';

type Point = readonly [x: number, y: number];

interface SheetProps {
  /** What is to be seen, in a sentence. */
  readonly shows: string;
  readonly children: ReactNode;
}

export const WIDE = 360;
export const HIGH = 190;

/** The sheet that every drawing of the glossary is on: one size, one hand. */
export function Sheet({ shows, children }: SheetProps) {
  return (
    <svg className="word-drawing" viewBox={`0 0 ${WIDE} ${HIGH}`} role="img" aria-label={shows}>
      {children}
    </svg>
  );
}

type Tone = 'quiet' | 'bad' | 'good' | 'mark' | 'fuel' | 'on' | 'on-band';

interface NoteProps {
  readonly at: Point;
  readonly anchor?: 'start' | 'middle' | 'end';
  readonly tone?: Tone;
  readonly strong?: boolean;
  readonly children: ReactNode;
}

/** Words on the drawing. */
export function Note({ at: [x, y], anchor = 'middle', tone, strong = false, children }: NoteProps) {
  return (
    <text x={x} y={y} textAnchor={anchor} data-tone={tone} data-strong={strong || undefined}>
      {children}
    </text>
  );
}

interface LineProps {
  readonly from: Point;
  readonly to: Point;
  readonly dashed?: boolean;
  readonly tone?: Tone;
}

export function Line({ from: [x1, y1], to: [x2, y2], dashed = false, tone = 'quiet' }: LineProps) {
  return <line x1={x1} y1={y1} x2={x2} y2={y2} data-tone={tone} data-dashed={dashed || undefined} />;
}

/** A straight arrow, its head at `to`. */
export function Arrow({ from, to, tone = 'mark' }: Omit<LineProps, 'dashed'>) {
  const [dx, dy] = [to[0] - from[0], to[1] - from[1]];
  const long = Math.hypot(dx, dy) || 1;
  const [ux, uy] = [dx / long, dy / long];
  const foot: Point = [to[0] - 9 * ux, to[1] - 9 * uy];
  const head = [to, [foot[0] - 4 * uy, foot[1] + 4 * ux], [foot[0] + 4 * uy, foot[1] - 4 * ux]].join(' ');
  return (
    <g className="arrow" data-tone={tone}>
      <line x1={from[0]} y1={from[1]} x2={foot[0]} y2={foot[1]} />
      <polygon points={head} />
    </g>
  );
}

interface DimensionProps {
  readonly from: number;
  readonly to: number;
  readonly y: number;
  /** Its words stand over the line unless this says under. */
  readonly under?: boolean;
  readonly children: ReactNode;
}

/** A distance along the aircraft, with its ends ticked and its words in the middle. */
export function Dimension({ from, to, y, under = false, children }: DimensionProps) {
  return (
    <g className="dimension">
      <path d={`M${from} ${y}H${to}M${from} ${y - 5}v10M${to} ${y - 5}v10`} />
      <Note at={[(from + to) / 2, under ? y + 16 : y - 7]}>{children}</Note>
    </g>
  );
}

/** The quartered disc that marks the CG, as on the stage. */
export function Disc({ at: [x, y], r = 10 }: { readonly at: Point; readonly r?: number }) {
  return (
    <g className="disc" transform={`translate(${x} ${y})`}>
      <circle r={r} />
      <path d={`M0 0V${-r}A${r} ${r} 0 0 1 ${r} 0ZM0 0V${r}A${r} ${r} 0 0 1 ${-r} 0Z`} />
    </g>
  );
}

/** The register mark of the neutral point. */
export function Cross({ at: [x, y] }: { readonly at: Point }) {
  return (
    <path
      className="cross"
      transform={`translate(${x} ${y})`}
      d="M0-7A7 7 0 1 1 0 7A7 7 0 1 1 0-7M-12 0H12M0-12V12"
    />
  );
}

interface BoxProps {
  readonly at: Point;
  readonly wide: number;
  readonly high: number;
  readonly kind?:
    | 'part'
    | 'tank'
    | 'fuel'
    | 'ballast'
    | 'band'
    | 'radio'
    | 'energy'
    | 'payload'
    | 'control'
    | 'trapped';
}

/** A thing aboard, by its upper left corner. */
export function Box({ at: [x, y], wide, high, kind = 'part' }: BoxProps) {
  return (
    <rect
      className="thing"
      data-kind={kind}
      x={x}
      y={y}
      width={wide}
      height={high}
      rx={kind === 'band' ? 0 : 3}
    />
  );
}

interface AircraftProps {
  /** Where its nose is. */
  readonly at: Point;
  readonly scale?: number;
  readonly pitchDeg?: number;
}

const placed = ({ at: [x, y], scale = 1, pitchDeg = 0 }: AircraftProps) =>
  `translate(${x} ${y}) scale(${scale}) rotate(${pitchDeg} 120 0)`;

/** An aircraft from its left, 260 long, its nose to the left. */
export function SideView(props: AircraftProps) {
  return (
    <g className="aircraft" transform={placed(props)}>
      <path d="M0 2C8-12 40-18 78-19 92-33 128-33 142-19L222-9 238-46H258L256 2C180 14 60 22 30 18 12 15 4 9 0 2Z" />
      <path className="wing" d="M84 7C90-1 112-2 162 8 122 13 92 14 84 7Z" />
      <path className="wing" d="M222-3C226-7 236-7 258-2 240 1 226 1 222-3Z" />
    </g>
  );
}

/** The same from above. */
export function TopView(props: AircraftProps) {
  return (
    <g className="aircraft" transform={placed(props)}>
      <path className="wing" d="M84 0L98-82H142L162 0L142 82H98Z" />
      <path className="wing" d="M224 0L230-34H252L258 0L252 34H230Z" />
      <path d="M0 0C6-14 40-17 90-17 150-17 210-8 262-3V3C210 8 150 17 90 17 40 17 6 14 0 0Z" />
    </g>
  );
}

interface FrontProps {
  readonly at: Point;
  readonly rollDeg?: number;
  readonly scale?: number;
}

/** The same from ahead: the wing stands across, 280 wide, about its middle. */
export function FrontView({ at: [x, y], rollDeg = 0, scale = 1 }: FrontProps) {
  return (
    <g className="aircraft" transform={`translate(${x} ${y}) rotate(${rollDeg}) scale(${scale})`}>
      <path className="wing" d="M-140-10L-18 2H18L140-10V-5L18 12H-18L-140-5Z" />
      <path d="M-4-20L-2-60H2L4-20A22 22 0 1 1-4-20Z" />
    </g>
  );
}

/** What a wedge stands under when something balances on it. */
export function Wedge({ at: [x, y] }: { readonly at: Point }) {
  return <path className="wedge" d={`M${x} ${y}l13 22h-26Z`} />;
}
