import { freshLine } from '../../model/weigh/freshReadings';
import { changeReading, readingOf } from '../../model/weigh/weighIns';
import { useCommitted } from '../../store/react';
import { Choice } from '../fields/Choice';
import { EditButton } from '../fields/EditButton';
import { Measure } from '../fields/Measure';
import { PointField } from './PointField';
import { LinesPicture } from './pictures/LinesPicture';
import { RemoveButton } from './RemoveButton';
import { readingField, readingRows } from './readingField';
import { WholeMass } from './WholeMass';

const views = [
  { value: 'side', label: 'hung up, seen from the side' },
  { value: 'top', label: 'two supports, seen from above' },
] as const;

const hints = {
  side: 'Hang it by the spinner, then by the tail, from one thread each time. The CG lies on the plumb line below the thread: measure two points of that line on the aircraft, far apart. Drain the tanks, for fuel runs as it hangs.',
  top: 'Set it on two points, one left and one right, not square across: farther forward on one side. Where it just rests, the CG lies on the line between them. Then set them askew the other way. Where the two lines cross is the CG, along and across.',
} as const;

/** Lines that the CG lies on: where they cross. */
export function OnLines({ id }: { readonly id: string }) {
  const reading = useCommitted((aircraft) => readingOf(aircraft, id, 'lines'));
  const lines = readingRows(id, 'lines', 'lines');
  if (!reading) return null;
  const axis = reading.view === 'side' ? 2 : 1;
  const point = (at: number, key: 'throughMm' | 'andMm', name: string) => ({
    of: `${name}, ${key === 'throughMm' ? 'first' : 'second'} point`,
    step: `Measure a point of “${name}”`,
    read: (aircraft: Parameters<typeof lines.rows>[0]) => lines.rows(aircraft)[at]?.[key],
    write: (aircraft: Parameters<typeof lines.rows>[0], pointMm: readonly [number, number, number]) =>
      lines.change(aircraft, at, { [key]: pointMm }),
  });
  const second = axis === 2 ? 'Waterline' : 'Buttline';
  return (
    <>
      <LinesPicture id={id} />
      <p className="hint">{hints[reading.view]}</p>
      <table className="weigh-scales">
        <caption className="unseen">Lines</caption>
        <thead>
          <tr>
            <th scope="col">Line</th>
            <th scope="col">First point: station</th>
            <th scope="col">{second}</th>
            <th scope="col">Second point: station</th>
            <th scope="col">{second}</th>
            <td />
          </tr>
        </thead>
        <tbody>
          {reading.lines.map(({ name }, at) => (
            <tr key={at}>
              <th scope="row">{name}</th>
              {(['throughMm', 'andMm'] as const).flatMap((key) =>
                ([0, axis] as const).map((of) => (
                  <td
                    key={key + of}
                    data-head={`${key === 'throughMm' ? 'First' : 'Second'} point: ${of === 0 ? 'station' : second.toLowerCase()}`}
                  >
                    <PointField axis={of} {...point(at, key, name)} />
                  </td>
                )),
              )}
              <td className="weigh-take">
                {reading.lines.length > 2 && (
                  <RemoveButton
                    label={`Remove “${name}”`}
                    step="Remove a line"
                    edit={(aircraft) => lines.remove(aircraft, at)}
                  />
                )}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
      <EditButton
        className="link weigh-more"
        step="Add a line"
        edit={(aircraft) => lines.add(aircraft, freshLine(`Line ${reading.lines.length + 1}`))}
      >
        Add a line
      </EditButton>
      <div className="weigh-fields">
        <Choice
          label="How"
          options={views}
          step="Change how the lines were found"
          read={(aircraft) => readingOf(aircraft, id, 'lines')?.view ?? 'side'}
          write={(aircraft, view) =>
            changeReading(aircraft, id, 'lines', ({ lines: were }) => ({
              view: view === 'top' ? 'top' : 'side',
              lines: were.map((line, at) => ({
                ...line,
                name: lineNames[view === 'top' ? 'top' : 'side'][at] ?? line.name,
              })),
            }))
          }
        />
        <Measure
          label="Each point, ±"
          quantity="length"
          step="Change how well the lines were measured"
          {...readingField(id, 'lines', 'plusMinusMm')}
        />
        <WholeMass id={id} by="lines" />
      </div>
    </>
  );
}

const lineNames = {
  side: ['Hung by the nose', 'Hung by the tail'],
  top: ['Right one ahead', 'Left one ahead'],
} as const;
