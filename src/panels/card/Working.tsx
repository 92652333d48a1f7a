import { useRef, useState } from 'react';
import { cgShiftForMass } from '../../engine/balance/sensitivity';
import type { MassProperties } from '../../engine/mass/types';
import type { Bench } from '../../store/bench';
import { weightsAlong } from '../beam/weights';
import { Live } from '../Live';
import { later } from '../later';
import { momentAbout } from '../manifest/order';
import { useReadings } from '../readings';

const MomentDialog = later(
  () => import('../sums/MomentDialog'),
  (module) => module.MomentDialog,
  { place: 'The working' },
);

/** How far "10 mm aft" moves it, mm, and what "10 g more" adds, g. */
const STEP_MM = 10;
const STEP_G = 10;

/** The sum behind the selected item's pull on the beam, and what the CG makes of it. */
export function Working({ id }: { readonly id: string }) {
  const say = useReadings();
  const kept = useRef<{ key: unknown; say: unknown; lines: readonly string[] }>({
    key: null,
    say: null,
    lines: [],
  });
  const [open, setOpen] = useState(false);
  const lines = ({ balance }: Bench): readonly string[] => {
    const answer = balance.get();
    if (kept.current.key === answer && kept.current.say === say) return kept.current.lines;
    const weight = weightsAlong(answer, 0).find(({ sourceId }) => sourceId === id);
    const cgMm = answer.cgMm?.[0];
    const made =
      !weight || cgMm === undefined
        ? []
        : [
            `${say.mass(weight.massG)} × (${say.station(weight.atMm)} − ${say.stationFine(cgMm)})`,
            `= ${say.moment(momentAbout(weight.massG, weight.atMm, cgMm))}`,
            `${say.length(STEP_MM)} aft → CG ${say.shift((weight.massG / answer.massG) * STEP_MM)}`,
            `${say.mass(STEP_G)} more → CG ${say.shift(perStep(answer, weight.atMm))}`,
          ];
    kept.current = { key: answer, say, lines: made };
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
      <p className="figure">
        <Live read={(bench) => lines(bench)[3] ?? ''} />
      </p>
      <button type="button" className="button" aria-haspopup="dialog" onClick={() => setOpen(true)}>
        Show the sum
      </button>
      {open && <MomentDialog id={id} onClose={() => setOpen(false)} />}
    </section>
  );
}

/** CG shift when STEP_G more lies at a station, mm. */
const perStep = (whole: MassProperties, stationMm: number): number =>
  cgShiftForMass(whole, [stationMm, 0, 0], STEP_G)?.[0] ?? 0;
