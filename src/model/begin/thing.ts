import type { Vec3 } from '../../engine/geometry/types';
import type { Part, Role } from '../document/types';
import type { Arrangement } from './arrangements';
import type { BodyPlan } from './bodyPlan';
import type { Carried, Things } from './outfit';
import type { MotorKind } from './proportions';
import type { Tape } from './tape';

/** What can be in an airframe already when it is weighed. */
export const families = ['servos', 'motor', 'controller', 'receiver', 'pack'] as const;
export type Family = (typeof families)[number];

/** What the things are placed in. */
export interface ThingsAsk {
  readonly plan: Arrangement;
  readonly tape: Tape;
  readonly body: BodyPlan;
  readonly things: Things;
  readonly motor: MotorKind;
  readonly tankSideMm: number;
}

/** A part and the family that it is ticked with. */
export interface Placed {
  readonly family: Family;
  readonly part: Part;
}

/** Ids of a new aircraft's pack and of the bay that it slides in. */
export const PACK_ID = 'flight-pack';
export const BAY_ID = 'pack-bay';

/** A part of the list, marked as assumed. */
export function part(
  id: string,
  name: string,
  role: Role,
  { massG, shape }: Carried,
  positionMm: Vec3,
  more: Partial<Part> = {},
): Part {
  const notes = 'Assumed from proportions, weigh yours.';
  return {
    id,
    name,
    role,
    shape,
    massG,
    positionMm,
    yawDeg: 0,
    pitchDeg: 0,
    rollDeg: 0,
    massFrom: 'assumed',
    sizeFrom: 'assumed',
    notes,
    ...more,
  };
}
