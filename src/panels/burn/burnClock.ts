import { type BurnTimeline, burnTimeline, drawnAt, timeAtDrawn } from '../../engine/liquid/burn';
import { lastOnly } from '../../engine/memory/memory';
import type { Fuel } from '../../model/document/types';

/** The aircraft's fuel profile flown from full tanks; null when nothing burns or the profile is no good. */
export function burnClock(fuel: Fuel | null, usableMl: number): BurnTimeline | null {
  return fuel && usableMl > 0 ? timelineOf(fuel, usableMl) : null;
}

const timelineOf = lastOnly((fuel: Fuel, usableMl: number): BurnTimeline | null => {
  const flown = burnTimeline(fuel.profile.phases, fuel.flow, usableMl);
  return 'faults' in flown || flown.totalS === 0 ? null : flown;
});

/** Usable liquid left at a time into the profile, 1 full to 0 dry. */
export const fractionAt = (clock: BurnTimeline, atS: number): number =>
  1 - drawnAt(clock, atS) / clock.usableMl;

/** When so much is left, s; null when the profile ends with more than that in the tanks. */
export const timeOfFraction = (clock: BurnTimeline, fraction: number): number | null =>
  timeAtDrawn(clock, Math.max(0, (1 - fraction) * clock.usableMl - clock.usableMl * 1e-9));

/** When the play must stop: the tanks run dry or the profile ends, s. */
export const endOf = (clock: BurnTimeline): number => Math.min(clock.dryAtS ?? clock.totalS, clock.totalS);

/** The phase being flown at a time, by its name. */
export function phaseAt(fuel: Fuel, atS: number): string {
  let endS = 0;
  for (const phase of fuel.profile.phases) {
    endS += phase.durationS;
    if (atS < endS) return phase.name;
  }
  return fuel.profile.phases.at(-1)?.name ?? '';
}
