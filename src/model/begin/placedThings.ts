import type { Vec3 } from '../../engine/geometry/types';
import type { Bay, Part, Role, TankItem } from '../document/types';
import { nacellePlan } from './airframePieces';
import type { Arrangement } from './arrangements';
import { type BodyPlan, TANK_LONG, wingWaterlineMm } from './bodyPlan';
import type { Carried, Things } from './outfit';
import type { MotorKind } from './proportions';
import type { Tape } from './tape';

/** What can be in an airframe already when it is weighed. */
export const families = ['servos', 'motor', 'controller', 'receiver', 'pack'] as const;
export type Family = (typeof families)[number];

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

export const PACK_ID = 'flight-pack';
export const BAY_ID = 'pack-bay';

const half = (value: number) => Math.round(5 * value) / 10;

function part(
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
    typical: true,
    notes,
    ...more,
  };
}

/** Motor, controller, propeller, spinner, receiver, servos and pack, each where it stands. */
export function placedThings(ask: ThingsAsk): readonly Placed[] {
  return [...drive(ask), ...shelfRow(ask), ...wingServos(ask), { family: 'pack', part: pack(ask) }];
}

/** The pack at the front of its bay; where it goes is for the balance to say. */
function pack({ body, things, motor }: ThingsAsk): Part {
  const [long, , high] = things.pack.sizeMm;
  const name = motor === 'petrol' ? 'Receiver and ignition pack' : 'Flight pack';
  return part(
    PACK_ID,
    name,
    'energy',
    things.pack,
    [body.bay.fromMm + long / 2, 0, body.floorMm + high / 2],
    {
      bayId: BAY_ID,
    },
  );
}

/** The floor of the cabin, as long as the pack may slide, as wide and high as it needs. */
export function packBay({ body, things }: ThingsAsk): Bay {
  const { fromMm, toMm } = body.bay;
  const high = things.pack.sizeMm[2] + 2;
  return {
    id: BAY_ID,
    name: 'Pack bay',
    lengthMm: toMm - fromMm,
    widthMm: body.insideWidthMm,
    heightMm: high,
    positionMm: [(fromMm + toMm) / 2, 0, body.floorMm + high / 2],
    yawDeg: 0,
    pitchDeg: 0,
    rollDeg: 0,
    standsOnMm: body.floorMm,
  };
}

interface DriveSpot {
  readonly motorFromMm: number;
  readonly controllerFromMm: number;
  readonly yMm: number;
  readonly zMm: number;
  readonly tag: string;
}

function spots({ plan, tape, body, things }: ThingsAsk): readonly DriveSpot[] {
  if (body.motor) {
    const { fromMm, controllerFromMm } = body.motor;
    return [{ motorFromMm: fromMm, controllerFromMm, yMm: 0, zMm: 0, tag: '' }];
  }
  const nacelle = nacellePlan({ plan, tape, body, things });
  const motorFromMm = nacelle.fromMm + body.skinMm + 1;
  const controllerFromMm = motorFromMm + things.motor.sizeMm[0] + 2;
  return (['right', 'left'] as const).map((side) => ({
    motorFromMm,
    controllerFromMm,
    yMm: side === 'right' ? nacelle.buttlineMm : -nacelle.buttlineMm,
    zMm: nacelle.waterlineMm,
    tag: side,
  }));
}

/** Motor and controller in line, propeller and spinner clear of the end that they drive. */
function drive(ask: ThingsAsk): readonly Placed[] {
  const { plan, body, things, motor } = ask;
  const petrol = motor === 'petrol';
  const rear = plan.drive === 'rear';
  return spots(ask).flatMap(({ motorFromMm, controllerFromMm, yMm, zMm, tag }) => {
    const name = (words: string) => (tag ? `${words}, ${tag}` : words);
    const id = (words: string) => (tag ? `${words}-${tag}` : words);
    const frontMm = tag ? motorFromMm - body.skinMm - 1 : rear ? body.endMm : 0;
    const away = (clearMm: number, longMm: number): number =>
      rear ? frontMm + clearMm + longMm / 2 : frontMm - clearMm - longMm / 2;
    const [propLong] = things.propeller.sizeMm;
    const [spinnerLong] = things.spinner.sizeMm;
    const wide = (thing: Carried, fromMm: number): Vec3 => [half(2 * fromMm + thing.sizeMm[0]), yMm, zMm];
    const row: readonly Placed[] = [
      {
        family: 'motor',
        part: part(
          id('motor'),
          name(petrol ? 'Petrol engine' : 'Motor'),
          'powerplant',
          things.motor,
          wide(things.motor, motorFromMm),
          { locked: true },
        ),
      },
      {
        family: 'controller',
        part: part(
          id('controller'),
          name(petrol ? 'Ignition unit' : 'Speed controller'),
          'powerplant',
          things.controller,
          wide(things.controller, controllerFromMm),
        ),
      },
      {
        family: 'motor',
        part: part(
          id('propeller'),
          name('Propeller'),
          'powerplant',
          things.propeller,
          [away(1, propLong), yMm, zMm],
          {
            inTheOpen: true,
            locked: true,
          },
        ),
      },
      {
        family: 'motor',
        part: part(
          id('spinner'),
          name('Spinner'),
          'powerplant',
          things.spinner,
          [away(2 + propLong, spinnerLong), yMm, zMm],
          { inTheOpen: true, locked: true, yawDeg: rear ? 180 : 0 },
        ),
      },
    ];
    return row;
  });
}

