import type { Vec3 } from '../../../src/engine/geometry/types';
import type { Lead, PlaceOption, PlaceProblem } from '../../../src/engine/place/types';

/** Brute force that shares nothing with the engine but the problem's data. */
export interface Brute {
  readonly ballastG: number;
  readonly marginMm: number;
  readonly moves: number;
}

/** All ways to choose one of each list. */
function* product(counts: readonly number[]): Generator<number[]> {
  const at = counts.map(() => 0);
  if (counts.some((count) => count === 0)) return;
  for (;;) {
    yield [...at];
    let i = 0;
    while (i < at.length && ++at[i]! === counts[i]) at[i++] = 0;
    if (i === at.length) return;
  }
}

const gramsOf = ({ spots }: PlaceProblem) =>
  [...product(spots.map(({ stepG, mostG }) => Math.floor(mostG / stepG) + 1))]
    .map((steps) => steps.map((n, k) => n * spots[k]!.stepG))
    .sort((a, b) => sum(a) - sum(b));

const sum = (list: readonly number[]) => list.reduce((a, b) => a + b, 0);

/** What a lead weighs and where its CG is: thin and even along its way. */
function leadBody({ mass, waypointsMm = [] }: Lead, from: Vec3, to: Vec3) {
  const points = [from, ...waypointsMm, to];
  const runs = points.slice(1).map((b, i) => {
    const a = points[i]!;
    return {
      long: Math.hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2]),
      x: (a[0] + b[0]) / 2,
      y: (a[1] + b[1]) / 2,
    };
  });
  const long = sum(runs.map((run) => run.long));
  const massG = mass ? mass.massG + mass.gPerMm * long : 0;
  const at = (key: 'x' | 'y') =>
    long > 0
      ? sum(runs.map((run) => run[key] * run.long)) / long
      : sum(runs.map((run) => run[key])) / runs.length;
  return { long, massG, x: at('x'), y: at('y') };
}

/** Least margin over the cases, or −∞ when a lateral limit is broken. */
function marginOf(
  problem: PlaceProblem,
  cgs: readonly (readonly [number, number])[],
  grams: readonly number[],
  ends: readonly (readonly [Vec3, Vec3])[] = [],
): number {
  let least = Number.POSITIVE_INFINITY;
  problem.cases.forEach((state, s) => {
    let m = state.massG;
    let x = state.momentGmm[0];
    let y = state.momentGmm[1];
    problem.parts.forEach(({ massesG }, i) => {
      m += massesG[s]!;
      x += massesG[s]! * cgs[i]![0];
      y += massesG[s]! * cgs[i]![1];
    });
    problem.leads.forEach((lead, l) => {
      if (!lead.mass?.aboard[s]) return;
      const body = leadBody(lead, ...ends[l]!);
      m += body.massG;
      x += body.massG * body.x;
      y += body.massG * body.y;
    });
    problem.spots.forEach(({ positionMm }, k) => {
      m += grams[k]!;
      x += grams[k]! * positionMm[0];
      y += grams[k]! * positionMm[1];
    });
    const lateral = problem.lateralMm === null || Math.abs(y / m) <= problem.lateralMm + 1e-9;
    const margin = Math.min(x / m - problem.band.forwardMm, problem.band.aftMm - x / m);
    least = Math.min(least, lateral ? margin : Number.NEGATIVE_INFINITY);
  });
  return least;
}

/** For problems whose options are single points: every choice of points with every ballast. */
export function bruteOfPoints(problem: PlaceProblem): Brute | null {
  let best: Brute | null = null;
  const allGrams = gramsOf(problem);
  for (const choice of product(problem.parts.map(({ options }) => options.length))) {
    const chosen = choice.map((k, i) => problem.parts[i]!.options[k]!);
    const ends = endsOf(problem, chosen);
    const boxes = chosen.map(({ region }) => region);
    if (!fits(problem, boxes, ends)) continue;
    const cgs = chosen.map(
      ({ region, cgFromCentreMm: off }) =>
        [
          (region.minMm[0] + region.maxMm[0]) / 2 + off[0],
          (region.minMm[1] + region.maxMm[1]) / 2 + off[1],
        ] as const,
    );
    const moves = chosen.filter(({ id }, i) => id !== problem.parts[i]!.present.optionId).length;
    for (const grams of allGrams) {
      const ballastG = sum(grams);
      if (best && ballastG > best.ballastG) break;
      if (!hasRoom(problem, boxes, grams)) continue;
      const marginMm = marginOf(problem, cgs, grams, ends);
      if (marginMm < -1e-9) continue;
      const better =
        !best ||
        ballastG < best.ballastG ||
        marginMm > best.marginMm + 1e-9 ||
        (marginMm > best.marginMm - 1e-9 && moves < best.moves);
      if (better) best = { ballastG, marginMm, moves };
    }
  }
  return best;
}

