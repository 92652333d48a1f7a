import './burn.css';
import { useRef, useState } from 'react';
import { formatTime, formatVolume } from '../../model/units';
import { useAircraft, useBench, useView } from '../../store/react';
import { setAttribute } from '../drawing';
import { Icon } from '../icons';
import { Live, useBenchValue } from '../Live';
import { later } from '../later';
import { AttitudeButton } from '../loading/AttitudeButton';
import { useDrawn } from '../useDrawn';
import { endOf, fractionAt, phaseAt, timeOfFraction } from './burnClock';
import { clockOf, timeNow, usePlayback } from './usePlayback';

const Attitude = later(
  () => import('../loading/Attitude'),
  (module) => module.Attitude,
  { place: 'The attitude' },
);
const ProfileDialog = later(
  () => import('./ProfileDialog'),
  (module) => module.ProfileDialog,
  { place: 'The fuel profile' },
);

const speeds = [1, 10, 60] as const;

/** The scrubber's steps over the whole profile. */
const STEPS = 1000;

/** Fuel over time: play, pause, scrub. */
export function Burn() {
  const burns = useBenchValue((bench) => clockOf(bench) !== null);
  const fuel = useAircraft((aircraft) => aircraft.fuel);
  const still = useBenchValue(({ balance }) => {
    if (balance.fault() !== null) return 'The burn is not known.';
    return balance.get().usableMl > 0
      ? 'The fuel profile draws nothing.'
      : 'Nothing burns: the CG stays where it is.';
  });
  const usable = useBenchValue(({ balance }) => balance.get().usableMl > 0);
  const wet = useAircraft((aircraft) => aircraft.tanks.length > 0);
  const [tilting, setTilting] = useState(false);
  return (
    <>
      <div className="burn" data-testid="burn">
        {burns && fuel ? <Running /> : <p className="hint">{still}</p>}
        {!burns && fuel && usable && <ProfileButton />}
        {wet && <AttitudeButton open={tilting} onToggle={() => setTilting(!tilting)} />}
      </div>
      {wet && tilting && <Attitude />}
    </>
  );
}

function Running() {
  const bench = useBench();
  const [speed, setSpeed] = useState<number>(10);
  const playing = useView((view) => view.playing);
  const units = useView((view) => view.units);
  const scrubber = useRef<HTMLInputElement>(null);
  const reserve = useRef<HTMLSpanElement>(null);
  usePlayback(speed);
  const words = useBenchValue((live) => {
    const { fuel } = live.document.current();
    const clock = clockOf(live);
    if (!fuel || !clock) return '';
    return `${formatTime(timeNow(live))}, ${phaseAt(fuel, timeNow(live))}`;
  });
  useDrawn((live) => {
    const clock = clockOf(live);
    const { fuel } = live.document.current();
    if (!clock || !fuel || !scrubber.current) return;
    const step = String(Math.round((timeNow(live) / clock.totalS) * STEPS));
    if (scrubber.current.value !== step) scrubber.current.value = step;
    const reserveS = timeOfFraction(clock, fuel.reservePct / 100);
    if (!reserve.current) return;
    const isNone = reserveS === null || fuel.reservePct === 0;
    if (reserve.current.hidden !== isNone) reserve.current.hidden = isNone;
    setAttribute(reserve.current, 'style', `left: ${((reserveS ?? 0) / clock.totalS) * 100}%`);
  });
  return (
    <>
      <button
        type="button"
        className="button strong play"
        aria-label={playing ? 'Pause the burn' : 'Play the burn'}
        onClick={() => bench.view.setState({ playing: !playing })}
      >
        <Icon name={playing ? 'pause' : 'play'} />
      </button>
      <label className="speed">
        <span className="unseen">Speed of play</span>
        <select value={speed} onChange={(event) => setSpeed(Number(event.target.value))}>
          {speeds.map((times) => (
            <option key={times} value={times}>
              ×{times}
            </option>
          ))}
        </select>
      </label>
      <span className="scrub">
        <span ref={reserve} className="scrub-reserve" title="The reserve begins here" hidden />
        <input
          ref={scrubber}
          type="range"
          min="0"
          max={STEPS}
          step="1"
          defaultValue="0"
          aria-label="Time into the burn"
          aria-valuetext={words}
          onChange={(event) => {
            const clock = clockOf(bench);
            if (!clock) return;
            const atS = (Number(event.target.value) / STEPS) * clock.totalS;
            bench.view.setState({
              fuelFraction: fractionAt(clock, Math.min(atS, endOf(clock))),
              playing: false,
            });
          }}
        />
      </span>
      <span className="burn-figures figure">
        <span className="burn-time">
          <Live read={(live) => formatTime(timeNow(live))} />
        </span>
        <span className="burn-left">
          <Live read={({ balance }) => formatVolume(balance.get().remainingMl, units)} />
          <span className="unseen"> left</span>
        </span>
      </span>
      <ProfileButton />
    </>
  );
}

function ProfileButton() {
  const [open, setOpen] = useState(false);
  const name = useAircraft((aircraft) => aircraft.fuel?.profile.name ?? '');
  return (
    <>
      <button type="button" className="button profile" title="Fuel profile" onClick={() => setOpen(true)}>
        <span className="unseen">Fuel profile: </span>
        <span className="profile-name">{name}</span>
        <Icon name="down" />
      </button>
      {open && <ProfileDialog onClose={() => setOpen(false)} />}
    </>
  );
}
