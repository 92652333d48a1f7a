import type { Leg } from '../document/types';
import { type AirframeAsk, at, tenth } from './airframeAsk';
import type { BodyPlan } from './bodyPlan';
import { LEGS_SHARE } from './proportions';
import type { Tape } from './tape';

/** Legs down to where the propeller stays clear of the ground by a sixth of its radius. */
export function legs(ask: AirframeAsk): readonly Leg[] {
  const { plan, tape, body, things, airframeG } = ask;
  if (plan.wheels === 'none') return [];
  const half = body.heightMm / 2;
  const wheelMm = Math.round(Math.max(0.045 * tape.spanMm, 0.3 * half));
  const propellerMm = things.propeller.sizeMm[1] / 2;
  const groundMm = -Math.max(1.17 * propellerMm, half + 1.3 * wheelMm);
  const axleMm = groundMm + wheelMm / 2;
  const tricycle = plan.wheels === 'nose';
  const quarterMm = tape.wingAtMm + 0.25 * tape.rootChordMm + 0.42 * tape.sweepMm;
  const mainMm = tricycle ? quarterMm + 0.35 * tape.rootChordMm : tape.wingAtMm + 0.02 * tape.rootChordMm;
  const strutMm = Math.max(2, Math.round(0.0035 * tape.spanMm));
  const main: Leg = {
    id: 'main-leg',
    kind: 'leg',
    name: 'Main leg',
    sides: 'both',
    topMm: at(mainMm, 0.28 * body.widthMm, -half),
    axleMm: at(mainMm, Math.max(0.12 * tape.spanMm, 0.6 * body.widthMm), axleMm),
    strutDiameterMm: strutMm,
    strutMassG: tenth((0.5 * LEGS_SHARE.main * airframeG) / 2),
    wheelDiameterMm: wheelMm,
    wheelWidthMm: Math.round(0.34 * wheelMm),
    wheelMassG: tenth((0.5 * LEGS_SHARE.main * airframeG) / 2),
  };
  const thirdWheelMm = tricycle ? Math.round(0.9 * wheelMm) : Math.round(0.4 * wheelMm);
  const third: Leg = {
    ...main,
    id: tricycle ? 'nose-leg' : 'tail-leg',
    name: tricycle ? 'Nose leg' : 'Tail leg',
    sides: 'centre',
    ...(tricycle ? noseLeg(tape, body, groundMm + thirdWheelMm / 2) : tailLeg(tape, body)),
    strutMassG: tenth(0.5 * LEGS_SHARE.third * airframeG),
    wheelDiameterMm: thirdWheelMm,
    wheelWidthMm: Math.max(2, Math.round(0.34 * thirdWheelMm)),
    wheelMassG: tenth(0.5 * LEGS_SHARE.third * airframeG),
  };
  return [main, third];
}

/** Under the front of the cabin, where the hull is full. */
function noseLeg(tape: Tape, body: BodyPlan, axleMm: number) {
  const x =
    body.sections.find(({ heightMm }) => heightMm >= 0.98 * body.heightMm)?.stationMm ?? 0.12 * tape.lengthMm;
  return { topMm: at(x + 4, 0, -body.heightMm / 2), axleMm: at(x, 0, axleMm) };
}

function tailLeg(tape: Tape, body: BodyPlan) {
  const x = 0.97 * tape.lengthMm;
  const z = body.tail.waterlineMm - body.tail.halfHeightMm;
  return { topMm: at(x, 0, z), axleMm: at(x + 0.02 * tape.lengthMm, 0, z - 0.035 * tape.lengthMm) };
}
