import { addApart, type Body } from './apartRows';
import { growthMm, mostSteps } from './ballastRoom';
import type { CommonColumns } from './goal';
import { addColumn, addRow, type Milp } from './milp';
import { gapBetween, widest } from './regions';
import type { BallastSpot, PlaceProblem } from './types';

/** Stacks of ballast keep clear of parts and of each other; of what stands still their most steps do already. */
export function addStacks(
  program: Milp,
  problem: PlaceProblem,
  { steps }: CommonColumns,
  bodies: readonly Body[],
): void {
  const gapOf = gapBetween(problem);
  const stacks: Body[] = [];
  problem.spots.forEach((spot, k) => {
    const most = mostSteps(problem, spot);
    if (!spot.body || most === 0) return;
    const any = addColumn(program, 0, 1, true);
    addRow(
      program,
      [
        [any, most],
        [steps[k]!, -1],
      ],
      0,
    );
    stacks.push(stackBody(spot, most, steps[k]!, any));
  });
  stacks.forEach((stack, i) => {
    for (const other of [...bodies, ...stacks.slice(0, i)]) {
      const gapMm = widest(gapOf(stack.id, other.id));
      addApart(program, stack, other, { axisMm: gapMm, straightMm: 0 }, undefined);
    }
  });
}

function stackBody(spot: BallastSpot, most: number, steps: number, any: number): Body {
  const { positionMm: at, id } = spot;
  const perStepMm = growthMm(spot);
  const { widthMm, heightMm } = spot.body!;
  const half = [most * perStepMm, widthMm / 2, heightMm / 2] as const;
  const corner = (side: 1 | -1) =>
    [at[0] + side * half[0], at[1] + side * half[1], at[2] + side * half[2]] as const;
  const region = { minMm: corner(-1), maxMm: corner(1) };
  return {
    id,
    options: [],
    centre: [-1, -1, -1],
    // It may be next to nothing and anywhere in its region, as far as what can pass it goes.
    fixed: { region, sizeMm: [0, widthMm, heightMm] },
    atMm: at,
    grows: { steps, perStepMm, any },
  };
}
