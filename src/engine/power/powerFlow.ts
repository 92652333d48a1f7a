import { type LuFactors, luFactor, luSolve } from '../linear/denseLu';
import type { Feed, PowerFlow, PowerNet, Regulator } from './types';

/** So little resistance that a wire or a source has at least, ohm: a perfect one has no single answer. */
const LEAST_OHM = 1e-6;
/** Regulators settle within a few rounds; a net that has not by now has no answer. */
const MOST_ROUNDS = 200;
/** From this round on what changes goes half the way: what swings to and fro comes to rest so. */
const CALM_ROUND = 30;
/** Two rounds that agree so well are one answer, A and V; a current so small may be a rounding error. */
const SETTLED = 1e-6;
/** A voltage so far below 0 is no rounding, V. */
const BELOW_0_V = 1e-3;

interface Source {
  readonly node: number;
  readonly ohm: number;
  emfV: number;
  /** Current would flow back into it, so it is cut off, as an input that guards itself does. */
  blocked: boolean;
}

/**
 * Volts and amperes in a net of packs, wires, regulators and what they feed, by Kirchhoff's laws. Packs are an
 * electromotive force behind their resistance, whatever is fed draws a current that does not depend on its voltage, and
 * no current flows back into a pack or a regulator. A switching regulator draws the power that it gives by its efficiency,
 * a linear one the same current; either gives less than its voltage when its input is too low.
 *
 * @param emfOf the electromotive force of each pack, V; null for a dead one
 * @param drawA what each unit uses itself, A, 0 or more
 * @throws RangeError when the net has no steady answer, or has it only by a hair: more is drawn than the packs can give.
 *   Source of the method: nodal analysis, Hayt and Kemmerly, Engineering Circuit Analysis, ch. 4 (from memory).
 */
export function powerFlow(
  net: PowerNet,
  emfOf: (packId: string) => number | null,
  drawA: (unitId: string) => number,
): PowerFlow {
  const plan = planOf(net, emfOf);
  const draws = net.units.map(({ id }) => drawA(id));
  // What each regulator gives and draws, from round to round.
  let drawnA = net.units.map(() => 0);
  for (let round = 0; round < MOST_ROUNDS; round++) {
    const solved = solveBlocked(plan, (unit) => (draws[unit] ?? 0) + (drawnA[unit] ?? 0));
    const share = round < CALM_ROUND ? 1 : 0.5;
    // What they give first, what they draw for it after: the other way round they chase each other.
    const moved = tuneRegulators(plan, net, solved.volts, share);
    const next = net.units.map(({ regulator }, unit) =>
      regulator ? inputOf(regulator, solved.regulatorA[unit] ?? 0, plan, solved.volts, unit) : 0,
    );
    const movedA = next.map((amps, unit) => amps - (drawnA[unit] ?? 0));
    const off = Math.max(moved, ...movedA.map(Math.abs));
    if (off < SETTLED) {
      if (isBelow0(plan, solved)) break;
      return flowOf(net, plan, solved);
    }
    if (!Number.isFinite(off)) break;
    drawnA = drawnA.map((amps, unit) => amps + share * (movedA[unit] ?? 0));
  }
  throw new RangeError('More current is drawn than the packs can give at any voltage.');
}

/** Whether currents could be had only from voltages below 0, which no pack has. */
const isBelow0 = ({ live }: Plan, { volts }: Solved): boolean =>
  volts.some((volt, node) => live[node] === true && volt < -BELOW_0_V);

interface Plan {
  readonly nodeCount: number;
  readonly inputNode: readonly number[];
  /** −1 for a unit without a regulator. */
  readonly outputNode: readonly number[];
  readonly packSources: readonly Source[];
  /** Null for a unit without a regulator. */
  readonly regulatorSources: readonly (Source | null)[];
  readonly wires: readonly { readonly from: number; readonly to: number; readonly ohm: number }[];
  /** Whether some live pack reaches the node. */
  readonly live: readonly boolean[];
  /** The conductances factored, by which sources are cut off. */
  readonly factors: Map<string, LuFactors>;
}

