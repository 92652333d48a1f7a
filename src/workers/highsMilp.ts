import type { Highs, Model } from 'highs';
import type { Milp, MilpAnswer, SolveMilp } from '../engine/place/milp';

/** Bounds the solver by its work in place of its clock: then the same question has the same answer on any machine. */
export interface WorkBound {
  /** Nodes of its tree that stand for a millisecond of the time it is given. */
  readonly nodesPerMs: number;
  /** Told of each program solved. */
  readonly onSolved: (iterations: number) => void;
}

/**
 * HiGHS as the engine's solver: J. A. J. Hall and others, compiled to WebAssembly. One thread, no clock but its own, and
 * not even that where its work is bounded.
 */
export function highsMilp(highs: Highs, byWork?: WorkBound): SolveMilp {
  const { modelStatus, callbackType } = highs.constants;
  return (program, { timeMs, gap, enough, shouldStop, plainly }): MilpAnswer =>
    highs.withModel(modelData(highs, program), (model: Model): MilpAnswer => {
      model.options.set({
        output_flag: false,
        ...(byWork
          ? { mip_max_nodes: Math.max(1, Math.ceil(timeMs * byWork.nodesPerMs)) }
          : { time_limit: Math.max(0.01, timeMs / 1000) }),
        mip_rel_gap: 0,
        mip_abs_gap: gap ?? 1e-6,
        mip_feasibility_tolerance: 1e-7,
        primal_feasibility_tolerance: 1e-8,
        presolve: plainly ? 'off' : 'choose',
      });
      if (enough !== undefined) model.options.set('objective_target', enough);
      let best: readonly number[] | null = null;
      model.run({
        [callbackType.mipImprovingSolution]({ data }) {
          best = data.mip_solution ? [...data.mip_solution] : best;
        },
        [callbackType.mipInterrupt](event) {
          if (shouldStop?.()) event.interrupt();
        },
      });
      byWork?.onSolved(Math.max(0, model.info.get('simplex_iteration_count') as number));
      const status = model.getModelStatus();
      const hasIntegers = program.integer.some(Boolean);
      if (status === modelStatus.optimal) {
        const { colValue, rowDual } = model.getSolution();
        const values = [...colValue];
        return hasIntegers
          ? { status: 'optimal', values, bound: model.info.get('mip_dual_bound') as number }
          : { status: 'optimal', values, bound: model.getObjectiveValue(), rowDuals: [...rowDual] };
      }
      if (status === modelStatus.objectiveTarget) best = [...model.getSolution().colValue];
      if (status === modelStatus.infeasible) return { status: 'infeasible', values: null, bound: Infinity };
      const bound = hasIntegers ? (model.info.get('mip_dual_bound') as number) : Number.NEGATIVE_INFINITY;
      return {
        status: 'stopped',
        values: best,
        bound: Number.isFinite(bound) ? bound : Number.NEGATIVE_INFINITY,
      };
    });
}

function modelData(highs: Highs, { cost, lower, upper, integer, rows }: Milp) {
  const bounded = (value: number) =>
    Number.isFinite(value) ? value : value > 0 ? highs.infinity : -highs.infinity;
  const starts = [0];
  for (const { columns } of rows) starts.push(starts.at(-1)! + columns.length);
  return {
    numCols: cost.length,
    numRows: rows.length,
    colCost: cost,
    colLower: lower,
    colUpper: upper,
    rowLower: rows.map((row) => bounded(row.lower)),
    rowUpper: rows.map((row) => bounded(row.upper)),
    integrality: integer.map((whole) =>
      whole ? highs.constants.variableType.integer : highs.constants.variableType.continuous,
    ),
    matrix: {
      format: 'csr' as const,
      numRows: rows.length,
      numCols: cost.length,
      starts,
      indices: rows.flatMap(({ columns }) => columns),
      values: rows.flatMap(({ values }) => values),
    },
  };
}
