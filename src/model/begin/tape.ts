import { type ArrangementId, arrangementOf } from './arrangements';
import { finShape, foreplaneShape, type MotorKind, tailplaneShape, tailVolumes } from './proportions';

/** What a person takes from a tape: mm from the nose of the body or along it, of the whole aircraft. */
export interface Tape {
  readonly spanMm: number;
  readonly rootChordMm: number;
  /** Where the straight part of the wing ends: that of a rounded tip would put the neutral point too far aft. */
  readonly tipChordMm: number;
  /** How far the leading edge lies behind the root's there. */
  readonly sweepMm: number;
  /** From the nose of the body to the aftmost end of body or tail. */
  readonly lengthMm: number;
  /** From the nose to the wing's leading edge where it meets the body. */
  readonly wingAtMm: number;
  /** Of the tailplane or, where there is none, of the surface ahead; tip to tip. */
  readonly tailSpanMm: number;
  /** Its mean chord. */
  readonly tailChordMm: number;
}

export type TapeField = keyof Tape;

/** Some of the figures; the others get proportions. */
export type TypedTape = Partial<Tape>;

/** The fields of an arrangement in the order that they are asked for. */
export function tapeFields(id: ArrangementId): readonly TapeField[] {
  const { tail, foreplaneShare } = arrangementOf(id);
  return [
    'spanMm',
    'rootChordMm',
    'tipChordMm',
    'sweepMm',
    'lengthMm',
    'wingAtMm',
    ...(tail === 'none' && foreplaneShare === 0 ? [] : (['tailSpanMm', 'tailChordMm'] as const)),
  ];
}

/** The span that an arrangement is shown with before anything is typed, mm. */
export const firstSpanMm = (id: ArrangementId): number =>
  id === 'powered-glider' ? 2500 : id === 'delta' ? 1000 : 1500;

/** All figures: those typed, and for the rest what the arrangement's proportions make of them. */
export function wholeTape(id: ArrangementId, typed: TypedTape, motor: MotorKind): Tape {
  const plan = arrangementOf(id);
  const shift = motor === 'petrol' ? plan.engineShift : 0;
  const spanMm = typed.spanMm ?? firstSpanMm(id);
  const meanMm =
    typed.rootChordMm && typed.tipChordMm
      ? (typed.rootChordMm + typed.tipChordMm) / 2
      : spanMm / plan.aspectRatio;
  const rootChordMm =
    typed.rootChordMm ??
    (typed.tipChordMm ? typed.tipChordMm / plan.taper : Math.round((2 * meanMm) / (1 + plan.taper)));
  const tipChordMm = typed.tipChordMm ?? Math.round(rootChordMm * plan.taper);
  const lengthMm = typed.lengthMm ?? Math.round(spanMm * plan.lengthShare);
  const wing = {
    spanMm,
    rootChordMm,
    tipChordMm,
    sweepMm: typed.sweepMm ?? Math.round(rootChordMm * plan.sweepShare),
    lengthMm,
    wingAtMm: typed.wingAtMm ?? Math.round(lengthMm * plan.wingAtShare * (1 + shift)),
  };
  return { ...wing, ...tailFigures(id, wing, typed) };
}

type WingFigures = Omit<Tape, 'tailSpanMm' | 'tailChordMm'>;

function tailFigures(id: ArrangementId, wing: WingFigures, typed: TypedTape) {
  const { tail, foreplaneShare } = arrangementOf(id);
  const { aspectRatio } = tail === 'none' ? foreplaneShape : tailplaneShape;
  const areaMm2 =
    tail === 'none'
      ? foreplaneShare * wingAreaMm2(id, wing)
      : tailAreaMm2(id, wing) / Math.cos(vCantRad(id, wing));
  const { tailSpanMm, tailChordMm } = typed;
  if (areaMm2 === 0) return { tailSpanMm: 0, tailChordMm: 0 };
  const span =
    tailSpanMm ?? Math.round(tailChordMm ? areaMm2 / tailChordMm : Math.sqrt(areaMm2 * aspectRatio));
  return { tailSpanMm: span, tailChordMm: tailChordMm ?? Math.round(areaMm2 / span) };
}

/** Area of all wings together, through the body, mm². */
export const wingAreaMm2 = (
  id: ArrangementId,
  { spanMm, rootChordMm, tipChordMm }: Pick<Tape, 'spanMm' | 'rootChordMm' | 'tipChordMm'>,
): number => (arrangementOf(id).wings * spanMm * (rootChordMm + tipChordMm)) / 2;

/** The mean aerodynamic chord of a straight-tapered wing, mm: (2/3)·c_r·(1 + λ + λ²)/(1 + λ). Raymer, Aircraft Design. */
export function straightMacMm({ rootChordMm, tipChordMm }: Pick<Tape, 'rootChordMm' | 'tipChordMm'>): number {
  const taper = tipChordMm / rootChordMm;
  return ((2 / 3) * rootChordMm * (1 + taper + taper * taper)) / (1 + taper);
}

