import * as v from 'valibot';
import { chemistries } from '../../../engine/power/cells';
import { about, choice, flag, id, label, list, percent, record, timeS } from './fields';

/** The largest figures of what is carried in a model, far beyond what is used. */
const figure = (greatest: number, symbol: string) =>
  v.pipe(
    v.number(`Expected 0 ${symbol} or more`),
    v.minValue(0, `Expected 0 ${symbol} or more`),
    v.maxValue(greatest, `Expected at most ${greatest} ${symbol}`),
  );
const moreThan0 = (greatest: number, symbol: string) =>
  v.pipe(figure(greatest, symbol), v.gtValue(0, `Expected more than 0 ${symbol}`));

const whole = (least: number, greatest: number) => {
  const expected = `Expected a whole number from ${least} to ${greatest}`;
  return v.pipe(
    v.number(expected),
    v.integer(expected),
    v.minValue(least, expected),
    v.maxValue(greatest, expected),
  );
};

const volts = moreThan0(200, 'V');
const amps = figure(1000, 'A');

const pack = record(
  {
    chemistry: choice(chemistries),
    cells: about(whole(1, 40), 'in series'),
    capacityMah: moreThan0(100_000, 'mAh'),
    usablePct: about(
      v.optional(v.pipe(percent, v.gtValue(0, 'Expected more than 0 %'))),
      'the share of the capacity that is to be used, %; what is common for its kind when left out',
    ),
    maxA: about(v.optional(amps), 'the current that it may give for a while, A; not judged when left out'),
    milliohm: about(
      v.optional(figure(10_000, 'mΩ')),
      'its internal resistance as measured, mΩ; what is common for its kind when left out',
    ),
  },
  'a pack of cells',
);

const regulator = record(
  {
    way: about(choice(['switching', 'linear']), 'how it brings the voltage down'),
    outputV: volts,
    maxA: about(v.optional(amps), 'the current that it may give for a while, A; not judged when left out'),
    dropoutV: about(v.optional(figure(20, 'V')), 'how much more than its output it needs, V'),
    efficiencyPct: about(
      v.optional(v.pipe(percent, v.gtValue(0, 'Expected more than 0 %'))),
      'of one that switches, output power by input power, %',
    ),
  },
  'a regulator: what it feeds gets its output voltage',
);

export const consumerKinds = [
  'receiver',
  'servo',
  'stabiliser',
  'ignition',
  'engineControl',
  'fuelPump',
  'motor',
  'light',
  'camera',
  'sender',
  'valve',
  'other',
] as const;

const use = record(
  {
    kind: choice(consumerKinds),
    minV: about(figure(200, 'V'), 'the least voltage that it works at, V'),
    maxV: about(volts, 'the most that it takes, V'),
    meanA: about(amps, 'what it draws on the mean, A; of what follows the throttle at full throttle'),
    peakA: about(amps, 'the most that it draws, A'),
    idleA: about(v.optional(amps), 'of what follows the throttle: what it draws at 0 %, A'),
    followsThrottle: flag,
    measured: about(flag, 'the currents come from a meter; they are typical ones when left out'),
  },
  'what it draws',
);

/** The one that feeds it and how. */
const supply = record({
  from: about(id, 'the part that feeds it'),
  maxA: about(v.optional(amps), 'the current that connector and wires carry for a while, A'),
  wireMm2: about(
    v.optional(moreThan0(100, 'mm²')),
    'the cross-section of one wire of copper, mm²; no loss along it when left out',
  ),
  pastRegulator: about(flag, 'taken before the regulator of the part that feeds it'),
});

/** What a part is to the wiring: a pack, or fed by others, with a regulator or without. */
export const power = record(
  {
    pack: v.optional(pack),
    regulator: v.optional(regulator),
    use: v.optional(use),
    fedBy: about(
      v.optional(list(supply, 8)),
      'what feeds it; a lead between the two carries it, and gives the length of the wires',
    ),
  },
  'what it is to the wiring',
);

/** Of an aircraft without a burn: what is flown, for how long packs last. */
export const powerFlight = record(
  {
    phases: list(record({ name: label, durationS: timeS, throttlePct: percent }), 100),
    reservePct: about(percent, 'what is to be left when it lands, % of the time flown'),
  },
  'the flight that packs are held to where no fuel profile says it',
);
