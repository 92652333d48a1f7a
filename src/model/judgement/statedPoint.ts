import { flyingStart } from '../airframe/flyingStates';
import type { Positions } from '../airframe/loadSwitches';
import { balanceAt } from '../balance/balance';
import type { Aircraft } from '../document/types';
import { type Against, cgPoint } from './states';
import type { CgPoint, Known } from './types';

/** The positions and the fuel, 1 full to 0 dry, that limits were stated for; null where they hold for every load state. */
export function statedMoment(
  aircraft: Aircraft,
): { readonly positions: Positions; readonly fuelFraction: number } | null {
  const stated = aircraft.targetBand?.statedFor;
  if (!stated) return null;
  const named = Object.fromEntries(stated.switches.map(({ switchId, positionId }) => [switchId, positionId]));
  return { positions: { ...flyingStart(aircraft), ...named }, fuelFraction: stated.fuelPct / 100 };
}

/** Where the CG lies in the load state that the limits were stated for; null where there is none, or no CG in it. */
export function statedPoint(aircraft: Aircraft, { down, estimate }: Known, against: Against): CgPoint | null {
  const moment = statedMoment(aircraft);
  if (!moment) return null;
  const { cgMm, massG } = balanceAt(aircraft, { ...moment, down, estimate });
  return cgMm && cgPoint({ cgMm, massG, fuelFraction: moment.fuelFraction }, moment.positions, against);
}