type Box = { readonly minMm: Vec3; readonly maxMm: Vec3 };

/** Where each lead's ends are with every part in its one place. */
function endsOf(problem: PlaceProblem, chosen: readonly PlaceOption[]): (readonly [Vec3, Vec3])[] {
  const point = (lead: Lead, end: string | Vec3): Vec3 => {
    if (typeof end !== 'string') return end;
    const i = problem.parts.findIndex(({ id }) => id === end);
    const { minMm, maxMm } = i < 0 ? problem.obstacles.find(({ id }) => id === end)! : chosen[i]!.region;
    const off = chosen[i]?.leadEndsMm?.[lead.id] ?? [0, 0, 0];
    return [0, 1, 2].map((k) => (minMm[k]! + maxMm[k]!) / 2 + off[k]!) as unknown as Vec3;
  };
  return problem.leads.map((lead) => [point(lead, lead.from), point(lead, lead.to)]);
}

const axisGap = (a: Box, b: Box, k: number) => Math.max(a.minMm[k]! - b.maxMm[k]!, b.minMm[k]! - a.maxMm[k]!);

function keep(problem: PlaceProblem, idA: string, a: Box, idB: string, b: Box): boolean {
  const rules = problem.apart.filter(
    (one) => (one.a === idA && one.b === idB) || (one.a === idB && one.b === idA),
  );
  const widestAxis = Math.max(...[0, 1, 2].map((k) => axisGap(a, b, k)));
  const straight = Math.hypot(...[0, 1, 2].map((k) => Math.max(0, axisGap(a, b, k))));
  return (
    widestAxis >= problem.clearanceMm - 1e-9 &&
    rules.every(({ gapMm, by }) => (by === 'straight' ? straight : widestAxis) >= gapMm - 1e-9)
  );
}

function fits(
  problem: PlaceProblem,
  boxes: readonly Box[],
  ends: readonly (readonly [Vec3, Vec3])[],
): boolean {
  const things = [
    ...boxes.map((box, i) => ({ id: problem.parts[i]!.id, box, fixed: false })),
    ...problem.obstacles.map((box) => ({ id: box.id, box, fixed: true })),
  ];
  for (let i = 0; i < things.length; i++) {
    for (let j = 0; j < i; j++) {
      const [a, b] = [things[i]!, things[j]!];
      if (a.fixed && b.fixed) continue;
      if (!keep(problem, a.id, a.box, b.id, b.box)) return false;
    }
  }
  return problem.leads.every((lead, l) => {
    const [a, b] = ends[l]!;
    const needed =
      lead.by === 'straight'
        ? leadBody(lead, a, b).long
        : Math.abs(a[0] - b[0]) + Math.abs(a[1] - b[1]) + Math.abs(a[2] - b[2]);
    return needed <= lead.lengthMm + 1e-9;
  });
}

/** Whether the ballast, as stacks of lead, has room: in its spot, among the parts and walls, and beside the other stacks. */
function hasRoom(problem: PlaceProblem, boxes: readonly Box[], grams: readonly number[]): boolean {
  const stacks = problem.spots.flatMap(({ id, body, positionMm: [x, y, z] }, k) => {
    if (!body || grams[k] === 0) return [];
    const { widthMm, heightMm, lengthMm, densityGPerMm3 } = body;
    const long = grams[k]! / (densityGPerMm3 * widthMm * heightMm);
    const box: Box = {
      minMm: [x - long / 2, y - widthMm / 2, z - heightMm / 2],
      maxMm: [x + long / 2, y + widthMm / 2, z + heightMm / 2],
    };
    return [{ id, box, tooLong: long > lengthMm + 1e-9 }];
  });
  return stacks.every(
    ({ id, box, tooLong }, k) =>
      !tooLong &&
      boxes.every((other, i) => keep(problem, id, box, problem.parts[i]!.id, other)) &&
      problem.obstacles.every((other) => keep(problem, id, box, other.id, other)) &&
      (problem.noBallast ?? []).every((zone) =>
        [0, 1, 2].some((axis) => axisGap(box, zone, axis) >= -1e-9),
      ) &&
      stacks.slice(0, k).every((other) => keep(problem, id, box, other.id, other.box)),
  );
}

