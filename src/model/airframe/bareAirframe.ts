import type { Vec3 } from '../../engine/geometry/types';
import { addScaled, mirrorY, sub } from '../../engine/geometry/vec3';
import { massPoint, massScale } from '../../engine/mass/massProperties';
import type { MassProperties } from '../../engine/mass/types';
import type { Aircraft, BareAirframe } from '../document/types';
import { extentOf, orientedBox } from './extent';
import { elementPieces } from './pieces';

export { BARE_AIRFRAME_ID } from '../document/ids';

/** Weighed minus shapes. */
export interface AirframeDifference {
  readonly massG: number;
  /** How far the weighed CG lies aft, right and up of the shapes' CG, mm; null when the shapes have no mass. */
  readonly stationMm: number | null;
  readonly buttlineMm: number | null;
  /** Null too when the waterline was not weighed. */
  readonly waterlineMm: number | null;
  /** Where a point mass of `massG` would have to sit to explain it all; null when the masses are equal. */
  readonly placeMm: Vec3 | null;
}

/** What the roll-up takes beside the shapes (`adding`) or in place of them (`replacing`). */
export interface AirframeCorrection {
  readonly by: 'adding' | 'replacing';
  readonly mass: MassProperties;
}

/**
 * By how much the airframe on the scales differs from the sum of its shapes.
 * A waterline that was not weighed is taken to be the shapes'.
 */
export function airframeDifference(shapes: MassProperties, weighed: BareAirframe): AirframeDifference {
  const massG = weighed.massG - shapes.massG;
  const target = weighedCg(shapes, weighed);
  const from = shapes.cgMm;
  const placeMm =
    massG === 0 ? null : from ? addScaled(target, sub(target, from), shapes.massG / massG) : target;
  return {
    massG,
    stationMm: from && target[0] - from[0],
    buttlineMm: from && target[1] - from[1],
    waterlineMm: from && weighed.waterlineMm !== undefined ? target[2] - from[2] : null,
    placeMm,
  };
}

/**
 * How the weighed airframe enters the roll-up; null when it is only compared.
 * `correct` adds what is missing as a point mass. Where no point mass can do it (nothing is missing, or it
 * would have to sit outside the airframe) the weighed airframe replaces the shapes, as with `replace`:
 * weighed mass and CG, the shapes' inertia scaled to it.
 */
export function airframeCorrection(
  structure: Aircraft['structure'],
  shapes: MassProperties,
  weighed: BareAirframe,
): AirframeCorrection | null {
  if (weighed.use === 'compare') return null;
  if (weighed.use === 'correct') {
    const { massG, placeMm } = airframeDifference(shapes, weighed);
    if (massG > 0 && placeMm && withinAirframe(structure, placeMm)) {
      return { by: 'adding', mass: massPoint(massG, placeMm) };
    }
  }
  return { by: 'replacing', mass: asWeighed(shapes, weighed) };
}

function asWeighed(shapes: MassProperties, weighed: BareAirframe): MassProperties {
  const target = weighedCg(shapes, weighed);
  if (shapes.cgMm === null || weighed.massG === 0) return massPoint(weighed.massG, target);
  return { ...massScale(shapes, weighed.massG / shapes.massG), massG: weighed.massG, cgMm: target };
}

function weighedCg(shapes: MassProperties, { stationMm, buttlineMm, waterlineMm }: BareAirframe): Vec3 {
  return [stationMm, buttlineMm, waterlineMm ?? shapes.cgMm?.[2] ?? 0];
}

/** Whether a point lies in the box around all the airframe's pieces. */
function withinAirframe(structure: Aircraft['structure'], pointMm: Vec3): boolean {
  const boxes = structure.flatMap(elementPieces).map(({ shape, pose, mirrored }) => {
    const { minMm, maxMm } = extentOf(orientedBox({ ...pose, shape }));
    return mirrored ? [mirrorY(minMm), mirrorY(maxMm)] : [minMm, maxMm];
  });
  return pointMm.every((coordinate, axis) => {
    const along = boxes.flat().map((corner) => corner[axis] ?? coordinate);
    return coordinate >= Math.min(...along) && coordinate <= Math.max(...along);
  });
}
