import { useId } from 'react';
import type { Drawing, LineStyle, Shape, Spot } from '../../model/sheet/drawing';

/** Widths of lines, mm: wide 0.35, narrow 0.18 (ISO 128-2), and a finer one for what only points. */
const widths: Readonly<Record<LineStyle, number>> = {
  heavy: 0.5,
  outline: 0.35,
  thin: 0.18,
  hidden: 0.18,
  chain: 0.18,
  faint: 0.1,
};
const dashes: Readonly<Partial<Record<LineStyle, string>>> = { hidden: '1.1 0.6', chain: '4 0.7 0.5 0.7' };

interface DrawingViewProps {
  readonly drawing: Drawing;
  readonly empty?: boolean;
}

/** A drawing in true millimetres. */
export function DrawingView({
  drawing: { title, id, wideMm, highMm, shapes },
  empty = false,
}: DrawingViewProps) {
  const unique = useId();
  return (
    <svg
      className="sheet-drawing"
      role="img"
      aria-label={title}
      data-drawing={id}
      width={`${wideMm}mm`}
      height={`${highMm}mm`}
      viewBox={`0 0 ${wideMm} ${highMm}`}
    >
      {!empty && (
        <>
          <defs>
            <pattern
              id={`${unique}hatch`}
              width="1.6"
              height="1.6"
              patternUnits="userSpaceOnUse"
              patternTransform="rotate(45)"
            >
              <line x1="0" y1="0" x2="0" y2="1.6" stroke="#000" strokeWidth="0.16" />
            </pattern>
          </defs>
          <Shapes shapes={shapes} unique={unique} />
        </>
      )}
    </svg>
  );
}

function Shapes({ shapes, unique }: { readonly shapes: readonly Shape[]; readonly unique: string }) {
  return shapes.map((shape, at) => (
    <ShapeView key={at} shape={shape} unique={`${unique}${at}`} root={unique} />
  ));
}

const figure = (mm: number) => String(Number(mm.toFixed(3)));
const pointsOf = (points: readonly Spot[]) => points.map(([x, y]) => `${figure(x)},${figure(y)}`).join(' ');

const stroked = (line: LineStyle | null) =>
  line === null
    ? { stroke: 'none' }
    : {
        stroke: '#000',
        strokeWidth: widths[line],
        strokeDasharray: dashes[line],
        strokeLinejoin: 'round' as const,
      };

interface ShapeViewProps {
  readonly shape: Shape;
  readonly unique: string;
  readonly root: string;
}

function ShapeView({ shape, unique, root }: ShapeViewProps) {
  switch (shape.kind) {
    case 'polygon':
    case 'polyline': {
      const fills = { paper: '#fff', ink: '#000', hatch: `url(#${root}hatch)` } as const;
      const fill = shape.fill ? fills[shape.fill] : 'none';
      const Tag = shape.kind;
      return <Tag points={pointsOf(shape.points)} fill={fill} data-of={shape.of} {...stroked(shape.line)} />;
    }
    case 'circle':
      return (
        <circle
          cx={figure(shape.at[0])}
          cy={figure(shape.at[1])}
          r={shape.radiusMm}
          fill={shape.fill === 'ink' ? '#000' : shape.fill === 'paper' ? '#fff' : 'none'}
          data-of={shape.of}
          {...stroked(shape.line)}
        />
      );
    case 'words': {
      const [x, y] = shape.at.map(figure);
      return (
        <text
          x={x}
          y={y}
          fontSize={shape.sizeMm}
          textAnchor={shape.anchor}
          fontWeight={shape.bold ? 650 : undefined}
          transform={shape.turned ? `rotate(-90 ${x} ${y})` : undefined}
        >
          {shape.text}
        </text>
      );
    }
    case 'window':
      return (
        <>
          <clipPath id={unique}>
            <rect x={shape.at[0]} y={shape.at[1]} width={shape.size[0]} height={shape.size[1]} />
          </clipPath>
          <g clipPath={`url(#${unique})`}>
            {shape.shapes.map((inner, at) => (
              <ShapeView key={at} shape={inner} unique={`${unique}-${at}`} root={root} />
            ))}
          </g>
        </>
      );
  }
}
