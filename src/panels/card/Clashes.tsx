import type { Vec3 } from '../../engine/geometry/types';
import { clashesOf } from '../../model/clash';
import { Icon } from '../icons';
import { useBenchValue } from '../Live';
import { type Readings, useReadings } from '../readings';

const ways = [
  ['forward', 'aft'],
  ['left', 'right'],
  ['down', 'up'],
] as const;

/** "12 mm aft", along the axis that the way out chiefly follows. */
function wayOut(by: Vec3, say: Readings): string {
  const axis = ([0, 1, 2] as const).reduce((most, one) =>
    Math.abs(by[one]) > Math.abs(by[most]) ? one : most,
  );
  return `${say.lengthFine(Math.abs(by[axis]))} ${ways[axis][by[axis] > 0 ? 1 : 0]}`;
}

/** What the selected thing runs into, as it happens. */
export function Clashes({ id }: { readonly id: string }) {
  const say = useReadings();
  const words = useBenchValue(({ document }) =>
    clashesOf(document.current(), id)
      .map(({ otherName, clearByMm }) => `Runs into ${otherName}. Clear of it ${wayOut(clearByMm, say)}.`)
      .join('\n'),
  );
  return (
    <section className="clashes">
      <h3>Clashes</h3>
      {words === '' ? (
        <p className="hint">Clear of the other parts and tanks.</p>
      ) : (
        words.split('\n').map((line) => (
          <p key={line} className="clash">
            <Icon name="warn" /> {line}
          </p>
        ))
      )}
    </section>
  );
}
