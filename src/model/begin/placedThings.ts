import type { Vec3 } from '../../engine/geometry/types';
import type { Bay, Part, Role, TankItem } from '../document/types';
import { tenth } from './airframeAsk';
import { TANK_LONG } from './bodyPlan';
import { nacellePlan } from './nacelles';
import type { Carried } from './outfit';
import { BAY_ID, type Family, PACK_ID, type Placed, part, type ThingsAsk } from './thing';
import { wingServos } from './wingServos';

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
    const wide = (thing: Carried, fromMm: number): Vec3 => [tenth(fromMm + thing.sizeMm[0] / 2), yMm, zMm];
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
    return { family, part: part(id, name, role, thing, [tenth(x), 0, body.upperFloorMm + high / 2]) };
  });
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