/** Quarter MAC of a straight-tapered wing, mm from the nose. ȳ = (b/6)(1 + 2λ)/(1 + λ). Raymer, Aircraft Design. */
export function quarterMacMm(wing: WingFigures): number {
  const taper = wing.tipChordMm / wing.rootChordMm;
  const outShare = (1 + 2 * taper) / (3 * (1 + taper));
  return wing.wingAtMm + wing.sweepMm * outShare + straightMacMm(wing) / 4;
}

/** The area, mm², that gives a tail behind the wing its volume: the arm ends at its own quarter chord. */
function tailAreaMm2(id: ArrangementId, wing: WingFigures): number {
  const volume = tailVolumes(id).horizontal * wingAreaMm2(id, wing) * straightMacMm(wing);
  return areaForVolume(volume, wing, tailplaneShape.aspectRatio);
}

/**
 * The cant of a V-tail that does the work of both tails, rad; 0 for any other. A V of the area S counts as S·cos²Γ flat
 * and S·sin²Γ upright, so tan²Γ is fin over tailplane: Purser and Campbell, NACA Report 823, 1945 (from memory).
 */
export function vCantRad(
  id: ArrangementId,
  wing: Pick<Tape, 'spanMm' | 'rootChordMm' | 'tipChordMm'>,
): number {
  if (arrangementOf(id).tail !== 'v') return 0;
  const { horizontal, vertical } = tailVolumes(id);
  const cant = Math.atan(Math.sqrt((vertical * wing.spanMm) / (horizontal * straightMacMm(wing))));
  return Math.min(Math.PI / 4, Math.max(Math.PI / 6, cant));
}

/** The area of a fin at the end of the length that gives it its volume, mm². */
export function finAreaMm2(id: ArrangementId, wing: WingFigures): number {
  const volume = tailVolumes(id).vertical * wingAreaMm2(id, wing) * wing.spanMm;
  return areaForVolume(volume, wing, finShape.aspectRatio);
}

/** Volume over arm, where the arm depends on the chord that the area gives. Settles in a few rounds. */
function areaForVolume(volumeMm3: number, wing: WingFigures, aspectRatio: number): number {
  const fullArmMm = wing.lengthMm - quarterMacMm(wing);
  const leastArmMm = 0.2 * wing.lengthMm;
  let areaMm2 = volumeMm3 / Math.max(leastArmMm, fullArmMm);
  for (let round = 0; round < 12; round += 1) {
    const chordMm = Math.sqrt(areaMm2 / aspectRatio);
    areaMm2 = volumeMm3 / Math.max(leastArmMm, fullArmMm - 0.75 * chordMm);
  }
  return areaMm2;
}

/** What figures cannot be together, by field, in a sentence. Empty: an aircraft can be made of them. */
export function tapeFaults(
  id: ArrangementId,
  typed: TypedTape,
  motor: MotorKind,
): Partial<Record<TapeField, string>> {
  const { tail } = arrangementOf(id);
  const tape = wholeTape(id, typed, motor);
  const faults: Partial<Record<TapeField, string>> = {};
  for (const field of tapeFields(id)) {
    const value = tape[field];
    if (field !== 'sweepMm' && field !== 'wingAtMm' && !(value > 0)) {
      faults[field] = 'Expected more than nothing.';
    }
  }
  const wrong = (field: TapeField, sentence: string) => {
    faults[field] ??= sentence;
  };
  if (tape.spanMm < 200 || tape.spanMm > 12_000)
    wrong('spanMm', 'Expected a span from 200 mm to 12 m, tip to tip.');
  if (tape.rootChordMm >= 1.6 * tape.spanMm)
    wrong('rootChordMm', 'Expected a chord along the body, shorter than the span.');
  if (tape.tipChordMm > 1.5 * tape.rootChordMm)
    wrong('tipChordMm', 'Expected a tip no more than half as long again as the root.');
  if (Math.abs(tape.sweepMm) > tape.spanMm)
    wrong('sweepMm', 'Expected less than the span: it is taken along the body.');
  if (tape.wingAtMm < 0) wrong('wingAtMm', 'Expected a wing behind the nose.');
  if (tape.wingAtMm + tape.rootChordMm > 1.02 * tape.lengthMm && tail !== 'none') {
    wrong('wingAtMm', 'The wing would reach past the end of the tail: expected less, or a longer body.');
  }
  if (tape.wingAtMm + 0.5 * tape.rootChordMm > tape.lengthMm) {
    wrong('wingAtMm', 'The wing would stand behind the body: expected less, or a longer body.');
  }
  if (tape.tailSpanMm > 1.2 * tape.spanMm) wrong('tailSpanMm', 'Expected a tail narrower than the wing.');
  if (tape.tailChordMm > tape.lengthMm / 2) wrong('tailChordMm', 'Expected less than half the length.');
  return faults;
}
