import { useMemo } from 'react';
import { type Balance, balanceAt, LEVEL } from '../../model/balance/balance';
import type { Aircraft } from '../../model/document/types';
import { useReadings } from '../readings';

interface FiguresProps {
  readonly then: Aircraft;
  readonly after: Aircraft;
  /** What the second column is. */
  readonly afterIs: string;
}

/** Mass and CG travel of two states, level and in their first load state, full to dry. */
export function Figures({ then, after, afterIs }: FiguresProps) {
  const say = useReadings();
  const rows = useMemo(() => [figuresOf(then), figuresOf(after)] as const, [then, after]);
  const station = (mm: number | null) => (mm === null ? 'none' : say.stationFine(mm));
  const shift = (from: number | null, to: number | null) =>
    from === null || to === null ? '' : say.offset(to - from);
  const [a, b] = rows;
  return (
    <table className="comparison-figures">
      <thead>
        <tr>
          <td />
          <th scope="col">Then</th>
          <th scope="col">{afterIs}</th>
          <th scope="col">Change</th>
        </tr>
      </thead>
      <tbody>
        <tr>
          <th scope="row">Mass, full</th>
          <td>{say.mass(a.massG)}</td>
          <td>{say.mass(b.massG)}</td>
          <td>{massShift(b.massG - a.massG, say.mass)}</td>
        </tr>
        {(['foremost', 'aftmost'] as const).map((end) => (
          <tr key={end}>
            <th scope="row">CG {end}</th>
            <td>{station(a[end])}</td>
            <td>{station(b[end])}</td>
            <td>{shift(a[end], b[end])}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

function figuresOf(aircraft: Aircraft) {
  const balance: Balance = balanceAt(aircraft, { fuelFraction: 1, down: LEVEL });
  const stations = balance.travel.map(({ cgMm }) => cgMm[0]);
  const there = balance.finite && balance.massG > 0 && stations.length > 0;
  return {
    massG: balance.massG,
    foremost: there ? Math.min(...stations) - balance.travelWithinMm : null,
    aftmost: there ? Math.max(...stations) + balance.travelWithinMm : null,
  };
}

const massShift = (byG: number, mass: (g: number) => string): string =>
  `${byG > 0 ? '+' : byG < 0 ? '−' : ''}${mass(Math.abs(byG))}`;
