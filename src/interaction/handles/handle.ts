import type { Vec3 } from '../../engine/geometry/types';
import { dot, sub } from '../../engine/geometry/vec3';
import type { StructurePiece, TankItem } from '../../model/document/types';
import type { Ray } from '../dragPlane';

/** What can be given another shape by hand. */
export type Shaped = StructurePiece | TankItem;

/** One dimension of a thing that can be taken hold of: it moves along one straight line. Aircraft frame, mm. */
export interface Handle {
  /** Unique among the handles of its thing, and the same while the thing is reshaped. */
  readonly id: string;
  /** The dimension as it reads: "Width, section 3". */
  readonly label: string;
  /** Where it stands, and the unit direction in which its figure grows. */
  readonly atMm: Vec3;
  readonly axis: Vec3;
  /** To which side of the place its knob stands, along the axis: out of the way of what it measures. 1 when left out. */
  readonly lean?: 1 | 0 | -1;
  readonly quantity: 'length' | 'angle';
  /** The figure now, mm or degrees. */
  readonly value: number;
  readonly least: number;
  readonly most: number;
  /** What it belongs to, counted from 0: handles of one place are shown together, `main` ones always. */
  readonly place: number;
  readonly main: boolean;
  /** Figures that it catches on when they are near, as the faces of neighbours are. */
  readonly catches?: readonly number[];
  /** The figure once it has gone so far along its line. */
  readonly after: (alongMm: number) => number;
  /** The thing with another figure here. */
  readonly set: (value: number) => Shaped;
}

/** Nobody measures finer, mm or degrees; and what a handle moves by with nothing to catch on. */
export const FINE_STEP = 0.1;
/** An angle catches on half degrees. */
const ANGLE_STEP = 0.5;

/** How far along the line through a point the place lies that is nearest to a ray, mm; null where the two run alike. */
export function alongAxis({ originMm, direction }: Ray, atMm: Vec3, axis: Vec3): number | null {
  const apart = sub(originMm, atMm);
  const [a, b] = [dot(direction, direction), dot(direction, axis)];
  // Two lines nearest to each other: Ericson, Real-Time Collision Detection, section 5.1.8, from memory.
  const square = a - b * b;
  if (square < 1e-4 * a) return null;
  return (a * dot(axis, apart) - b * dot(direction, apart)) / square;
}

export interface Snapping {
  readonly gridMm: number;
  /** How near counts as near, mm. */
  readonly reachMm: number;
  readonly free: boolean;
}

/** The figure that a handle comes to for what the hand wants: caught, in steps and within its limits. */
export function snappedFigure(handle: Handle, wanted: number, { gridMm, reachMm, free }: Snapping): number {
  const step = free ? FINE_STEP : handle.quantity === 'angle' ? ANGLE_STEP : gridMm;
  const near = free ? [] : (handle.catches ?? []).filter((figure) => Math.abs(figure - wanted) <= reachMm);
  const caught = near.sort((a, b) => Math.abs(a - wanted) - Math.abs(b - wanted))[0];
  return held(handle, caught ?? inSteps(wanted, step));
}

/** A figure within a handle's limits. */
export const held = ({ least, most }: Handle, figure: number): number =>
  Math.min(most, Math.max(least, figure));

const inSteps = (figure: number, step: number): number =>
  Number((Math.round(figure / step) * step).toFixed(9)) || 0;
