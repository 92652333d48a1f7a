import type { Vec3 } from '../../engine/geometry/types';
import type { Boom, Fuselage, Leg, MassSource, StructurePiece, Surface } from '../document/types';
import { type Arrangement, arrangementOf } from './arrangements';
import { type BodyPlan, wingWaterlineMm } from './bodyPlan';
import type { Things } from './outfit';
import {
  BIPLANE,
  type Construction,
  finShape,
  foreplaneShape,
  LEGS_SHARE,
  SKIN_AT_MM,
  type Skins,
  skins,
  TAIL_THICKNESS_PCT,
  tailplaneShape,
} from './proportions';
import { finAreaMm2, type Tape, vCantRad, wingAreaMm2 } from './tape';

/** What the airframe is made from. */
export interface AirframeAsk {
  readonly plan: Arrangement;
  readonly tape: Tape;
  readonly body: BodyPlan;
  readonly things: Things;
  readonly construction: Construction;
  /** How much heavier than usual the skins are. */
  readonly scale: number;
  /** What the legs weigh, all together with their wheels, g; how often the usual share of the rest. */
  readonly airframeG: number;
}

const at = (x: number, y: number, z: number): Vec3 => [tenth(x), tenth(y), tenth(z)];
const tenth = (value: number) => Math.round(value * 10) / 10;

/** Every piece of the airframe: wings, tails, body, booms, nacelles, legs. */
export function airframePieces(ask: AirframeAsk): readonly StructurePiece[] {
  const { plan } = ask;
  return [
    hull(ask),
    ...wings(ask),
    ...foreplane(ask),
    ...tails(ask),
    ...fins(ask),
    ...(plan.tail === 'booms' ? [boom(ask)] : []),
    ...(plan.drive === 'nacelles' ? [nacelle(ask)] : []),
    ...(plan.wings === 2 ? [struts(ask)] : []),
    ...legs(ask),
  ];
}

/** Skins grow with the size of the aircraft: its mass then goes with the cube of its size, as models' masses do. */
function skinOf({ plan, tape, construction, scale }: AirframeAsk, what: keyof Skins): MassSource {
  const size = Math.sqrt(wingAreaMm2(plan.id, tape)) / SKIN_AT_MM;
  return { by: 'skin', gPerM2: Math.max(1, tenth(skins[construction][what] * size * scale)) };
}

function hull(ask: AirframeAsk): Fuselage {
  const { sections, skinMm } = ask.body;
  return {
    id: 'body',
    kind: 'fuselage',
    name: 'Body',
    sides: 'centre',
    buttlineMm: 0,
    sections,
    skinMm,
    mass: skinOf(ask, 'body'),
  };
}

interface Flat {
  readonly rootMm: Vec3;
  readonly halfSpanMm: number;
  readonly rootChordMm: number;
  readonly tipChordMm: number;
  readonly sweepMm: number;
  readonly thicknessPct: number;
  readonly cantDeg?: number;
  readonly dihedralDeg?: number;
}

function surface(
  names: Pick<Surface, 'id' | 'name' | 'role' | 'sides'>,
  { rootMm, halfSpanMm, rootChordMm, tipChordMm, sweepMm, thicknessPct, cantDeg = 0, dihedralDeg = 0 }: Flat,
  mass: MassSource,
): Surface {
  const panel = {
    spanMm: tenth(halfSpanMm),
    tipChordMm: tenth(tipChordMm),
    sweepMm: tenth(sweepMm),
    dihedralDeg,
    twistDeg: 0,
    tipThicknessPct: thicknessPct,
  };
  return {
    ...names,
    kind: 'surface',
    rootMm,
    cantDeg: tenth(cantDeg),
    incidenceDeg: 0,
    rootChordMm: tenth(rootChordMm),
    rootThicknessPct: thicknessPct,
    panels: [panel],
    openToHull: true,
    mass,
  };
}

/** Where a biplane's wings stand above each other, mm. */
const biplaneGapMm = ({ tape }: AirframeAsk) => BIPLANE.gap * ((tape.rootChordMm + tape.tipChordMm) / 2);

function wings(ask: AirframeAsk): readonly Surface[] {
  const { plan, tape, body } = ask;
  const z = wingWaterlineMm(plan.id, body.heightMm);
  const wing = {
    rootMm: at(tape.wingAtMm, 0, z),
    halfSpanMm: tape.spanMm / 2,
    rootChordMm: tape.rootChordMm,
    tipChordMm: tape.tipChordMm,
    sweepMm: tape.sweepMm,
    thicknessPct: plan.thicknessPct,
    dihedralDeg: plan.dihedralDeg,
  };
  const skin = skinOf(ask, 'wing');
  if (plan.wings === 1)
    return [surface({ id: 'wing', name: 'Wing', role: 'wing', sides: 'both' }, wing, skin)];
  const ahead = BIPLANE.stagger * tape.rootChordMm;
  const upper = { ...wing, rootMm: at(tape.wingAtMm - ahead, 0, z + biplaneGapMm(ask)), dihedralDeg: 0 };
  return [
    surface({ id: 'wing', name: 'Lower wing', role: 'wing', sides: 'both' }, wing, skin),
    surface({ id: 'upper-wing', name: 'Upper wing', role: 'wing', sides: 'both' }, upper, skin),
  ];
}

