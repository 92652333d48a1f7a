import type { Vec3 } from '../../../src/engine/geometry/types';
import type { PlaceProblem } from '../../../src/engine/place/types';

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

/** Least margin over the cases, or −∞ when a lateral limit is broken. */
function marginOf(
  problem: PlaceProblem,
  cgs: readonly (readonly [number, number])[],
  grams: readonly number[],
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
    if (
      !fits(
        problem,
        chosen.map(({ region }) => region),
      )
    )
      continue;
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
      const marginMm = marginOf(problem, cgs, grams);
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

function fits(problem: PlaceProblem, boxes: readonly { minMm: Vec3; maxMm: Vec3 }[]): boolean {
  const things = [
    ...boxes.map((box, i) => ({ id: problem.parts[i]!.id, box, fixed: false })),
    ...problem.obstacles.map((box) => ({ id: box.id, box, fixed: true })),
  ];
  const centre = (id: string): Vec3 => {
    const { minMm, maxMm } = things.find((thing) => thing.id === id)!.box;
    return [(minMm[0] + maxMm[0]) / 2, (minMm[1] + maxMm[1]) / 2, (minMm[2] + maxMm[2]) / 2];
  };
  for (let i = 0; i < things.length; i++) {
    for (let j = 0; j < i; j++) {
      const [a, b] = [things[i]!, things[j]!];
      if (a.fixed && b.fixed) continue;
      const rule = problem.apart.find(
        (one) => (one.a === a.id && one.b === b.id) || (one.a === b.id && one.b === a.id),
      );
      const gap = Math.max(rule?.gapMm ?? 0, problem.clearanceMm);
      const apart = [0, 1, 2].some(
        (k) =>
          a.box.minMm[k]! - b.box.maxMm[k]! >= gap - 1e-9 || b.box.minMm[k]! - a.box.maxMm[k]! >= gap - 1e-9,
      );
      if (!apart) return false;
    }
  }
  return problem.leads.every(({ from, to, lengthMm }) => {
    const a = centre(from);
    const b = typeof to === 'string' ? centre(to) : to;
    return Math.abs(a[0] - b[0]) + Math.abs(a[1] - b[1]) + Math.abs(a[2] - b[2]) <= lengthMm + 1e-9;
  });
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
