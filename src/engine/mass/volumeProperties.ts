import { perObject } from '../memory/memory';
import { noMass } from './massProperties';
import { meshProperties } from './mesh';
import type { Shape } from './shapes';
import { boxVolume } from './solids/box';
import { capsuleVolume } from './solids/capsule';
import { cylinderVolume } from './solids/cylinder';
import { ellipsoidVolume } from './solids/ellipsoid';
import { frustumVolume } from './solids/frustum';
import { loftVolume } from './solids/loft';
import { panelVolume } from './solids/panel';
import { prismVolume } from './solids/prism';
import { sphereVolume } from './solids/sphere';
import { taperedBoxVolume } from './solids/taperedBox';
import { tubeVolume } from './solids/tube';
import { tensorScale } from './tensor';
import type { MassProperties, VolumeProperties } from './types';

/**
 * Volume, centroid and inertia of a solid of unit density in the shape's own frame. Exact.
 * A shape of no volume has no centroid; ask `shapeFault` first about sizes nobody has checked.
 */
export const volumeProperties: (shape: Shape) => VolumeProperties = perObject((shape: Shape) => {
  switch (shape.kind) {
    case 'box':
      return boxVolume(shape);
    case 'taperedBox':
      return taperedBoxVolume(shape);
    case 'cylinder':
      return cylinderVolume(shape);
    case 'tube':
      return tubeVolume(shape);
    case 'frustum':
      return frustumVolume(shape);
    case 'sphere':
      return sphereVolume(shape);
    case 'ellipsoid':
      return ellipsoidVolume(shape);
    case 'capsule':
      return capsuleVolume(shape);
    case 'prism':
      return prismVolume(shape);
    case 'loft':
      return loftVolume(shape);
    case 'panel':
      return panelVolume(shape);
    case 'mesh':
      return meshProperties(shape);
  }
});

/** g/mm³ in one g/ml. */
const perMl = 1e-3;

/** The shape filled with a material, in its own frame. Density in g/ml. */
export const solidMass = (shape: Shape, densityGPerMl: number): MassProperties =>
  withDensity(volumeProperties(shape), densityGPerMl * perMl);

/** The shape as an even solid of a known mass. Throws when there is mass but no volume to hold it. */
export function solidOfMass(shape: Shape, massG: number): MassProperties {
  const volume = volumeProperties(shape);
  if (massG === 0) return noMass;
  if (volume.centroidMm === null) {
    throw new Error(`solidOfMass: a ${shape.kind} of no volume cannot hold ${massG} g.`);
  }
  return { ...withDensity(volume, massG / volume.volumeMm3), massG };
}

function withDensity(volume: VolumeProperties, gPerMm3: number): MassProperties {
  const massG = volume.volumeMm3 * gPerMm3;
  if (massG === 0 || volume.centroidMm === null) return noMass;
  return {
    massG,
    cgMm: volume.centroidMm,
    inertiaAboutCgGmm2: tensorScale(volume.inertiaAboutCentroidMm5, gPerMm3),
  };
}
