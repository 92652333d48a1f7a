import { cellFigures, typicalPackMass } from '../../engine/power/cells';
import type { Aircraft, Part, PowerPack } from '../document/types';
import { powerPlan } from './draws';
import { wiringIslands } from './flows';
import { type PowerProblem, wiringProblems } from './powerProblems';
import { packSource, type Wiring, wiringOf } from './wiring';

/** Whether a pack would do all that is asked of it with another capacity. */
export interface PackTrial {
  readonly does: (capacityMah: number) => boolean;
  /** Whether it does as it is. */
  readonly doesAsItIs: boolean;
}

/**
 * Tries a pack with other capacities: whether it does all that is asked of it, the flight with its reserve, the currents and
 * the voltages, and spoils nothing else. A current that nobody stated is held to what packs like it commonly give. Null where
 * nobody says how long it flies, or where it feeds nothing.
 */
export function packTrial(aircraft: Aircraft, packId: string): PackTrial | null {
  const part = aircraft.parts.find(({ id }) => id === packId);
  const pack = part?.power?.pack;
  const plan = powerPlan(aircraft);
  const wiring = wiringOf(aircraft);
  if (!part || !pack || !plan || !wiring?.feeds.some(({ from }) => from.id === packId)) return null;
  const touched = [packId, part.twinId];
  // What is joined to it by no wire, and the wires themselves, stay as they are.
  const islands = wiringIslands(wiring).filter(({ packs }) => packs.some(({ id }) => touched.includes(id)));
  const problemsOf = (now: (other: Part) => Part) =>
    islands.flatMap((island) => wiringProblems(withPacks(island, now), plan, aircraft.kind));
  const isIts = (problem: PowerProblem) => isAbout(problem, packId);
  const elsewhere = problemsOf((other) => other).filter((problem) => !isIts(problem));
  const isNew = (problem: PowerProblem) => !elsewhere.some((before) => isNoWorse(problem, before));
  return {
    does: (capacityMah) => {
      const { parts } = withCapacity(aircraft, part, pack, capacityMah);
      const after = problemsOf((other) => heldToCommon(parts.find(({ id }) => id === other.id) ?? other));
      return !after.some((problem) => isIts(problem) || isNew(problem));
    },
    doesAsItIs: !problemsOf(heldToCommon).some(isIts),
  };
}

/** A wiring with its packs as they are now. */
function withPacks(wiring: Wiring, now: (pack: Part) => Part): Wiring {
  const packs = wiring.packs.map(now);
  const byId = new Map(packs.map((part) => [part.id, part]));
  return {
    packs,
    units: wiring.units,
    feeds: wiring.feeds.map((feed) => ({ ...feed, from: byId.get(feed.from.id) ?? feed.from })),
    net: {
      ...wiring.net,
      packs: packs.flatMap(({ id, power }) => (power?.pack ? [packSource(id, power.pack)] : [])),
    },
  };
}

/** The current that packs like it commonly give, A. */
const commonCurrentA = ({ chemistry, capacityMah }: PowerPack): number =>
  (cellFigures[chemistry].lastingC * capacityMah) / 1000;

function heldToCommon(part: Part): Part {
  const pack = part.power?.pack;
  if (!pack || pack.maxA !== undefined) return part;
  return { ...part, power: { ...part.power, pack: { ...pack, maxA: commonCurrentA(pack) } } };
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