/** Root and tip of a straight-tapered surface by its mean chord. */
function chords(meanMm: number, taper: number) {
  const rootChordMm = (2 * meanMm) / (1 + taper);
  return { rootChordMm, tipChordMm: rootChordMm * taper };
}

function foreplane(ask: AirframeAsk): readonly Surface[] {
  const { plan, tape, body } = ask;
  if (plan.foreplaneShare === 0) return [];
  const areaMm2 = plan.foreplaneShare * wingAreaMm2(plan.id, tape);
  const spanMm = plan.tail === 'none' ? tape.tailSpanMm : Math.sqrt(areaMm2 * foreplaneShape.aspectRatio);
  const meanMm = plan.tail === 'none' ? tape.tailChordMm : areaMm2 / spanMm;
  const { rootChordMm, tipChordMm } = chords(meanMm, foreplaneShape.taper);
  return [
    surface(
      { id: 'foreplane', name: 'Foreplane', role: 'canard', sides: 'both' },
      {
        rootMm: at(Math.round(0.05 * tape.lengthMm), 0, Math.round(0.12 * body.heightMm)),
        halfSpanMm: spanMm / 2,
        rootChordMm,
        tipChordMm,
        sweepMm: 0.5 * (rootChordMm - tipChordMm),
        thicknessPct: TAIL_THICKNESS_PCT,
      },
      skinOf(ask, 'tail'),
    ),
  ];
}

/** Area, chords and height of the fin on the middle of the body, or of one of a pair, mm. */
export function finSizes({ plan, tape }: Pick<AirframeAsk, 'plan' | 'tape'>) {
  const areaMm2 = finAreaMm2(plan.id, tape) / (plan.fin === 'centre' ? 1 : 2);
  const usual = chords(Math.sqrt(areaMm2 / finShape.aspectRatio), finShape.taper);
  // A fin at a tip is no longer than the tip, and the higher for it.
  const share = plan.fin === 'tips' ? Math.min(1, tape.tipChordMm / usual.rootChordMm) : 1;
  const meanMm = share * ((usual.rootChordMm + usual.tipChordMm) / 2);
  return { heightMm: areaMm2 / meanMm, ...chords(meanMm, finShape.taper) };
}

function tails(ask: AirframeAsk): readonly Surface[] {
  const { plan, tape, body } = ask;
  if (plan.tail === 'none') return [];
  const { rootChordMm, tipChordMm } = chords(tape.tailChordMm, tailplaneShape.taper);
  const cantRad = vCantRad(plan.id, tape);
  const z = {
    conventional: body.tail.waterlineMm,
    t: body.tail.waterlineMm + body.tail.halfHeightMm + finSizes(ask).heightMm,
    v: body.tail.waterlineMm,
    booms: wingWaterlineMm(plan.id, body.heightMm),
  }[plan.tail];
  const flat = {
    rootMm: at(tape.lengthMm - rootChordMm, 0, z),
    halfSpanMm: tape.tailSpanMm / 2 / Math.cos(cantRad),
    rootChordMm,
    tipChordMm,
    sweepMm: 0.6 * (rootChordMm - tipChordMm),
    thicknessPct: TAIL_THICKNESS_PCT,
    cantDeg: (cantRad * 180) / Math.PI,
  };
  const names =
    plan.tail === 'v'
      ? ({ id: 'v-tail', name: 'V-tail', role: 'v-tail', sides: 'both' } as const)
      : ({ id: 'tailplane', name: 'Tailplane', role: 'tailplane', sides: 'both' } as const);
  return [surface(names, flat, skinOf(ask, 'tail'))];
}

function fins(ask: AirframeAsk): readonly Surface[] {
  const { plan, tape, body } = ask;
  if (plan.fin === 'none') return [];
  const { heightMm, rootChordMm, tipChordMm } = finSizes(ask);
  const upright = {
    halfSpanMm: heightMm,
    rootChordMm,
    tipChordMm,
    sweepMm: rootChordMm - tipChordMm,
    thicknessPct: TAIL_THICKNESS_PCT,
    cantDeg: 90,
  };
  const skin = skinOf(ask, 'tail');
  const aftMm = tape.lengthMm - rootChordMm;
  if (plan.fin === 'centre') {
    const rootMm = at(aftMm, 0, body.tail.waterlineMm + body.tail.halfHeightMm);
    return [surface({ id: 'fin', name: 'Fin', role: 'fin', sides: 'centre' }, { ...upright, rootMm }, skin)];
  }
  const halfMm = tape.spanMm / 2;
  const rootMm =
    plan.fin === 'booms'
      ? at(aftMm, tape.tailSpanMm / 2, wingWaterlineMm(plan.id, body.heightMm))
      : at(
          tape.wingAtMm + tape.sweepMm,
          halfMm,
          wingWaterlineMm(plan.id, body.heightMm) + halfMm * Math.tan((plan.dihedralDeg * Math.PI) / 180),
        );
  const name = plan.fin === 'booms' ? 'Fin' : 'Tip fin';
  return [surface({ id: 'fin', name, role: 'fin', sides: 'both' }, { ...upright, rootMm }, skin)];
}

