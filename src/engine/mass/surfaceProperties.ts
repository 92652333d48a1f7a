import { perObject } from '../memory/memory';
import { noMass } from './massProperties';
import { meshSurface } from './mesh';
import type { Shape } from './shapes';
import { capsuleSurface } from './solids/capsule';
import { cylinderSurface } from './solids/cylinder';
import { ellipsoidSurface } from './solids/ellipsoid';
import { frustumSurface } from './solids/frustum';
import { loftSurface } from './solids/loft';
import { panelSurface } from './solids/panel';
import { sphereSurface } from './solids/sphere';
import { tubeSurface } from './solids/tube';
import { tensorScale } from './tensor';
import { tessellate } from './tessellate';
import type { MassProperties, SurfaceProperties } from './types';

/**
 * Area, centroid and inertia of a shape's thin closed skin of unit areal density, in its own frame.
 * Closed means every face: the ends of a cylinder, the bore and rings of a tube, the first and last
 * sections of a loft, the root and tip ribs of a panel.
 * Flat-faced shapes and bodies of revolution are exact; lofts, panels and ellipsoids are by
 * quadrature to about 1e-11 of the area.
 */
export const surfaceProperties: (shape: Shape) => SurfaceProperties = perObject((shape: Shape) => {
  switch (shape.kind) {
    case 'box':
    case 'taperedBox':
    case 'prism':
      return meshSurface(tessellate(shape));
    case 'cylinder':
      return cylinderSurface(shape);
    case 'tube':
      return tubeSurface(shape);
    case 'frustum':
      return frustumSurface(shape);
    case 'sphere':
      return sphereSurface(shape);
    case 'ellipsoid':
      return ellipsoidSurface(shape);
    case 'capsule':
      return capsuleSurface(shape);
    case 'loft':
      return loftSurface(shape);
    case 'panel':
      return panelSurface(shape);
    case 'mesh':
      return meshSurface(shape);
  }
});

/** g/mm² in one g/m². */
const perM2 = 1e-6;

/** The shape as a thin closed skin, in its own frame. Areal density in g/m². */
export const shellMass = (shape: Shape, arealDensityGPerM2: number): MassProperties =>
  withArealDensity(surfaceProperties(shape), arealDensityGPerM2 * perM2);

/** The shape as an even thin skin of a known mass. Throws when there is mass but no area to hold it. */
export function shellOfMass(shape: Shape, massG: number): MassProperties {
  const surface = surfaceProperties(shape);
  if (massG === 0) return noMass;
  if (surface.centroidMm === null) {
    throw new Error(`shellOfMass: a ${shape.kind} of no area cannot hold ${massG} g.`);
  }
  return { ...withArealDensity(surface, massG / surface.areaMm2), massG };
}

function withArealDensity(surface: SurfaceProperties, gPerMm2: number): MassProperties {
  const massG = surface.areaMm2 * gPerMm2;
  if (massG === 0 || surface.centroidMm === null) return noMass;
  return {
    massG,
    cgMm: surface.centroidMm,
    inertiaAboutCgGmm2: tensorScale(surface.inertiaAboutCentroidMm4, gPerMm2),
  };
}
