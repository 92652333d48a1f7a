import { inertiaForPeople } from '../../engine/balance/inertiaForPeople';
import { principalMoments, radiiOfGyration } from '../../engine/mass/principal';
import type { Tensor } from '../../engine/mass/types';
import { lastPerObject } from '../../engine/memory/memory';
import { type Balance, balanceAt } from '../../model/balance/balance';
import { formatAngle, formatInertia, formatNumber } from '../../model/units';
import type { Bench } from '../../store/bench';
import { useBench, useView } from '../../store/react';
import { toggleLayer } from '../../store/viewStore';
import { Live } from '../Live';
import { type Readings, useReadings } from '../readings';
import { Term } from '../Term';

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

function tiltWords(tiltDeg: number | undefined): string {
  if (tiltDeg === undefined) return '–';
  const size = formatAngle(Math.abs(tiltDeg));
  return size === formatAngle(0) ? 'level' : `${size}, nose ${tiltDeg > 0 ? 'low' : 'high'}`;
}

/** "roll −2 %, pitch −4 %, yaw −3 %": what burning all the fuel takes off. */
function changeWords(bench: Bench): string {
  const ends = fullAndDry(bench);
  if (!ends) return 'no change';
  const part = (name: string, key: 'xx' | 'yy' | 'zz') => {
    const change = (ends.dry[key] / ends.full[key] - 1) * 100;
    return `${name} ${formatNumber(change, 0, true)} %`;
  };
  return [part('roll', 'xx'), part('pitch', 'yy'), part('yaw', 'zz')].join(', ');
}

interface Ends {
  readonly full: Tensor;
  readonly dry: Tensor;
}

/** The inertia at either end of the burn; null when nothing burns. */
const fullAndDry = (bench: Bench): Ends | null => endsOf(bench.balance.get(), bench);

const endsOf = lastPerObject(({ usableMl }: Balance, { document, view }: Bench): Ends | null => {
  const { down, positions } = view.getState();
  const at = (fuelFraction: number) =>
    balanceAt(document.current(), { fuelFraction, down, positions }).inertiaAboutCgGmm2;
  return usableMl > 0 ? { full: at(1), dry: at(0) } : null;
});

const boxWords = (say: Readings) => (bench: Bench) => {
  const box = inertiaForPeople(bench.balance.get())?.box;
  return box ? box.sidesMm.map((side) => say.length(side)).join(' × ') : 'there is none';
};

/** The inertia about the CG, ready to fly at the fuel shown. */
export function Inertia() {
  const bench = useBench();
  const say = useReadings();
  const boxShown = useView((view) => view.layers.inertia);
  return (
    <section className="inertia">
      <h3>Inertia about the CG</h3>
      <table>
        <caption>
          <Term of="inertia">Inertia, as a tensor</Term>, kg·m²
        </caption>
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
      <dl className="inertia-words">
        <dt>Tilt of the long axis</dt>
        <dd>
          <Live read={({ balance }) => tiltWords(inertiaForPeople(balance.get())?.tiltDeg)} />
        </dd>
        <dt>Full to dry</dt>
        <dd>
          <Live read={changeWords} />
        </dd>
      </dl>
      <p className="fault" role="status">
        <Live read={({ balance }) => inertiaForPeople(balance.get())?.warning ?? ''} />
      </p>
      <label className="tick">
        <input type="checkbox" checked={boxShown} onChange={() => toggleLayer(bench.view, 'inertia')} />
        Show the equal box on the stage
      </label>
      <p className="hint">
        A uniform box of the same mass and inertia: <Live read={boxWords(say)} />.
      </p>
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
