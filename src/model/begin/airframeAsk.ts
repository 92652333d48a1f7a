import type { Vec3 } from '../../engine/geometry/types';
import type { MassSource } from '../document/types';
import type { Arrangement } from './arrangements';
import type { BodyPlan } from './bodyPlan';
import type { Things } from './outfit';
import { type Construction, SKIN_AT_MM, type Skins, skins } from './proportions';
import { type Tape, wingAreaMm2 } from './tape';

/** What the airframe is made from. */
export interface AirframeAsk {
  readonly plan: Arrangement;
  readonly tape: Tape;
  readonly body: BodyPlan;
  readonly things: Things;
  readonly construction: Construction;
  /** How much heavier than usual the skins are. */
  readonly scale: number;
  /** What the whole airframe weighs, g; legs get their share of it. */
  readonly airframeG: number;
}

/** A point, mm to a tenth. */
export const at = (x: number, y: number, z: number): Vec3 => [tenth(x), tenth(y), tenth(z)];
export const tenth = (value: number) => Math.round(value * 10) / 10;

/** Skins grow with the size of the aircraft: its mass then goes with the cube of its size, as models' masses do. */
export function skinOf({ plan, tape, construction, scale }: AirframeAsk, what: keyof Skins): MassSource {
  const size = Math.sqrt(wingAreaMm2(plan.id, tape)) / SKIN_AT_MM;
  return { by: 'skin', gPerM2: Math.max(1, tenth(skins[construction][what] * size * scale)) };
}
