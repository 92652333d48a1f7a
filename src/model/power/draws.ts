import type { PowerPhase } from '../../engine/power/packEndurance';
import type { Aircraft, Part, PowerUse } from '../document/types';

/** What a part draws at a throttle of 0 to 100 %, on the mean, A. */
export function meanAt(part: Part, throttlePct: number): number {
  const use = part.power?.use;
  return use ? meanOf(use, throttlePct) : 0;
}

/**
 * What follows the throttle is drawn on a straight line from idle to full: with a propeller, whose power grows faster than
 * that, the line lies above the truth between its ends.
 */
function meanOf({ meanA, idleA = 0, followsThrottle }: PowerUse, throttlePct: number): number {
  return followsThrottle ? idleA + ((meanA - idleA) * throttlePct) / 100 : meanA;
}

export const peakOf = (part: Part): number => part.power?.use?.peakA ?? 0;

/** A flight that packs are held to. */
export interface PowerPlan {
  readonly phases: readonly {
    readonly name: string;
    readonly durationS: number;
    readonly throttlePct: number;
  }[];
  readonly flightS: number;
  /** With the reserve, s. */
  readonly neededS: number;
  readonly reservePct: number;
  readonly from: 'fuel profile' | 'flight stated';
}

/** The flight that packs must last for, with its reserve: a flight stated for them, else the fuel profile. Null where nobody says how long it is. */
export function powerPlan({ powerFlight, fuel }: Aircraft): PowerPlan | null {
  const stated = powerFlight && { ...powerFlight, from: 'flight stated' as const };
  const burnt = fuel && {
    phases: fuel.profile.phases,
    reservePct: fuel.reservePct,
    from: 'fuel profile' as const,
  };
  const plan = stated ?? burnt;
  const flightS = plan?.phases.reduce((sum, { durationS }) => sum + durationS, 0) ?? 0;
  if (!plan || !(flightS > 0)) return null;
  return { ...plan, flightS, neededS: flightS * (1 + plan.reservePct / 100) };
}

/** The phases with what each unit draws in them. */
export function drawnPhases({ phases }: PowerPlan, units: readonly Part[]): readonly PowerPhase[] {
  const byId = new Map(units.map((part) => [part.id, part]));
  return phases.map(({ durationS, throttlePct }) => ({
    durationS,
    drawA: (id) => {
      const part = byId.get(id);
      return part ? meanAt(part, throttlePct) : 0;
    },
  }));
}
