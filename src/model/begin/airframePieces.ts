import type { Vec3 } from '../../engine/geometry/types';
import type { Boom, Fuselage, MassSource, StructurePiece, Surface } from '../document/types';
import { type AirframeAsk, at, skinOf, tenth } from './airframeAsk';
import { wingWaterlineMm } from './bodyPlan';
import { legs } from './legs';
import { nacelle } from './nacelles';
import { BIPLANE, finShape, foreplaneShape, TAIL_THICKNESS_PCT, tailplaneShape } from './proportions';
import { finAreaMm2, vCantRad, wingAreaMm2 } from './tape';

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
