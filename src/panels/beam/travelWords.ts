import { liquidWord } from '../../model/document/inWords';
import { formatTime } from '../../model/units';
import type { Bench } from '../../store/bench';
import { burnClock, timeOfFraction } from '../burn/burnClock';
import type { Readings } from '../readings';
import type { Line } from './lines';

/** "603 mm · 41 % fuel · 11 min 40 s" */
export function momentWords(bench: Bench, say: Readings, line: Line): string {
  const balance = bench.balance.get();
  const { fuel } = bench.document.current();
  const { fuelFraction } = bench.view.getState();
  const at = balance.cgMm?.[line.axis];
  const clock = burnClock(fuel, balance.usableMl);
  const timeS = clock && timeOfFraction(clock, fuelFraction);
  return [
    at === undefined ? '–' : line.axis === 0 ? say.stationFine(at) : say.offset(at),
    `${Math.round(fuelFraction * 100)} % ${liquidWord({ fuel })}`,
    ...(timeS === null ? [] : [formatTime(timeS)]),
  ].join(' · ');
}
