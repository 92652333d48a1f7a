import type { Fuselage } from '../document/types';
import { type Arrangement, arrangementOf } from './arrangements';
import type { Carried, Things } from './outfit';
import type { Construction } from './proportions';
import { quarterMacMm, type Tape, wingAreaMm2 } from './tape';

/** A stretch along the body, mm from the nose. */
export interface Stretch {
  readonly fromMm: number;
  readonly toMm: number;
}

/** The body as it is to be built: its sections, and where what is carried stands in it. mm. */
export interface BodyPlan {
  readonly sections: Fuselage['sections'];
  readonly widthMm: number;
  readonly heightMm: number;
  readonly skinMm: number;
  readonly endMm: number;
  /** The least that it must be long for all that goes in. */
  readonly leastMm: number;
  /** The middle of its end and half as high as it is there. */
  readonly tail: { readonly waterlineMm: number; readonly halfHeightMm: number };
  /** Where motor and controller stand, by their front ends; null with nacelles. */
  readonly motor: { readonly fromMm: number; readonly controllerFromMm: number } | null;
  /** The floor, over the whole of which a pack may slide. */
  readonly bay: Stretch;
  readonly tankFromMm: number | null;
  /** The shelf above the floor, for receiver and servos. */
  readonly upper: Stretch;
  readonly floorMm: number;
  readonly upperFloorMm: number;
  readonly insideWidthMm: number;
}

/** Walls of the body, mm: common practice, no source. */
const wallMm: Readonly<Record<Construction, number>> = { foam: 4, balsa: 3, glass: 0.8, carbon: 0.6 };

/** How far along and up the corner of a box may stand in a section with these corners: 1 − (1 − 1/√2)·roundness. */
const ROUNDNESS = 0.35;
const IN_CORNER = 1 - (1 - Math.SQRT1_2) * ROUNDNESS - 0.01;

/** Clear of the next thing, mm, and what the usual rules of distance ask for: see `defaultKeepApart`. */
const GAP_MM = 2;
const PACK_FROM_MOTOR_MM = 26;
const RADIO_FROM_MOTOR_MM = 61;

/** So far along the body its even cabin may reach. */
const MOST_CABIN = 0.9;

const aboveAll = (least: number, ...others: readonly number[]) => Math.max(least, ...others);

/** A litre or two of fuel as a box, mm: somewhat longer than wide, as wide as high. */
export const TANK_LONG = 1.6;
export function tankSideMm(fuelG: number, gPerMl: number): number {
  return Math.ceil(Math.cbrt(((fuelG / gPerMl) * 1000) / TANK_LONG));
}

export interface BodyAsk {
  readonly tape: Tape;
  readonly things: Things;
  readonly construction: Construction;
  readonly tankSideMm: number;
}

