import { midSentence } from '../../model/document/inWords';
import './loading.css';
import { ATTITUDES, type AttitudeTravel, namedAttitude } from '../../model/loads/attitude';
import { formatAngle, LEAST_SHOWN_MM } from '../../model/units';
import { useBench, useRest, useView } from '../../store/react';
import { setAttitude } from '../../store/viewStore';
import { type Readings, useReadings } from '../readings';

/** As far as the slider goes: beyond it nothing flies on, and free fall would leave no down. */
const STEEPEST_DEG = 80;

/** How the aircraft is held: the liquid settles to it, and the CG with the liquid. */
export function Attitude() {
  const bench = useBench();
  const say = useReadings();
  const held = useView((view) => view.attitude);
  const { pitchDeg } = held;
  const wander = useRest((rest) => rest.wander);
  const chosen = namedAttitude(held);
  return (
    <div className="attitude" data-testid="attitude">
      <fieldset className="segments">
        <legend className="unseen">Attitude</legend>
        {ATTITUDES.map((attitude) => (
          <button
            key={attitude.id}
            type="button"
            aria-pressed={attitude === chosen}
            onClick={() => {
              const { id: _id, name: _name, ...chosenAttitude } = attitude;
              setAttitude(bench.view, chosenAttitude);
            }}
          >
            {attitude.name}
          </button>
        ))}
      </fieldset>
      <label className="pitch">
        <span className="pitch-name">Dive</span>
        <input
          type="range"
          min={-STEEPEST_DEG}
          max={STEEPEST_DEG}
          step="1"
          value={pitchDeg}
          aria-label="Nose up or down"
          aria-valuetext={`${formatAngle(Math.abs(pitchDeg))} nose ${pitchDeg < 0 ? 'down' : 'up'}`}
          onChange={(event) => setAttitude(bench.view, { pitchDeg: Number(event.target.value) })}
        />
        <span className="pitch-name">Climb</span>
        <output className="figure">{formatAngle(pitchDeg, { signed: true })}</output>
      </label>
      <p className="wander hint">{wander ? wanderWords(wander, say) : 'Settling the liquid …'}</p>
    </div>
  );
}

function wanderWords({ station, buttline }: AttitudeTravel, say: Readings): string {
  const alongMm = station.most.mm - station.least.mm;
  const acrossMm = buttline.most.mm - buttline.least.mm;
  if (alongMm < LEAST_SHOWN_MM && acrossMm < LEAST_SHOWN_MM) {
    return 'Attitude travel: none, with the fuel shown.';
  }
  const sideways =
    acrossMm < LEAST_SHOWN_MM
      ? ''
      : `; ${say.lengthFine(acrossMm)} sideways (${midSentence(buttline.most.attitude)})`;
  return `Attitude travel with this fuel: ${say.lengthFine(alongMm)}, from ${midSentence(station.least.attitude)} to ${midSentence(station.most.attitude)}${sideways}.`;
}
