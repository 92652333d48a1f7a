import type { Aircraft } from '../../model/document/types';
import { changeReading, readingOf } from '../../model/weigh/weighIns';
import { PointField } from './PointField';

const axles = [
  { key: 'pivotMm', label: 'It turns about' },
  { key: 'otherMm', label: 'Over the scale' },
] as const;

/** Where the axle is that the aircraft turns about, and where the one over the scale. */
export const AxleRows = ({ id }: { readonly id: string }) => (
  <table className="weigh-scales weigh-axles">
    <caption className="unseen">Axles</caption>
    <thead>
      <tr>
        <th scope="col">Axle</th>
        <th scope="col">Station</th>
        <th scope="col">Waterline</th>
      </tr>
    </thead>
    <tbody>
      {axles.map(({ key, label }) => (
        <tr key={key}>
          <th scope="row">{label}</th>
          {([0, 2] as const).map((axis) => (
            <td key={axis} data-head={axis === 0 ? 'Station' : 'Waterline'}>
              <PointField
                of={label}
                axis={axis}
                step="Measure an axle"
                read={(now: Aircraft) => readingOf(now, id, 'tilt')?.[key]}
                write={(now, pointMm) => changeReading(now, id, 'tilt', () => ({ [key]: pointMm }))}
              />
            </td>
          ))}
        </tr>
      ))}
    </tbody>
  </table>
);
