import { cellFigures, commonCapacitiesMah, typicalPackMass } from '../../engine/power/cells';
import { balanceAt, LEVEL } from '../balance/balance';
import { updatePart } from '../document/edit';
import type { Aircraft, Part, PowerPack } from '../document/types';
import { powerPlan } from '../power/draws';
import { type PowerProblem, powerProblems } from '../power/powerProblems';

/** Another capacity for a pack, and what comes of it. */
export interface PackOffer {
  readonly aircraft: Aircraft;
  readonly capacityMah: number;
  /** Typical, from what the pack aboard weighs. */
  readonly massG: number;
  /** Lighter +, heavier −, g. */
  readonly savedG: number;
  /** How far the CG moves, tanks full and dry, aft +, mm; null without a CG. */
  readonly cgShiftMm: { readonly full: number; readonly dry: number } | null;
}

/**
 * The smallest of the common capacities with which a pack does all that is asked of it: the flight with its reserve, the
 * currents, the voltages. Null where that is the one aboard, where nothing does it, or where nobody says how long it flies.
 */
export function smallestPack(aircraft: Aircraft, packId: string): PackOffer | null {
  const part = aircraft.parts.find(({ id }) => id === packId);
  const pack = part?.power?.pack;
  if (!part || !pack || !powerPlan(aircraft)) return null;
  const before = powerProblems(aircraft) ?? [];
  const elsewhere = new Set(before.filter((problem) => !isAbout(problem, packId)).map(keyOf));
  for (const capacityMah of commonCapacitiesMah) {
    if (capacityMah === pack.capacityMah) {
      if (!before.some((problem) => isAbout(problem, packId))) return null;
      continue;
    }
    const changed = withCapacity(aircraft, part, pack, capacityMah);
    const after = powerProblems(changed) ?? [];
    const sound = after.every((problem) => !isAbout(problem, packId) && elsewhere.has(keyOf(problem)));
    if (sound) return offerOf(aircraft, changed, part, capacityMah);
  }
  return null;
}

/** Problems that this pack's capacity could be to blame for. */
const isAbout = (problem: PowerProblem, packId: string): boolean =>
  problem.kind === 'starved' ||
  ((problem.kind === 'too-short' || (problem.kind === 'over-current' && problem.carrier === 'pack')) &&
    problem.part.id === packId);

const keyOf = (problem: PowerProblem): string =>
  `${problem.kind} ${problem.severity} ${'part' in problem ? problem.part.id : ''}`;

/** The same cells with another capacity: mass and size go with it from what the pack weighs now, and are typical from then on. */
export function withCapacity(aircraft: Aircraft, part: Part, pack: PowerPack, capacityMah: number): Aircraft {
  const grown = capacityMah / pack.capacityMah;
  const { milliohm: _measured, maxA, ...cells } = pack;
  const { weighedOn: _day, inertiaGmm2: _inertia, ...rest } = part;
  const spread = typicalPackMass(pack.chemistry, pack.cells, capacityMah).plusMinusG;
  const next: Part = {
    ...rest,
    massG: Math.round(part.massG * grown),
    plusMinusG: Math.round(spread),
    massFrom: 'typical',
    sizeFrom: 'typical',
    shape: scaledShape(part.shape, Math.cbrt(grown)),
    power: {
      ...part.power,
      pack: { ...cells, capacityMah, ...(maxA !== undefined && { maxA: Math.round(maxA * grown) }) },
    },
  };
  return { ...aircraft, parts: aircraft.parts.map((other) => (other.id === part.id ? next : other)) };
}

/** A box or a cylinder so many times as large; any other shape stays. */
function scaledShape(shape: Part['shape'], times: number): Part['shape'] {
  const round = (mm: number) => Math.round(mm * times * 2) / 2;
  if (shape.kind === 'box') {
    const { lengthMm, widthMm, heightMm } = shape;
    return { ...shape, lengthMm: round(lengthMm), widthMm: round(widthMm), heightMm: round(heightMm) };
  }
  if (shape.kind === 'cylinder') {
    return { ...shape, lengthMm: round(shape.lengthMm), diameterMm: round(shape.diameterMm) };
  }
  return shape;
}

function offerOf(before: Aircraft, aircraft: Aircraft, part: Part, capacityMah: number): PackOffer {
  const massG = aircraft.parts.find(({ id }) => id === part.id)?.massG ?? 0;
  return { aircraft, capacityMah, massG, savedG: part.massG - massG, cgShiftMm: cgShift(before, aircraft) };
}

/** How far the CG moves from one aircraft to another, level, tanks full and dry, aft +, mm; null without a CG. */
export function cgShift(
  before: Aircraft,
  after: Aircraft,
): { readonly full: number; readonly dry: number } | null {
  const at = (aircraft: Aircraft, fuelFraction: number) =>
    balanceAt(aircraft, { fuelFraction, down: LEVEL }).cgMm?.[0] ?? Number.NaN;
  const by = (fraction: number) => at(after, fraction) - at(before, fraction);
  const [full, dry] = [by(1), by(0)];
  return Number.isFinite(full) && Number.isFinite(dry) ? { full, dry } : null;
}

/** The current that packs like it commonly give, A. */
export const commonCurrentA = ({ chemistry, capacityMah }: PowerPack): number =>
  (cellFigures[chemistry].lastingC * capacityMah) / 1000;

/** Changes the pack that a part is. */
export const setPack = (aircraft: Aircraft, part: Part, pack: PowerPack): Aircraft =>
  updatePart(aircraft, part.id, { power: { ...part.power, pack } });
