import { principalMoments, radiiOfGyration } from '../../engine/mass/principal';
import { formatInertia, formatNumber } from '../../model/units';
import type { Bench } from '../../store/bench';
import { Live } from '../Live';

const noUnit = { unit: false } as const;

const tensorRows = [
  ['xx', 'xy', 'xz'],
  ['xy', 'yy', 'yz'],
  ['xz', 'yz', 'zz'],
] as const;

const axes = ['roll, x', 'pitch, y', 'yaw, z'] as const;

/** Millimetres as metres, as inertia is given in kg·m². */
const metres = (mm: number) => formatNumber(mm / 1000, 3);

const radius = (axis: 0 | 1 | 2) => (bench: Bench) => {
  const radii = radiiOfGyration(bench.balance.get());
  return radii ? metres(radii[axis]) : '–';
};

/** The inertia about the CG, ready to fly at the fuel shown. */
export function Inertia() {
  return (
    <section className="inertia">
      <h3>Inertia about the CG</h3>
      <table>
        <caption>Tensor, kg·m²</caption>
        <tbody>
          {tensorRows.map((row, at) => (
            <tr key={row.join()}>
              {row.map((entry, column) => (
                <td key={entry} className={column === at ? 'figure main' : 'figure'}>
                  <Live
                    read={({ balance }) => formatInertia(balance.get().inertiaAboutCgGmm2[entry], noUnit)}
                  />
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
      <p className="hint">x aft, y right, z up; the products are tensor elements, I_xy = −∫xy dm.</p>
      <table>
        <caption>Principal moments, kg·m²</caption>
        <tbody>
          <tr>
            {([0, 1, 2] as const).map((at) => (
              <td key={at} className="figure">
                <Live
                  read={({ balance }) =>
                    formatInertia(principalMoments(balance.get().inertiaAboutCgGmm2).momentsGmm2[at], noUnit)
                  }
                />
              </td>
            ))}
          </tr>
        </tbody>
      </table>
      <table>
        <caption>Radii of gyration, m</caption>
        <thead>
          <tr>
            {axes.map((axis) => (
              <th key={axis} scope="col">
                {axis}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          <tr>
            {([0, 1, 2] as const).map((axis) => (
              <td key={axis} className="figure">
                <Live read={radius(axis)} />
              </td>
            ))}
          </tr>
        </tbody>
      </table>
    </section>
  );
}
