import type { Vec3 } from '../geometry/types';
import { addApart, type Body } from './apartRows';
import type { BalanceRow } from './balanceRows';
import { addStacks } from './ballastRows';
import { addBalanceRow, addCommonColumns, type CommonColumns, type Goal } from './goal';
import { addLeads, type LeadTangents } from './leadRows';
import { addColumn, addRow, emptyMilp, type Milp, type Terms } from './milp';
import { AXES, centreRange, fitsRegion, gapBetween, type Occupant, obstacleOccupant } from './regions';
import type { Choice } from './rooms';
import { STAY } from './stays';
import type { MovablePart, PlaceProblem } from './types';

/** So little per mm of height that it never competes with a gram or a hundredth of a millimetre of margin. */
const FLOOR_PER_MM = 1e-7;

/** What of a placement is already decided. */
export interface Decided {
  /** The option of each part, or of some. */
  readonly choices?: readonly (Choice | undefined)[];
  /** Pairs keep the direction in which they are apart here, mm, middles of the boxes. */
  readonly likeMm?: readonly Vec3[];
  /** No more parts than this leave their place; the problem must offer staying as an option. */
  readonly mostMoves?: number | undefined;
  /** What is known of the ways that leads run. */
  readonly tangents?: LeadTangents | undefined;
}

/** Everything in one program: options, places, directions apart, leads, ballast. */
export interface FullProgram {
  readonly program: Milp;
  readonly common: CommonColumns;
  readonly bodies: readonly Body[];
}

/**
 * The whole placement as one mixed-integer program. Two items that may meet are apart in at least one of the directions
 * that are possible; the large number that switches a direction off is the least that the regions allow.
 */
export function fullProgram(
  problem: PlaceProblem,
  goal: Goal,
  rows: readonly BalanceRow[],
  decided: Decided = {},
): FullProgram {
  const program = emptyMilp();
  const common = addCommonColumns(program, problem, goal);
  const bodies = problem.parts.map((part, i) => addBody(program, part, decided.choices?.[i]?.option));
  const gapOf = gapBetween(problem);
  bodies.forEach((body, i) => {
    for (let j = 0; j < i; j++) {
      const other = bodies[j]!;
      addApart(
        program,
        body,
        other,
        gapOf(body.id, other.id),
        decided.likeMm && [decided.likeMm[i]!, decided.likeMm[j]!],
      );
    }
    for (const obstacle of problem.obstacles) {
      const wall = fixedBody(obstacle.id, obstacleOccupant(obstacle));
      const at = decided.likeMm && ([decided.likeMm[i]!, wall.atMm!] as const);
      addApart(program, body, wall, gapOf(body.id, obstacle.id), at);
    }
  });
  for (const row of rows) {
    const terms: Terms = bodies.flatMap((body, i) => {
      const weight = row.perPart[i] ?? 0;
      return weight === 0 && row.perOption[i]!.every((constant) => constant === 0)
        ? []
        : [
            [body.centre[row.axis], weight] as const,
            ...body.options.map(({ column, index }) => [column, row.perOption[i]![index]!] as const),
          ];
    });
    addBalanceRow(program, problem, goal, common, row, terms);
  }
  addStacks(program, problem, common, bodies);
  addLeads(program, problem, bodies, decided.tangents ?? new Map());
  // With everything else decided, items lie on the floor rather than anywhere.
  if (decided.likeMm) for (const { centre } of bodies) program.cost[centre[2]] = FLOOR_PER_MM;
  const leaving: Terms = bodies.flatMap(({ options }) =>
    options.flatMap(({ option, column }) => (option.id === STAY ? [] : [[column, 1] as const])),
  );
  if (decided.mostMoves !== undefined) addRow(program, leaving, Number.NEGATIVE_INFINITY, decided.mostMoves);
  if (goal.seek === 'fewest moves') {
    for (const [column] of leaving) program.cost[column] = 1;
  }
  return { program, common, bodies };
}

function addBody(program: Milp, part: MovablePart, only: number | undefined): Body {
  const options = part.options.flatMap((option, index) =>
    fitsRegion(option) && (only === undefined || only === index)
      ? [{ index, option, column: addColumn(program, only === undefined ? 0 : 1, 1, true) }]
      : [],
  );
  addRow(
    program,
    options.map(({ column }) => [column, 1] as const),
    1,
    1,
  );
  const centre = AXES.map((axis) => {
    const ranges = options.map(({ option }) => centreRange(option, axis));
    const low = Math.min(...ranges.map(({ lowMm }) => lowMm));
    const high = Math.max(...ranges.map(({ highMm }) => highMm));
    // No option fits: the row above has no solution, and the column must still have an order in its limits.
    const column = addColumn(program, options.length > 0 ? low : 0, options.length > 0 ? high : 0);
    if (options.length > 1) {
      addRow(program, [[column, 1], ...options.map((o, k) => [o.column, -ranges[k]!.lowMm] as const)], 0);
      addRow(program, [[column, -1], ...options.map((o, k) => [o.column, ranges[k]!.highMm] as const)], 0);
    }
    return column;
  });
  return { id: part.id, options, centre: [centre[0]!, centre[1]!, centre[2]!], fixed: null, atMm: null };
}

const fixedBody = (id: string, fixed: Occupant): Body => ({
  id,
  options: [],
  centre: [-1, -1, -1],
  fixed,
  atMm: AXES.map((axis) => (fixed.region.minMm[axis] + fixed.region.maxMm[axis]) / 2) as unknown as Vec3,
});

/** The part's option and the middle of its box in a solution. */
export function placesIn(bodies: readonly Body[], values: readonly number[]) {
  return bodies.map(({ options, centre }, part) => {
    const chosen = options.reduce((a, b) => (values[b.column]! > values[a.column]! ? b : a));
    const centreMm: Vec3 = [values[centre[0]]!, values[centre[1]]!, values[centre[2]]!];
    return { part, option: chosen.index, centreMm };
  });
}
