import type { Figure } from '../../engine/weigh/figure';

interface Row {
  readonly name: string;
  readonly predicted: Figure;
  readonly measured: Figure;
}

const WIDE = 320;
const ROW = 46;
const NAME = 74;

/** List and scales, each a bar of its ±, for each figure on a line of its own; bars that do not touch do not agree. */
export function Differences({ rows }: { readonly rows: readonly Row[] }) {
  return (
    <svg className="differences" viewBox={`0 0 ${WIDE} ${rows.length * ROW}`} aria-hidden="true">
      {rows.map(({ name, predicted, measured }, row) => {
        const middle = (predicted.value + measured.value) / 2;
        const reach = Math.max(
          1e-9,
          ...[predicted, measured].map(({ value, sigma }) => Math.abs(value - middle) + 2.4 * sigma),
        );
        const x = (value: number) =>
          NAME + (WIDE - NAME) / 2 + ((value - middle) / reach) * ((WIDE - NAME) / 2 - 6);
        const top = row * ROW;
        return (
          <g key={name}>
            <text x="0" y={top + 26}>
              {name}
            </text>
            {[predicted, measured].map(({ value, sigma }, at) => (
              <g key={at === 0 ? 'list' : 'scales'} className={at === 0 ? 'by-list' : 'by-scales'}>
                <line
                  x1={x(value - 2 * sigma)}
                  x2={x(value + 2 * sigma)}
                  y1={top + 15 + 14 * at}
                  y2={top + 15 + 14 * at}
                />
                <circle cx={x(value)} cy={top + 15 + 14 * at} r="4" />
              </g>
            ))}
          </g>
        );
      })}
    </svg>
  );
}
