import type { Figure } from '../../model/words/workingSheet';
import type { Bench } from '../../store/bench';
import { Live } from '../Live';
import { type Readings, useReadings } from '../readings';
import { SumButton } from '../sums/SumButton';

/** The figures that matter, in one row; each opens the sum that made it. */
export function Facts() {
  const say = useReadings();
  return (
    <dl className="facts">
      <Fact name="CG now" sum="station" read={({ balance }) => station(balance.get().cgMm?.[0], say)} />
      <Fact name="CG full" read={({ balance }) => station(balance.get().travel[0]?.cgMm[0], say)} />
      <Fact name="CG dry" read={({ balance }) => station(balance.get().travel.at(-1)?.cgMm[0], say)} />
      <Fact name="band" read={(bench) => bandWords(bench, say)} />
      <Fact name="margin, estimated" read={marginWords} />
      <Fact
        name="sideways, right +"
        sum="buttline"
        read={({ balance }) => {
          const { cgMm } = balance.get();
          return cgMm ? say.offset(cgMm[1]) : '–';
        }}
      />
      <Fact name="ready to fly" sum="mass" read={({ balance }) => say.mass(balance.get().massG)} />
    </dl>
  );
}

const station = (mm: number | undefined, say: Readings) => (mm === undefined ? '–' : say.stationFine(mm));

function bandWords({ balance }: Bench, say: Readings): string {
  const { band } = balance.get();
  return band ? `${say.stationFigure(band.forwardMm)}–${say.station(band.aftMm)}` : 'none yet';
}

function marginWords({ balance }: Bench): string {
  const margins = balance.get().travelMarginsPct;
  if (margins.length === 0) return '–';
  const [least, most] = [Math.min(...margins), Math.max(...margins)].map((pct) => pct.toFixed(0));
  return least === most ? `${least} %` : `${least} to ${most} %`;
}

interface FactProps {
  readonly name: string;
  readonly read: (bench: Bench) => string;
  /** The sum that it opens into; none for a plain figure. */
  readonly sum?: Figure;
}

function Fact({ name, read, sum }: FactProps) {
  const figure = <Live read={read} />;
  return (
    <div>
      <dt>{name}</dt>
      <dd className="figure">
        {sum ? (
          <SumButton figure={sum} name={name}>
            {figure}
          </SumButton>
        ) : (
          figure
        )}
      </dd>
    </div>
  );
}