/** Receiver and body servos in a row above the pack, as far from the motor as the row allows. */
function shelfRow({ plan, body, things }: ThingsAsk): readonly Placed[] {
  const { fromMm, toMm } = body.upper;
  const rear = plan.drive === 'rear';
  const row: {
    readonly family: Family;
    readonly thing: Carried;
    readonly id: string;
    readonly name: string;
    readonly role: Role;
  }[] = [{ family: 'receiver', thing: things.receiver, id: 'receiver', name: 'Receiver', role: 'radio' }];
  if (things.bodyServos === 2) {
    const names =
      plan.tail === 'v' ? ['V-tail servo 1', 'V-tail servo 2'] : ['Elevator servo', 'Rudder servo'];
    for (const name of names) {
      row.push({
        family: 'servos',
        thing: things.servo,
        id: name.toLowerCase().replaceAll(' ', '-'),
        name,
        role: 'control',
      });
    }
  }
  let next = rear ? toMm : fromMm;
  return row.map(({ family, thing, id, name, role }) => {
    const [long, , high] = thing.sizeMm;
    const x = rear ? next - long / 2 : next + long / 2;
    next += (long + 2) * (rear ? -1 : 1);
    return { family, part: part(id, name, role, thing, [half(2 * x), 0, body.upperFloorMm + high / 2]) };
  });
}

/** Half thickness of a four-digit section of unit chord at a share of it: Abbott and von Doenhoff (from memory). */
function halfThickness(share: number, thicknessPct: number): number {
  const t = thicknessPct / 100;
  const s = Math.sqrt(share);
  return (
    5 * t * (0.2969 * s - 0.126 * share - 0.3516 * share ** 2 + 0.2843 * share ** 3 - 0.1015 * share ** 4)
  );
}

/** A servo in each half of the wing, where the wing is thick enough to hold it; else none, and the body has them. */
function wingServos({ plan, tape, body, things }: ThingsAsk): readonly Placed[] {
  const spot = wingServoSpot(plan, tape, things);
  const name = things.bodyServos === 0 ? 'Elevon servo' : 'Aileron servo';
  const [long, , high] = things.servo.sizeMm;
  return (['right', 'left'] as const).map((side): Placed => {
    const sign = side === 'right' ? 1 : -1;
    const id = `${name.toLowerCase().replaceAll(' ', '-')}-${side}`;
    const words = `${name}, ${side}`;
    if (!spot) {
      const x = (body.bay.fromMm + body.bay.toMm) / 2 + sign * (long / 2 + 1);
      return {
        family: 'servos',
        part: part(id, words, 'control', things.servo, [half(2 * x), 0, body.upperFloorMm + high / 2]),
      };
    }
    const rise = spot.yMm * Math.tan((plan.dihedralDeg * Math.PI) / 180);
    const z = wingWaterlineMm(plan.id, body.heightMm) + rise;
    return {
      family: 'servos',
      part: part(id, words, 'control', things.servo, [spot.xMm, sign * spot.yMm, half(2 * z)], {
        rollDeg: -sign * plan.dihedralDeg,
      }),
    };
  });
}

/** The outermost place, no farther than half of the half span, that holds a servo with some wood around it. */
function wingServoSpot(plan: Arrangement, tape: Tape, things: Things): { xMm: number; yMm: number } | null {
  const [long, wide, high] = things.servo.sizeMm;
  for (const share of [0.5, 0.45, 0.4, 0.35, 0.3, 0.25]) {
    const y = (share * tape.spanMm) / 2;
    const outShare = share + wide / tape.spanMm;
    const chord = tape.rootChordMm + outShare * (tape.tipChordMm - tape.rootChordMm);
    const middle = 0.36;
    const thin = Math.min(
      ...[-1, 1].map((end) =>
        halfThickness(middle + (end * (long / 2 + wide / 6)) / chord, plan.thicknessPct),
      ),
    );
    if (2 * thin * chord < 1.15 * high || !(long < 0.5 * chord)) continue;
    const chordAt = tape.rootChordMm + share * (tape.tipChordMm - tape.rootChordMm);
    return { xMm: half(2 * (tape.wingAtMm + share * tape.sweepMm + middle * chordAt)), yMm: half(2 * y) };
  }
  return null;
}

/** The tank of an engine, full at the start; null without one. */
export function tankOf({ body, things, tankSideMm }: ThingsAsk): TankItem | null {
  if (!things.tank || body.tankFromMm === null) return null;
  const lengthMm = Math.round(TANK_LONG * tankSideMm);
  return {
    id: 'tank',
    name: 'Tank',
    shape: { kind: 'box', lengthMm, widthMm: tankSideMm, heightMm: tankSideMm },
    positionMm: [body.tankFromMm + lengthMm / 2, 0, body.floorMm + tankSideMm / 2],
    yawDeg: 0,
    pitchDeg: 0,
    rollDeg: 0,
    emptyMassG: things.tank.emptyMassG,
    startMl: null,
    unusableMl: Math.round((0.03 * lengthMm * tankSideMm ** 2) / 1000),
    feeds: 'outlet',
    rank: 1,
  };
}
