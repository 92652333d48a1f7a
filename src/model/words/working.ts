import type { Vec3 } from '../../engine/geometry/types';
import type { Balance } from '../balance/balance';
import type { Aircraft } from '../document/types';

/** One line of the sum: mass × arm = moment. */
export interface WorkingLine {
  readonly name: string;
  readonly massG: number;
  /** From the chosen point along the chosen axis, mm. */
  readonly armMm: number;
  readonly momentGmm: number;
}

/** The sum that made one coordinate of the CG, so that it can be done again with a pocket calculator. */
export interface Working {
  readonly lines: readonly WorkingLine[];
  readonly massG: number;
  readonly momentGmm: number;
  /** Total moment ÷ total mass, mm from the chosen point; null without mass. */
  readonly cgMm: number | null;
}

/** The name that a line goes by: the body's own, with its side and piece where it is one of several. */
function nameOf(body: Balance['bodies'][number]): string {
  if (body.id === body.sourceId) return body.name;
  const rest = body.id.slice(body.sourceId.length + 1).replaceAll('.', ' ');
  return `${body.name}, ${rest}`;
}

/**
 * Writes out the sum for one axis (0 station, 1 buttline, 2 waterline), with arms from a point on it.
 * The liquid in each tank at the fuel state shown is a line of its own.
 */
export function workingOf(aircraft: Aircraft, balance: Balance, axis: 0 | 1 | 2, fromMm = 0): Working {
  const line = (name: string, massG: number, cgMm: Vec3): WorkingLine => {
    const armMm = cgMm[axis] - fromMm;
    return { name, massG, armMm, momentGmm: massG * armMm };
  };
  const lines = [
    ...balance.bodies.flatMap((body) =>
      body.mass.cgMm ? [line(nameOf(body), body.mass.massG, body.mass.cgMm)] : [],
    ),
    ...balance.liquids.flatMap(({ tankId, mass }) => {
      const tank = aircraft.tanks.find((each) => each.id === tankId);
      const liquid = aircraft.fuel?.name ?? 'Liquid';
      return mass.cgMm ? [line(`${liquid} in ${tank?.name ?? tankId}`, mass.massG, mass.cgMm)] : [];
    }),
  ];
  const massG = lines.reduce((sum, each) => sum + each.massG, 0);
  const momentGmm = lines.reduce((sum, each) => sum + each.momentGmm, 0);
  return { lines, massG, momentGmm, cgMm: massG > 0 ? momentGmm / massG : null };
}