function planOf(net: PowerNet, emfOf: (packId: string) => number | null): Plan {
  let nodeCount = 0;
  const packNode = new Map(net.packs.map(({ id }) => [id, nodeCount++]));
  const inputNode = net.units.map(() => nodeCount++);
  const outputNode = net.units.map(({ regulator }) => (regulator ? nodeCount++ : -1));
  const unitAt = new Map(net.units.map(({ id }, index) => [id, index]));
  const startOf = ({ from, pastRegulator }: Feed): number | undefined => {
    const pack = packNode.get(from);
    if (pack !== undefined) return pack;
    const unit = unitAt.get(from);
    if (unit === undefined) return undefined;
    const output = outputNode[unit] ?? -1;
    return output >= 0 && !pastRegulator ? output : inputNode[unit];
  };
  const wires = net.feeds.map((feed) => {
    const from = startOf(feed);
    const to = inputNode[unitAt.get(feed.to) ?? -1];
    if (from === undefined || to === undefined) {
      throw new RangeError(`The feed from "${feed.from}" to "${feed.to}" has an end that is not in the net.`);
    }
    return { from, to, ohm: Math.max(feed.ohm, LEAST_OHM) };
  });
  const packSources = net.packs.map(({ id, ohm }): Source => {
    const emfV = emfOf(id);
    const node = packNode.get(id) ?? -1;
    return { node, ohm: Math.max(ohm, LEAST_OHM), emfV: emfV ?? 0, blocked: emfV === null };
  });
  const regulatorSources = net.units.map(
    ({ regulator }, unit): Source | null =>
      regulator && { node: outputNode[unit] ?? -1, ohm: LEAST_OHM, emfV: regulator.outputV, blocked: false },
  );
  const live = liveNodes(nodeCount, wires, packSources, inputNode, outputNode);
  for (const source of regulatorSources) if (source && !live[source.node]) source.blocked = true;
  return { nodeCount, inputNode, outputNode, packSources, regulatorSources, wires, live, factors: new Map() };
}

/**
 * Nodes that a live pack reaches along wires from feeder to fed, and through regulators from input to output. What could
 * come back against that way is not counted on.
 */
function liveNodes(
  nodeCount: number,
  wires: Plan['wires'],
  packs: readonly Source[],
  inputNode: readonly number[],
  outputNode: readonly number[],
): boolean[] {
  const live = Array.from({ length: nodeCount }, () => false);
  const open = packs.filter(({ blocked }) => !blocked).map(({ node }) => node);
  while (open.length > 0) {
    const node = open.pop() as number;
    if (live[node]) continue;
    live[node] = true;
    for (const { from, to } of wires) if (from === node) open.push(to);
    for (const [unit, input] of inputNode.entries()) {
      const output = outputNode[unit] ?? -1;
      if (input === node && output >= 0) open.push(output);
    }
  }
  return live;
}

interface Solved {
  /** At each node, V; meaningless where the node is not live. */
  readonly volts: Float64Array;
  readonly packA: readonly number[];
  readonly regulatorA: readonly number[];
}

/** Solves, cuts off the source that current would flow back into, and solves again, until none is left. */
function solveBlocked(plan: Plan, loadA: (unit: number) => number): Solved {
  const sources = [...plan.packSources, ...plan.regulatorSources.filter((source) => source !== null)];
  const dead = sources.filter(({ blocked }) => blocked);
  for (;;) {
    const volts = solveNodes(plan, sources, loadA);
    const current = ({ blocked, emfV, node, ohm }: Source) =>
      blocked ? 0 : (emfV - (volts[node] as number)) / ohm;
    const forward = (source: Source) => (current(source) > SETTLED ? current(source) : 0);
    const backward = sources.reduce<Source | null>(
      (worst, source) => (current(source) < (worst ? current(worst) : -SETTLED) ? source : worst),
      null,
    );
    if (!backward) {
      const packA = plan.packSources.map(forward);
      const regulatorA = plan.regulatorSources.map((source) => (source ? forward(source) : 0));
      // Those that were only held off here may carry again in another round.
      for (const source of sources) if (!dead.includes(source)) source.blocked = false;
      return { volts, packA, regulatorA };
    }
    backward.blocked = true;
  }
}

