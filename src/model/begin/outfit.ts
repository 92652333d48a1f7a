import type { Vec3 } from '../../engine/geometry/types';
import { type ShelfPart, shelf } from '../airframe/shelf';
import type { Arrangement } from './arrangements';
import { type MotorKind, outfitShares } from './proportions';

/** Something to be carried: what it weighs and the box around it as it is mounted, mm. */
export interface Carried {
  readonly massG: number;
  readonly shape: Extract<ShelfPart['shape'], { kind: 'box' | 'cylinder' | 'ellipsoid' | 'frustum' }>;
  /** Along, across, up. */
  readonly sizeMm: Vec3;
}

/** Everything that is carried, each as one piece; of motors with their gear there may be two, of servos more. */
export interface Things {
  readonly motor: Carried;
  readonly controller: Carried;
  readonly propeller: Carried;
  readonly spinner: Carried;
  readonly pack: Carried;
  readonly receiver: Carried;
  readonly servo: Carried;
  readonly bodyServos: 0 | 2;
  readonly tank: { readonly emptyMassG: number; readonly fuelG: number } | null;
}

/** What is mounted: motor and controller for each propeller. */
export const driveCount = ({ drive }: Arrangement): 1 | 2 => (drive === 'nacelles' ? 2 : 1);

/** What an aircraft of so many grams carries behind a propeller so large, by its kind's shares and the shelf's densities. */
export function thingsFor(plan: Arrangement, motor: MotorKind, massG: number, propellerMm: number): Things {
  const shares = outfitShares(plan.id, motor);
  const each = (share: number, count: number) => roundedG((share * massG) / count);
  const drives = driveCount(plan);
  const tailless = plan.tail === 'none' && plan.foreplaneShare === 0;
  const petrol = motor === 'petrol';
  const motorThing = petrol
    ? alike(/^Petrol engine/, each(shares.motor, drives))
    : alike(/^Motor,/, each(shares.motor, drives));
  return {
    motor: motorThing,
    controller: alike(petrol ? /^Ignition unit/ : /^Speed controller/, each(shares.controller, drives)),
    propeller: propeller(each(shares.propeller, drives), Math.round(propellerMm)),
    spinner: spinner(each(shares.spinner, drives)),
    pack: alike(petrol ? /^Receiver pack/ : /^Pack /, each(shares.pack, 1)),
    receiver: alike(/^Receiver(, small)?$/, each(shares.receiver, 1)),
    servo: laidFlat(alike(/^Servo,/, each(shares.servos, tailless ? 2 : 4))),
    bodyServos: tailless ? 0 : 2,
    tank: shares.fuel > 0 ? { emptyMassG: roundedG(shares.tank * massG), fuelG: shares.fuel * massG } : null,
  };
}

/** The thing of the shelf that comes nearest in mass, made larger or smaller alike in all directions at its density. */
function alike(named: RegExp, massG: number): Carried {
  const near = shelf
    .filter(({ name }) => named.test(name))
    .sort((a, b) => Math.abs(Math.log(a.massG / massG)) - Math.abs(Math.log(b.massG / massG)))[0];
  if (!near) throw new Error(`Nothing on the shelf is called ${named}.`);
  const scale = Math.cbrt(massG / near.massG);
  const { shape } = near;
  if (shape.kind === 'box') {
    const size: Vec3 = [shape.lengthMm, shape.widthMm, shape.heightMm];
    const [lengthMm, widthMm, heightMm] = size.map((side) => roundedMm(side * scale)) as [
      number,
      number,
      number,
    ];
    return {
      massG,
      shape: { kind: 'box', lengthMm, widthMm, heightMm },
      sizeMm: [lengthMm, widthMm, heightMm],
    };
  }
  if (shape.kind === 'cylinder') {
    const [lengthMm, diameterMm] = [roundedMm(shape.lengthMm * scale), roundedMm(shape.diameterMm * scale)];
    return {
      massG,
      shape: { kind: 'cylinder', lengthMm, diameterMm },
      sizeMm: [lengthMm, diameterMm, diameterMm],
    };
  }
  throw new Error(`${near.name} is neither a box nor a drum.`);
}

/** On its side, so that it takes the least height. */
function laidFlat({ massG, sizeMm: [lengthMm, w, h] }: Carried): Carried {
  const [heightMm, widthMm] = [Math.min(w, h), Math.max(w, h)];
  return {
    massG,
    shape: { kind: 'box', lengthMm, widthMm, heightMm },
    sizeMm: [lengthMm, widthMm, heightMm],
  };
}

/** Blades across, as thick along as it weighs: a body to look at and to keep clear of. */
function propeller(massG: number, diameterMm: number): Carried {
  const [lengthMm, heightMm] = [roundedMm(0.035 * diameterMm), roundedMm(0.09 * diameterMm)];
  return {
    massG,
    shape: { kind: 'ellipsoid', lengthMm, widthMm: diameterMm, heightMm },
    sizeMm: [lengthMm, diameterMm, heightMm],
  };
}

/** Like the shelf's, pointed to the front. */
function spinner(massG: number): Carried {
  const near = shelf.find(({ name }) => name.startsWith('Spinner'));
  if (near?.shape.kind !== 'frustum') throw new Error('No spinner lies on the shelf.');
  const scale = Math.cbrt(massG / near.massG);
  const [lengthMm, rearDiameterMm] = [
    roundedMm(near.shape.lengthMm * scale),
    roundedMm(near.shape.rearDiameterMm * scale),
  ];
  return {
    massG,
    shape: { kind: 'frustum', lengthMm, frontDiameterMm: 0, rearDiameterMm },
    sizeMm: [lengthMm, rearDiameterMm, rearDiameterMm],
  };
}

/** Sizes to half a millimetre, masses to a gram or a tenth: nobody has them finer. */
const roundedMm = (value: number) => Math.max(0.5, Math.round(2 * value) / 2);
export const roundedG = (value: number) =>
  value >= 20 ? Math.round(value) : Math.max(0.1, Math.round(10 * value) / 10);
