import { type LiquidMoment, momentOf } from '../../engine/balance/travel';
import type { Vec3 } from '../../engine/geometry/types';
import { liquidState } from '../../engine/liquid/liquidState';
import { type Plumbing, plumbing, tankVolumesAfter } from '../../engine/liquid/plumbing';
import type { LiquidState } from '../../engine/liquid/types';
import { engineTanks } from '../airframe/tanks';
import type { Aircraft } from '../document/types';

/** Fuel states along the burn, full to dry, at which the travel is computed. */
export const FUEL_STATES = 64;
/** Fewer with the aircraft tilted, as every step of the tilt settles all the liquid anew. */
const TILTED_STATES = 17;

/** All the liquid at the fuel states of the travel, full to dry; a single state when nothing can be drawn. */
export interface LiquidTable {
  /** Null without tanks. */
  readonly plumbing: Plumbing | null;
  readonly moments: readonly LiquidMoment[];
  /** Liquid in each tank at each moment, g, in the order of `plumbing.tanks`. */
  readonly tankMassesG: readonly (readonly number[])[];
}

const DRY: LiquidTable = {
  plumbing: null,
  moments: [{ fuelFraction: 0, massG: 0, momentGmm: [0, 0, 0] }],
  tankMassesG: [[]],
};

/** All the liquid of a fuel state as one. */
export function liquidMoment(fuelFraction: number, states: readonly LiquidState[]): LiquidMoment {
  let massG = 0;
  let [x, y, z] = [0, 0, 0];
  const byTank = states.map(({ mass }) => momentOf(mass));
  for (const tank of byTank) {
    massG += tank.massG;
    x += tank.momentGmm[0];
    y += tank.momentGmm[1];
    z += tank.momentGmm[2];
  }
  return { fuelFraction, massG, momentGmm: [x, y, z], byTank };
}

/** The liquid in each tank with a fraction of the usable liquid left, 1 full to 0 dry. */
export function liquidStatesAt(plumbed: Plumbing, fuelFraction: number, down: Vec3): LiquidState[] {
  const volumes = tankVolumesAfter(plumbed, (1 - fuelFraction) * plumbed.usableMl, down);
  return plumbed.tanks.map((tank, i) => liquidState(tank, volumes[i] ?? 0, down));
}

/** How the tanks are plumbed; null without tanks, or where they cannot be. */
export function plumbingOf(aircraft: Aircraft): Plumbing | null {
  const tanks = engineTanks(aircraft);
  if (tanks.length === 0) return null;
  const plumbed = plumbing(tanks);
  return 'faults' in plumbed ? null : plumbed;
}

function liquidTable(aircraft: Aircraft, down: Vec3): LiquidTable {
  const plumbed = plumbingOf(aircraft);
  if (!plumbed) return DRY;
  const level = down[0] === 0 && down[1] === 0;
  const count = plumbed.usableMl > 0 ? (level ? FUEL_STATES : TILTED_STATES) : 1;
  const fractions = Array.from({ length: count }, (_, i) => (count === 1 ? 0 : 1 - i / (count - 1)));
  const states = fractions.map((fraction) => liquidStatesAt(plumbed, fraction, down));
  return {
    plumbing: plumbed,
    moments: states.map((own, i) => liquidMoment(fractions[i] ?? 0, own)),
    tankMassesG: states.map((own) => own.map(({ mass }) => mass.massG)),
  };
}

/** The last table, kept because a part being dragged leaves the tanks as they are. */
let kept: { tanks: Aircraft['tanks']; fuel: Aircraft['fuel']; down: Vec3; table: LiquidTable } | null = null;

/** The table of an aircraft; the very same one while tanks, fuel and attitude stay what they were. */
export function liquidTableOf(aircraft: Aircraft, down: Vec3): LiquidTable {
  const { tanks, fuel } = aircraft;
  if (kept && kept.tanks === tanks && kept.fuel === fuel && kept.down === down) return kept.table;
  kept = { tanks, fuel, down, table: liquidTable(aircraft, down) };
  return kept.table;
}
