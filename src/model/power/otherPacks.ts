import { cellFigures, commonCapacitiesMah, typicalPackMass } from '../../engine/power/cells';
import type { Aircraft, Part, PowerPack } from '../document/types';
import { powerPlan } from './draws';
import { type PowerProblem, powerProblems } from './powerProblems';
import { wiringOf } from './wiring';

/**
 * The common capacities, smallest first, with which a pack does all that is asked of it and spoils nothing else: the flight
 * with its reserve, the currents, the voltages. Its own is not among them. Empty where nobody says how long it flies, or
 * where it feeds nothing. A current that nobody stated is held to what packs like it commonly give.
 */
export function sufficientCapacities(aircraft: Aircraft, packId: string): readonly number[] {
  const part = aircraft.parts.find(({ id }) => id === packId);
  const pack = part?.power?.pack;
  if (!part || !pack || !powerPlan(aircraft) || !feedsAnything(aircraft, packId)) return [];
  const elsewhere = (powerProblems(aircraft) ?? []).filter((problem) => !isAbout(problem, packId));
  const isNew = (problem: PowerProblem) => !elsewhere.some((before) => isNoWorse(problem, before));
  return commonCapacitiesMah.filter((capacityMah) => {
    if (capacityMah === pack.capacityMah) return false;
    const changed = withCapacity(aircraft, part, pack, capacityMah);
    const after = powerProblems(heldToCommon(changed, packId)) ?? [];
    return !after.some((problem) => isAbout(problem, packId) || isNew(problem));
  });
}

/** Whether a pack as it is does all that is asked of it, in the same way. */
export const isSufficient = (aircraft: Aircraft, packId: string): boolean =>
  !(powerProblems(heldToCommon(aircraft, packId)) ?? []).some((problem) => isAbout(problem, packId));

const feedsAnything = (aircraft: Aircraft, packId: string): boolean =>
  wiringOf(aircraft)?.feeds.some(({ from }) => from.id === packId) ?? false;

/** The current that packs like it commonly give, A. */
const commonCurrentA = ({ chemistry, capacityMah }: PowerPack): number =>
  (cellFigures[chemistry].lastingC * capacityMah) / 1000;

function heldToCommon(aircraft: Aircraft, packId: string): Aircraft {
  const parts = aircraft.parts.map((part): Part => {
    const pack = part.power?.pack;
    if (part.id !== packId || !pack || pack.maxA !== undefined) return part;
    return { ...part, power: { ...part.power, pack: { ...pack, maxA: commonCurrentA(pack) } } };
  });
  return { ...aircraft, parts };
}

/** Problems that this pack's capacity could be to blame for. */
function isAbout(problem: PowerProblem, packId: string): boolean {
  if (problem.kind === 'starved') return problem.packs.some(({ id }) => id === packId);
  const fromPack =
    problem.kind === 'too-short' || (problem.kind === 'over-current' && problem.carrier === 'pack');
  return fromPack && problem.part.id === packId;
}

/** Whether a problem is one that there was before, or what is left of it. */
const isNoWorse = (problem: PowerProblem, before: PowerProblem): boolean =>
  aboutWhat(problem) === aboutWhat(before) &&
  (problem.severity === before.severity || before.severity === 'bad');

const aboutWhat = (problem: PowerProblem): string =>
  [problem.kind, 'part' in problem && problem.part.id, 'to' in problem && problem.to?.id].join(' ');

/**
 * The same cells with another capacity, in both of a mirrored pair: mass and size go with it from what the pack weighs now,
 * or are typical where nobody knows that, and count as typical from then on.
 */
export function withCapacity(aircraft: Aircraft, part: Part, pack: PowerPack, capacityMah: number): Aircraft {
  const grown = capacityMah / pack.capacityMah;
  const typical = typicalPackMass(pack.chemistry, pack.cells, capacityMah);
  const massG = isMassKnown(part) ? part.massG * grown : typical.massG;
  const resized = (before: Part): Part => {
    const { weighedOn: _day, inertiaGmm2: _inertia, ...rest } = before;
    const { milliohm: _measured, maxA, ...cells } = before.power?.pack ?? pack;
    return {
      ...rest,
      massG: Math.round(massG),
      plusMinusG: Math.round(typical.plusMinusG),
      massFrom: 'typical',
      sizeFrom: 'typical',
      shape: scaledShape(before.shape, Math.cbrt(grown)),
      power: {
        ...before.power,
        pack: { ...cells, capacityMah, ...(maxA !== undefined && { maxA: Math.round(maxA * grown) }) },
      },
    };
  };
  const isIt = ({ id }: Part) => id === part.id || id === part.twinId;
  return { ...aircraft, parts: aircraft.parts.map((other) => (isIt(other) ? resized(other) : other)) };
}

/** Whether anybody knows what a pack weighs. */
export const isMassKnown = ({ massFrom, massG }: Part): boolean => massFrom !== 'unknown' && massG > 0;

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