/** A pair from under the wing's front to the tail's end, as wide apart as the tailplane. */
function boom(ask: AirframeAsk): Boom {
  const { plan, tape, body } = ask;
  const z = wingWaterlineMm(plan.id, body.heightMm);
  const diameterMm = Math.max(6, Math.round(0.016 * tape.lengthMm));
  const y = tape.tailSpanMm / 2;
  return {
    id: 'boom',
    kind: 'boom',
    name: 'Tail boom',
    sides: 'both',
    frontMm: at(tape.wingAtMm + 0.3 * tape.rootChordMm, y, z),
    rearMm: at(tape.lengthMm, y, z),
    frontDiameterMm: diameterMm,
    rearDiameterMm: Math.max(4, Math.round(0.7 * diameterMm)),
    mass: skinOf(ask, 'body'),
  };
}

/** Two struts between the wings of a biplane, each side. */
function struts(ask: AirframeAsk): Boom {
  const { plan, tape, body } = ask;
  const y = 0.31 * tape.spanMm;
  const z = wingWaterlineMm(plan.id, body.heightMm);
  const x = tape.wingAtMm + 0.4 * tape.rootChordMm;
  const rise = y * Math.tan((plan.dihedralDeg * Math.PI) / 180);
  return {
    id: 'strut',
    kind: 'boom',
    name: 'Interplane strut',
    sides: 'both',
    frontMm: at(x - BIPLANE.stagger * tape.rootChordMm, y, z + biplaneGapMm(ask)),
    rearMm: at(x, y, z + rise),
    frontDiameterMm: Math.max(3, Math.round(0.006 * tape.spanMm)),
    rearDiameterMm: Math.max(3, Math.round(0.006 * tape.spanMm)),
    mass: skinOf(ask, 'body'),
  };
}

/** The buttline of the nacelles: clear of the body by the propeller, mm. */
export function nacelleAtMm({ tape, body, things }: Pick<AirframeAsk, 'tape' | 'body' | 'things'>): number {
  return Math.round(Math.max(0.19 * tape.spanMm, body.widthMm / 2 + 0.56 * things.propeller.sizeMm[1]));
}

/** A nacelle from ahead of the wing to behind its thickest part; motor and controller stand in its even front. */
export function nacellePlan(ask: Pick<AirframeAsk, 'plan' | 'tape' | 'body' | 'things'>) {
  const { plan, tape, body, things } = ask;
  const y = nacelleAtMm(ask);
  const share = Math.min(1, y / (tape.spanMm / 2));
  const wingLeMm = tape.wingAtMm + share * tape.sweepMm;
  const insideMm = things.motor.sizeMm[0] + things.controller.sizeMm[0] + 6;
  const acrossMm = Math.max(...things.motor.sizeMm.slice(1)) + 2 * (body.skinMm + 2);
  const fromMm = Math.round(wingLeMm - Math.max(0.3 * tape.rootChordMm, 0.6 * insideMm));
  const waterlineMm = Math.round(
    wingWaterlineMm(plan.id, body.heightMm) + y * Math.tan((plan.dihedralDeg * Math.PI) / 180),
  );
  return {
    buttlineMm: y,
    fromMm,
    evenToMm: fromMm + insideMm + body.skinMm,
    acrossMm,
    waterlineMm,
    wingLeMm,
  };
}

function nacelle(ask: AirframeAsk): Fuselage {
  const { buttlineMm, fromMm, evenToMm, acrossMm, waterlineMm, wingLeMm } = nacellePlan(ask);
  const toMm = Math.max(evenToMm + acrossMm, wingLeMm + 0.8 * ask.tape.rootChordMm);
  const across = (stationMm: number, share: number) => ({
    stationMm: tenth(stationMm),
    widthMm: tenth(acrossMm * share),
    heightMm: tenth(acrossMm * share),
    waterlineMm,
    roundness: 1,
  });
  return {
    id: 'nacelle',
    kind: 'fuselage',
    name: 'Nacelle',
    sides: 'both',
    buttlineMm,
    sections: [across(fromMm, 1), across(evenToMm, 1), across(toMm, 0.3)],
    skinMm: ask.body.skinMm,
    mass: skinOf(ask, 'body'),
  };
}

/** Legs down to where the propeller stays clear of the ground by a sixth of its radius. */
function legs(ask: AirframeAsk): readonly Leg[] {
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

/** The name of what drives it, for the file's own word. */
export const isTailless = (id: Arrangement['id']) => {
  const { tail, foreplaneShare } = arrangementOf(id);
  return tail === 'none' && foreplaneShare === 0;
};