/**
 * For parts in line in bays: every choice of bays, every order in every bay. With the order given the parts slide from all
 * the way forward to all the way aft, and the moment takes every value between; the margin is concave in it. Each part must
 * weigh the same in all cases, and stand at one buttline in a bay.
 */
export function bruteOfLines(problem: PlaceProblem): Brute | null {
  let best: { ballastG: number; marginMm: number } | null = null;
  const allGrams = gramsOf(problem);
  const massG = problem.parts.map(({ massesG }) => massesG[0]!);
  for (const choice of product(problem.parts.map(({ options }) => options.length))) {
    const bays = new Map<string, number[]>();
    choice.forEach((k, i) => {
      const { id } = problem.parts[i]!.options[k]!;
      bays.set(id, [...(bays.get(id) ?? []), i]);
    });
    let reach: [number, number][] = [[0, 0]];
    for (const inBay of bays.values()) {
      const own: [number, number][] = orders(inBay).flatMap((order) => {
        const { region } = problem.parts[order[0]!]!.options[choice[order[0]!]!]!;
        const sizes = order.map((i) => problem.parts[i]!.options[choice[i]!]!.sizeMm[0]);
        const play =
          region.maxMm[0] - region.minMm[0] - sum(sizes) - problem.clearanceMm * (sizes.length - 1);
        if (play < -1e-9) return [];
        let at = region.minMm[0];
        let front = 0;
        order.forEach((i, n) => {
          front += massG[i]! * (at + sizes[n]! / 2);
          at += sizes[n]! + problem.clearanceMm;
        });
        return [[front, front + play * sum(order.map((i) => massG[i]!))]];
      });
      reach = merged(reach.flatMap(([a, b]) => own.map(([c, d]): [number, number] => [a + c, b + d])));
    }
    if (reach.length === 0) continue;
    const y = sum(
      choice.map((k, i) => {
        const { region } = problem.parts[i]!.options[k]!;
        return (massG[i]! * (region.minMm[1] + region.maxMm[1])) / 2;
      }),
    );
    const total = sum(massG);
    for (const grams of allGrams) {
      const ballastG = sum(grams);
      if (best && ballastG > best.ballastG) break;
      const at = (moment: number) =>
        marginOf(
          problem,
          massG.map(() => [moment / total, y / total] as const),
          grams,
        );
      for (const [low, high] of reach) {
        const marginMm = highest(at, low, high);
        if (marginMm < -1e-7) continue;
        if (!best || ballastG < best.ballastG || marginMm > best.marginMm) best = { ballastG, marginMm };
      }
    }
  }
  return best && { ...(best as { ballastG: number; marginMm: number }), moves: problem.parts.length };
}

function highest(f: (x: number) => number, low: number, high: number): number {
  let [a, b] = [low, high];
  if (f(a) === Number.NEGATIVE_INFINITY) return Number.NEGATIVE_INFINITY;
  for (let n = 0; n < 100 && b - a > 1e-6; n++) {
    const [p, q] = [a + (b - a) / 3, b - (b - a) / 3];
    if (f(p) < f(q)) a = p;
    else b = q;
  }
  return Math.max(f(low), f(high), f((a + b) / 2));
}

function merged(list: [number, number][]): [number, number][] {
  const sorted = [...list].sort((a, b) => a[0] - b[0]);
  const out: [number, number][] = [];
  for (const [a, b] of sorted) {
    const last = out.at(-1);
    if (last && a <= last[1]) last[1] = Math.max(last[1], b);
    else out.push([a, b]);
  }
  return out;
}

function orders(list: readonly number[]): number[][] {
  if (list.length < 2) return [[...list]];
  return list.flatMap((one, i) => orders(list.filter((_, j) => j !== i)).map((rest) => [one, ...rest]));
}