/** The body of an arrangement, no smaller than what goes in it. */
export function bodyPlan(
  plan: Arrangement,
  { tape, things, construction, tankSideMm: side }: BodyAsk,
): BodyPlan {
  const { motor, controller, pack, receiver, servo, bodyServos, tank } = things;
  const skinMm = wallMm[construction];
  const rootAreaMm = Math.sqrt(wingAreaMm2(plan.id, tape));
  const upperHighMm = Math.max(receiver.sizeMm[2], bodyServos > 0 ? servo.sizeMm[2] : 0);
  const lowerHighMm = Math.max(pack.sizeMm[2], tank ? side : 0);
  const insideHighMm = lowerHighMm + upperHighMm + 3 * GAP_MM;
  const insideWideMm =
    Math.max(pack.sizeMm[1], receiver.sizeMm[1], servo.sizeMm[1], tank ? side : 0) + 2 * GAP_MM;
  const outer = (insideMm: number) => insideMm / IN_CORNER + 2 * skinMm;
  const widthMm = Math.ceil(Math.max(plan.bodyShare[0] * rootAreaMm, outer(insideWideMm)));
  const heightMm = Math.ceil(Math.max(plan.bodyShare[1] * rootAreaMm, outer(insideHighMm)));
  const inside = (outerMm: number) => (outerMm - 2 * skinMm) * IN_CORNER;
  const floorMm = -inside(heightMm) / 2;
  const endMm = plan.tail === 'booms' ? Math.ceil(tape.wingAtMm + 1.12 * tape.rootChordMm) : tape.lengthMm;
  const driveMm = skinMm + 1 + motor.sizeMm[0] + GAP_MM + controller.sizeMm[0] + GAP_MM;
  const inBody = plan.drive !== 'nacelles';
  const cap = inBody ? capAround(motor, skinMm) : roundCap(0.4 * Math.min(widthMm, heightMm));
  const upperNeedMm = receiver.sizeMm[0] + bodyServos * (servo.sizeMm[0] + GAP_MM) + 2 * GAP_MM;
  const tankLongMm = tank ? TANK_LONG * side : 0;
  const floorNeedMm = 1.6 * pack.sizeMm[0] + (tank ? tankLongMm + GAP_MM : 0) + 2 * GAP_MM;
  const shape = { widthMm, heightMm, cap, endMm };

  if (plan.drive === 'rear') {
    const cabinFromMm = Math.round(0.1 * endMm);
    const driveFromMm = endMm - driveMm;
    const motorFromMm = endMm - skinMm - 1 - motor.sizeMm[0];
    const bayToMm = driveFromMm - PACK_FROM_MOTOR_MM;
    const bay = { fromMm: cabinFromMm + GAP_MM, toMm: Math.max(bayToMm, cabinFromMm + GAP_MM + floorNeedMm) };
    return {
      ...finished(shape, rearSections(shape, cabinFromMm, driveFromMm), skinMm),
      leastMm: Math.ceil(
        Math.max(
          (floorNeedMm + PACK_FROM_MOTOR_MM + driveMm + GAP_MM) / 0.9,
          (upperNeedMm + RADIO_FROM_MOTOR_MM + driveMm + GAP_MM) / 0.9,
        ),
      ),
      motor: { fromMm: motorFromMm, controllerFromMm: driveFromMm + GAP_MM / 2 },
      ...floor(bay, tank ? tankLongMm : 0, pack.sizeMm[0], quarterMacMm(tape)),
      upper: {
        fromMm: bay.fromMm,
        toMm: aboveAll(bay.fromMm + upperNeedMm, driveFromMm - RADIO_FROM_MOTOR_MM),
      },
      floorMm,
      upperFloorMm: floorMm + lowerHighMm + GAP_MM,
      insideWidthMm: inside(widthMm),
    };
  }
  const cabinFromMm = Math.ceil(inBody ? driveMm : 0.1 * endMm);
  const bayFromMm = cabinFromMm + (inBody ? PACK_FROM_MOTOR_MM : GAP_MM);
  const upperFromMm = cabinFromMm + (inBody ? RADIO_FROM_MOTOR_MM : GAP_MM);
  const cabinToMm = Math.ceil(
    aboveAll(tape.wingAtMm + 0.9 * tape.rootChordMm, bayFromMm + floorNeedMm, upperFromMm + upperNeedMm),
  );
  return {
    ...finished(shape, noseSections(shape, cabinFromMm, Math.min(cabinToMm, MOST_CABIN * endMm)), skinMm),
    leastMm: Math.ceil(Math.max(bayFromMm + floorNeedMm, upperFromMm + upperNeedMm) / MOST_CABIN),
    motor: inBody ? { fromMm: skinMm + 1, controllerFromMm: skinMm + 1 + motor.sizeMm[0] + GAP_MM } : null,
    ...floor(
      { fromMm: bayFromMm, toMm: cabinToMm - GAP_MM },
      tank ? tankLongMm : 0,
      pack.sizeMm[0],
      quarterMacMm(tape),
    ),
    upper: { fromMm: upperFromMm, toMm: cabinToMm - GAP_MM },
    floorMm,
    upperFloorMm: floorMm + lowerHighMm + GAP_MM,
    insideWidthMm: inside(widthMm),
  };
}

