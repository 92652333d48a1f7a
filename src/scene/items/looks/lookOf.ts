import type { Shape } from '../../../engine/mass/shapes';
import type { Aircraft, Role } from '../../../model/document/types';
import { ballast, camera, controller, laidAlong, pack, plainCase, receiver, type Size, servo } from './boxes';
import type { Drawing, Stuff } from './pen';
import { crankcase, finned, motor, propeller, pump, turbine } from './rounds';

/** What decides how a part looks: never its name, which is the builder's own. */
export interface Looks {
  readonly role: Role;
  readonly shape: Shape;
  /** How far its nose end is turned up, degrees. */
  readonly pitchDeg: number;
  readonly aircraft: Aircraft['kind'];
}

/** Bodies wider than this by so much longer than wide are jets rather than pumps and motors. */
const JET_FROM_MM = 60;
const JET_SLENDER = 1.6;
const PUMP_TO_MM = 45;
const UPRIGHT_DEG = 60;

function boxLook(role: Role, size: Size): Drawing {
  switch (role) {
    case 'energy':
      return pack(size);
    case 'control':
      return servoLook(size);
    case 'radio':
      return receiver(size);
    case 'powerplant':
    case 'undercarriage':
      return controller(size);
    case 'payload':
      return Math.max(...size) < 2 * Math.min(...size) ? camera(size) : controller(size);
    case 'ballast':
      return ballast(size);
    case 'other':
      return plainCase(size);
  }
}

/** A servo lies with its longest side along its length, its thinnest across. */
function servoLook(size: Size): Drawing {
  const [longest, middle, thinnest] = ([0, 1, 2] as const).toSorted((a, b) => size[b] - size[a] || a - b);
  if (longest === undefined || middle === undefined || thinnest === undefined) return plainCase(size);
  return laidAlong(servo([size[longest], size[middle], size[thinnest]]), [longest, middle, thinnest]);
}

function powerCylinder({ pitchDeg, aircraft }: Looks, lengthMm: number, diameterMm: number): Drawing {
  if (diameterMm >= JET_FROM_MM && lengthMm >= JET_SLENDER * diameterMm) return turbine(lengthMm, diameterMm);
  if (Math.abs(pitchDeg) >= UPRIGHT_DEG) return finned(lengthMm, diameterMm, pitchDeg < 0);
  if (aircraft === 'electric' || aircraft === 'glider') return motor(lengthMm, diameterMm);
  return diameterMm <= PUMP_TO_MM ? pump(lengthMm, diameterMm) : crankcase(lengthMm, diameterMm);
}

/** A part drawn as what it is, inside its own shape; null where the shape itself says it best. */
export function lookOf(looks: Looks): Drawing | null {
  const { role, shape } = looks;
  if (shape.kind === 'box') return boxLook(role, [shape.lengthMm, shape.widthMm, shape.heightMm]);
  if (role !== 'powerplant') return null;
  if (shape.kind === 'cylinder') return powerCylinder(looks, shape.lengthMm, shape.diameterMm);
  const thin = shape.kind === 'ellipsoid' && shape.lengthMm < 0.2 * Math.max(shape.widthMm, shape.heightMm);
  return thin ? propeller(shape.lengthMm, shape.widthMm, shape.heightMm) : null;
}

/** What the faces of a shape without a look of its own are made of. */
export const plainStuff = ({ role, shape }: Looks): Stuff =>
  role === 'powerplant' && shape.kind !== 'box' ? 'metal' : 'role';
