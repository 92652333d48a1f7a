import { islandsOf } from './islands';
import { powerFlow } from './powerFlow';
import type { PowerNet } from './types';

/** A stretch of the flight with steady currents. */
export interface PowerPhase {
  readonly durationS: number;
  /** What a unit uses itself on the mean, A, 0 or more. */
  readonly drawA: (unitId: string) => number;
}

export interface PackUse {
  /** What it has given when the phases end, or when it is used up, mAh. */
  readonly usedMah: number;
  /** When what is to be used of it is gone, s; null when it never is, for nothing or hardly anything is drawn. */
  readonly emptyAtS: number | null;
}

export interface PowerEndurance {
  readonly packs: ReadonlyMap<string, PackUse>;
  /** When a unit is left without any pack, s; null when it never is. A unit that nothing feeds is without one at 0. */
  readonly units: ReadonlyMap<string, number | null>;
}

/** Longer than any flight, s: what lasts so long has no end worth telling. */
const NEVER_S = 86_400;
const MAH_PER_AS = 1 / 3.6;

/**
 * How long packs last along the phases and, after their end, at the mean of them all, up to a day. Packs stand at their
 * nominal voltage while there is something to use, and give nothing after. Where several feed one thing they share by
 * Kirchhoff's laws; when one is used up the others carry on, and where they cannot give what is drawn they end with it.
 *
 * @throws RangeError as `powerFlow` does while every pack still gives
 */
export function packEndurance(net: PowerNet, phases: readonly PowerPhase[]): PowerEndurance {
  const islands = islandsOf(net).map((island) => islandEndurance(island, phases));
  return {
    packs: new Map(islands.flatMap(({ packs }) => [...packs])),
    units: new Map(islands.flatMap(({ units }) => [...units])),
  };
}

function islandEndurance(net: PowerNet, phases: readonly PowerPhase[]): PowerEndurance {
  const left = new Map(net.packs.map((pack) => [pack.id, pack.capacityMah * pack.usableShare]));
  const emptyAtS = new Map<string, number>();
  const lostAtS = new Map<string, number>();
  const planS = phases.reduce((sum, { durationS }) => sum + durationS, 0);
  let usedMah = new Map<string, number>(net.packs.map(({ id }) => [id, 0]));
  let atS = 0;
  for (const [index, phase] of [...phases, meanOf(phases, planS)].entries()) {
    const endS = index < phases.length ? atS + phase.durationS : NEVER_S;
    while (atS < endS) {
      const step = stepOrEnd(net, left, emptyAtS, phase, atS, endS);
      for (const id of step.unfed) if (!lostAtS.has(id)) lostAtS.set(id, atS);
      for (const [id, mah] of step.leftMah) left.set(id, mah);
      for (const id of step.emptied) emptyAtS.set(id, step.untilS);
      atS = step.untilS;
      if (step.emptied.length === 0) break;
    }
    if (index === phases.length - 1 || phases.length === 0) usedMah = usedOf(net, left);
  }
  return {
    packs: new Map(
      net.packs.map(({ id }) => [id, { usedMah: usedMah.get(id) ?? 0, emptyAtS: emptyAtS.get(id) ?? null }]),
    ),
    units: new Map(net.units.map(({ id }) => [id, lostAtS.get(id) ?? null])),
  };
}

const usedOf = ({ packs }: PowerNet, left: ReadonlyMap<string, number>) =>
  new Map(
    packs.map(({ id, capacityMah, usableShare }) => [id, capacityMah * usableShare - (left.get(id) ?? 0)]),
  );

/** What is drawn on the mean of all phases; of the only moment there is where they last no time. */
function meanOf(phases: readonly PowerPhase[], planS: number): PowerPhase {
  const drawA = (unitId: string) =>
    planS > 0
      ? phases.reduce((sum, phase) => sum + phase.drawA(unitId) * phase.durationS, 0) / planS
      : (phases[0]?.drawA(unitId) ?? 0);
  return { durationS: Number.POSITIVE_INFINITY, drawA };
}

interface Step {
  readonly untilS: number;
  readonly leftMah: ReadonlyMap<string, number>;
  readonly emptied: readonly string[];
  readonly unfed: readonly string[];
}

/** A step; or, once a pack is used up and the others cannot give what is drawn, the end of them all. */
function stepOrEnd(
  net: PowerNet,
  left: ReadonlyMap<string, number>,
  emptyAtS: ReadonlyMap<string, number>,
  phase: PowerPhase,
  atS: number,
  endS: number,
): Step {
  try {
    return stepOf(net, left, emptyAtS, phase, atS, endS);
  } catch (error) {
    if (!(error instanceof RangeError) || emptyAtS.size === 0) throw error;
    const emptied = net.packs.flatMap(({ id }) => (emptyAtS.has(id) ? [] : [id]));
    return { untilS: atS, leftMah: left, emptied, unfed: [] };
  }
}

/** On to where the next pack is used up, or to the end of the phase. */
function stepOf(
  net: PowerNet,
  left: ReadonlyMap<string, number>,
  emptyAtS: ReadonlyMap<string, number>,
  { drawA }: PowerPhase,
  atS: number,
  endS: number,
): Step {
  const emf = new Map(net.packs.map(({ id, nominalV }) => [id, emptyAtS.has(id) ? null : nominalV]));
  const flow = powerFlow(net, (id) => emf.get(id) ?? null, drawA);
  const lastsS = net.packs.map(({ id }) => {
    const amps = flow.packA.get(id) ?? 0;
    return emf.get(id) !== null && amps > 0
      ? (left.get(id) ?? 0) / (amps * MAH_PER_AS)
      : Number.POSITIVE_INFINITY;
  });
  const durationS = Math.min(endS - atS, ...lastsS);
  const emptied = net.packs.filter((_pack, index) => lastsS[index] === durationS).map(({ id }) => id);
  const leftMah = new Map(
    net.packs.map(({ id }) => {
      const rest = (left.get(id) ?? 0) - (flow.packA.get(id) ?? 0) * durationS * MAH_PER_AS;
      return [id, emptied.includes(id) ? 0 : Math.max(0, rest)];
    }),
  );
  const unfed = [...flow.unitV].filter(([, volts]) => volts === null).map(([id]) => id);
  return { untilS: atS + durationS, leftMah, emptied, unfed };
}
