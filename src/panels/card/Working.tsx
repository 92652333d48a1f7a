import { useRef } from 'react';
import type { Bench } from '../../store/bench';
import { weightsAlong } from '../beam/weights';
import { Live } from '../Live';
import { momentAbout } from '../manifest/order';
import { useReadings } from '../readings';

/** How far "10 mm aft" moves it, mm. */
const STEP_MM = 10;

/** The sum behind the selected thing's pull on the beam. */
export function Working({ id }: { readonly id: string }) {
  const say = useReadings();
  const kept = useRef<{ key: unknown; lines: readonly string[] }>({ key: null, lines: [] });
  const lines = ({ balance }: Bench): readonly string[] => {
    const answer = balance.get();
    if (kept.current.key === answer) return kept.current.lines;
    const own = weightsAlong(answer, 0).find(({ sourceId }) => sourceId === id);
    const cgMm = answer.cgMm?.[0];
    const made =
      !own || cgMm === undefined
        ? []
        : [
            `${say.mass(own.massG)} × (${say.station(own.atMm)} − ${say.stationFine(cgMm)})`,
            `= ${say.moment(momentAbout(own.massG, own.atMm, cgMm))}`,
            `${say.length(STEP_MM)} aft → CG ${say.offset((own.massG / answer.massG) * STEP_MM)}`,
          ];
    kept.current = { key: answer, lines: made };
    return made;
  };
  return (
    <section className="working">
      <h3>Working</h3>
      <p className="figure">
        <Live read={(bench) => lines(bench)[0] ?? 'No mass, no moment.'} />
      </p>
      <p className="figure">
        <Live read={(bench) => lines(bench)[1] ?? ''} />
      </p>
      <p className="figure">
        <Live read={(bench) => lines(bench)[2] ?? ''} />
      </p>
    </section>
  );
}