/** One linear solve: the conductances of wires and sources against the currents drawn. */
function solveNodes(plan: Plan, sources: readonly Source[], loadA: (unit: number) => number): Float64Array {
  const { nodeCount, inputNode, factors } = plan;
  const right = new Float64Array(nodeCount);
  for (const { node, ohm, emfV, blocked } of sources) {
    if (!blocked) right[node] = (right[node] as number) + emfV / ohm;
  }
  for (const [unit, node] of inputNode.entries()) right[node] = (right[node] as number) - loadA(unit);
  // Only what is cut off changes the conductances.
  const cutOff = sources.map(({ blocked }) => Number(blocked)).join('');
  const factored = factors.get(cutOff) ?? luFactor(conductances(plan, sources), nodeCount);
  factors.set(cutOff, factored);
  return luSolve(factored, right);
}

function conductances({ nodeCount, wires, live }: Plan, sources: readonly Source[]): Float64Array {
  const matrix = new Float64Array(nodeCount * nodeCount);
  const add = (row: number, column: number, siemens: number) => {
    matrix[row * nodeCount + column] = (matrix[row * nodeCount + column] as number) + siemens;
  };
  for (let node = 0; node < nodeCount; node++) if (!live[node]) add(node, node, 1);
  for (const { from, to, ohm } of wires) {
    if (!live[from] || !live[to]) continue;
    add(from, from, 1 / ohm);
    add(to, to, 1 / ohm);
    add(from, to, -1 / ohm);
    add(to, from, -1 / ohm);
  }
  for (const { node, ohm, blocked } of sources) if (!blocked) add(node, node, 1 / ohm);
  pinFloating(matrix, nodeCount);
  return matrix;
}

/** A pack that is cut off and joined to nothing else has no equation of its own. */
function pinFloating(matrix: Float64Array, size: number): void {
  for (let row = 0; row < size; row++) {
    if (matrix[row * size + row] === 0) matrix[row * size + row] = 1;
  }
}

/** What a regulator draws at its input for what it gives, A. */
function inputOf(
  { efficiency }: Regulator,
  givenA: number,
  { inputNode, regulatorSources }: Plan,
  volts: Float64Array,
  unit: number,
): number {
  if (efficiency === null) return givenA;
  const inV = volts[inputNode[unit] ?? -1] ?? 0;
  const outV = regulatorSources[unit]?.emfV ?? 0;
  // One that is out of regulation lets through what it gives.
  return inV > 0 ? Math.max(0, (givenA * outV) / (efficiency * inV)) : givenA;
}

/** Brings each regulator by a share of the way to what its input allows; how far off the farthest was, V. */
function tuneRegulators(
  { inputNode, regulatorSources }: Plan,
  { units }: PowerNet,
  volts: Float64Array,
  share: number,
): number {
  let moved = 0;
  for (const [unit, { regulator }] of units.entries()) {
    const source = regulatorSources[unit];
    if (!regulator || !source || source.blocked) continue;
    const inV = volts[inputNode[unit] ?? -1] ?? 0;
    const outV = Math.max(0, Math.min(regulator.outputV, inV - regulator.dropoutV));
    moved = Math.max(moved, Math.abs(outV - source.emfV));
    source.emfV += share * (outV - source.emfV);
  }
  return moved;
}

function flowOf(net: PowerNet, plan: Plan, { volts, packA, regulatorA }: Solved): PowerFlow {
  const at = (node: number) => (plan.live[node] ? (volts[node] as number) : null);
  const regulated = net.units.flatMap(({ id, regulator }, unit) => (regulator ? [{ id, unit }] : []));
  return {
    unitV: new Map(net.units.map(({ id }, unit) => [id, at(plan.inputNode[unit] ?? -1)])),
    packA: new Map(net.packs.map(({ id }, pack) => [id, packA[pack] ?? 0])),
    feedA: plan.wires.map(({ from, to, ohm }) =>
      plan.live[from] && plan.live[to] ? ((volts[from] as number) - (volts[to] as number)) / ohm : 0,
    ),
    regulatorA: new Map(regulated.map(({ id, unit }) => [id, regulatorA[unit] ?? 0])),
    regulatorV: new Map(regulated.map(({ id, unit }) => [id, at(plan.outputNode[unit] ?? -1)])),
  };
}
