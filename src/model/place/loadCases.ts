import type { Vec3 } from '../../engine/geometry/types';
import { standStates } from '../airframe/flyingStates';
import { flyingSwitches, type Positions } from '../airframe/loadSwitches';
import { type Balance, balanceAt } from '../balance/balance';
import type { Aircraft } from '../document/types';
import { loadStateName } from '../loads/stateName';

/** One load state at one moment of the burn, with everything aboard that belongs to it. */
export interface AircraftCase {
  readonly id: string;
  readonly name: string;
  readonly massG: number;
  readonly momentGmm: Vec3;
  readonly positions: Positions;
  readonly fuelFraction: number;
  /** The mass of a part, or of a tank with what is in it, in this case, g; 0 when it is not aboard. */
  massOf(itemId: string): number;
}

/**
 * All combinations of the switches that fly, at all points of the burn, with the liquid settled to one apparent down or to
 * several.
 */
export function aircraftCases(aircraft: Aircraft, downs: Vec3 | readonly Vec3[]): AircraftCase[] {
  const all: readonly Vec3[] = isOne(downs) ? [downs] : downs;
  const flying = flyingPositions(aircraft);
  return all.flatMap((down, attitude) => casesAt(aircraft, flying, down, attitude));
}

/** What is only ever so on the balancing stand, each with the other switches as at the start of a flight. */
export const standCases = (aircraft: Aircraft, down: Vec3): AircraftCase[] =>
  casesAt(aircraft, standStates(aircraft), down, 0);

const isOne = (downs: Vec3 | readonly Vec3[]): downs is Vec3 => typeof downs[0] === 'number';

function casesAt(
  aircraft: Aircraft,
  states: readonly Positions[],
  down: Vec3,
  attitude: number,
): AircraftCase[] {
  return states.flatMap((positions, index) => {
    const balance = balanceAt(aircraft, { fuelFraction: 1, down, positions });
    const massOfItem = itemMasses(balance);
    return balance.travel.map(
      ({ fuelFraction, massG, cgMm }, moment): AircraftCase => ({
        id: attitude === 0 ? `${index}-${moment}` : `${index}-${moment}-${attitude}`,
        name: loadStateName(aircraft, { cgMm, massG, fuelFraction, positions }),
        massG,
        momentGmm: [massG * cgMm[0], massG * cgMm[1], massG * cgMm[2]],
        positions,
        fuelFraction,
        massOf: (itemId) => massOfItem(itemId, moment),
      }),
    );
  });
}

/** Every combination of the switches in which the aircraft flies. What is only ever so on the stand is not among them. */
export function flyingPositions(aircraft: Aircraft): readonly Positions[] {
  return flyingSwitches(aircraft).reduce<readonly Positions[]>(
    (all, { id, positions }) =>
      all.flatMap((chosen) => positions.map((position) => ({ ...chosen, [id]: position.id }))),
    [{}],
  );
}

function itemMasses({ bodies, liquid: { plumbing, tankMassesG } }: Balance) {
  const solid = new Map<string, number>();
  for (const { sourceId, mass } of bodies) solid.set(sourceId, (solid.get(sourceId) ?? 0) + mass.massG);
  return (itemId: string, moment: number) => {
    const tank = plumbing?.tanks.findIndex(({ id }) => id === itemId) ?? -1;
    return (solid.get(itemId) ?? 0) + (tank < 0 ? 0 : (tankMassesG[moment]?.[tank] ?? 0));
  };
}