/** The floor between pack and tank: the tank about the wing's quarter chord, the pack ahead of it. */
function floor(whole: Stretch, tankMm: number, packMm: number, quarterMm: number) {
  if (tankMm === 0) return { bay: whole, tankFromMm: null };
  const least = whole.fromMm + 1.4 * packMm + GAP_MM;
  const most = whole.toMm - tankMm;
  const tankFromMm = Math.round(Math.min(Math.max(quarterMm - tankMm / 2, least), Math.max(least, most)));
  return { bay: { fromMm: whole.fromMm, toMm: tankFromMm - GAP_MM }, tankFromMm };
}

interface BodyShape {
  readonly widthMm: number;
  readonly heightMm: number;
  readonly cap: Cap;
  readonly endMm: number;
}

/** The end of the body that a motor stands in, or a plain nose. */
interface Cap {
  readonly widthMm: number;
  readonly heightMm: number;
  readonly roundness: number;
}

const roundCap = (acrossMm: number): Cap => ({ widthMm: acrossMm, heightMm: acrossMm, roundness: 1 });

/** Round about a drum; about an engine's box as the cabin is. */
function capAround({ shape, sizeMm: [, wide, high] }: Carried, skinMm: number): Cap {
  const walls = 2 * (skinMm + GAP_MM);
  if (shape.kind !== 'box') return roundCap(wide + walls);
  return { widthMm: wide / IN_CORNER + walls, heightMm: high / IN_CORNER + walls, roundness: ROUNDNESS };
}

const section = (
  stationMm: number,
  widthMm: number,
  heightMm: number,
  roundness: number,
  waterlineMm = 0,
) => ({
  stationMm: Math.round(stationMm * 10) / 10,
  widthMm: Math.round(widthMm * 10) / 10,
  heightMm: Math.round(heightMm * 10) / 10,
  waterlineMm: Math.round(waterlineMm * 10) / 10,
  roundness,
});

function finished({ widthMm, heightMm, endMm }: BodyShape, sections: Fuselage['sections'], skinMm: number) {
  const last = sections.at(-1)!;
  const tail = { waterlineMm: last.waterlineMm, halfHeightMm: last.heightMm / 2 };
  return { sections, widthMm, heightMm, skinMm, endMm, tail };
}

/** Motor or nose cap in front, an even cabin, then slender to the tail and a little upwards. */
function noseSections({ widthMm, heightMm, cap, endMm }: BodyShape, fromMm: number, toMm: number) {
  const [w, h] = [Math.max(widthMm, cap.widthMm), Math.max(heightMm, cap.heightMm)];
  const tailHighMm = Math.max(10, 0.32 * heightMm);
  return [
    section(0, cap.widthMm, cap.heightMm, cap.roundness),
    section(fromMm, w, h, ROUNDNESS),
    section(toMm, w, h, ROUNDNESS),
    section((toMm + 2 * endMm) / 3, 0.5 * w, 0.56 * h, 0.7, 0.14 * heightMm),
    section(endMm, Math.max(8, 0.2 * widthMm), tailHighMm, 1, 0.2 * heightMm),
  ];
}

/** A round nose, an even cabin, and the motor behind it. */
function rearSections({ widthMm, heightMm, cap, endMm }: BodyShape, fromMm: number, toMm: number) {
  const [w, h] = [Math.max(widthMm, cap.widthMm), Math.max(heightMm, cap.heightMm)];
  return [
    section(0, 0.35 * w, 0.35 * h, 1, -0.1 * h),
    section(0.35 * fromMm, 0.74 * w, 0.74 * h, 0.8, -0.04 * h),
    section(fromMm, w, h, ROUNDNESS),
    section(toMm, w, h, ROUNDNESS),
    section(endMm, cap.widthMm, cap.heightMm, cap.roundness),
  ];
}

/** How far up or down of the body's middle the wing stands, mm. */
export const wingWaterlineMm = (id: Arrangement['id'], heightMm: number): number =>
  Math.round((arrangementOf(id).wingHeight * heightMm) / 2);
