import type { Vec3 } from '../geometry/types';
import type { LoftSection, PanelShape, Shape, TubeShape } from '../mass/shapes';
import { tessellate } from '../mass/tessellate';
import { volumeProperties } from '../mass/volumeProperties';
import { perObject } from '../memory/memory';
import { ellipsoidVessel } from './ellipsoidVessel';
import { polyhedronVessel } from './polyhedronVessel';
import { ballPiece, loftPiece, type StackPiece } from './stackPieces';
import { stackVessel } from './stackVessel';
import type { TiltedVessel, Vessel } from './vessel';

/** What keeps a shape from being the inside of a tank, as a sentence; null when nothing does. */
export function tankShapeFault(shape: Shape): string | null {
  return holdsLiquid(shape) ? null : faultOf(shape);
}

type TankShape = Exclude<Shape, TubeShape | PanelShape>;

const holdsLiquid = (shape: Shape): shape is TankShape => shape.kind !== 'tube' && shape.kind !== 'panel';

const faultOf = (shape: Shape) =>
  `A ${shape.kind} cannot be a tank: describe the inside of the tank as a box, cylinder, loft or another closed shape.`;

/**
 * The inside of a tank of this shape, in the shape's own frame; made once for each shape object.
 * Throws when the shape cannot hold liquid.
 */
export const vesselOf: (shape: Shape) => Vessel = perObject((shape: Shape) =>
  withLastTilt(makeVessel(shape)),
);

/** Keeps the last attitude, for a tank's fuel states are mostly asked for at one. */
function withLastTilt(vessel: Vessel): Vessel {
  let last: { readonly down: Vec3; readonly tilted: TiltedVessel } | null = null;
  return {
    full: vessel.full,
    tilt(down) {
      if (!last || last.down[0] !== down[0] || last.down[1] !== down[1] || last.down[2] !== down[2]) {
        last = { down, tilted: vessel.tilt(down) };
      }
      return last.tilted;
    },
  };
}

function makeVessel(shape: Shape): Vessel {
  if (!holdsLiquid(shape)) throw new Error(faultOf(shape));
  const full = volumeProperties(shape);
  switch (shape.kind) {
    case 'sphere': {
      const radius = shape.diameterMm / 2;
      return ellipsoidVessel([radius, radius, radius], full);
    }
    case 'ellipsoid':
      return ellipsoidVessel([shape.lengthMm / 2, shape.widthMm / 2, shape.heightMm / 2], full);
    case 'cylinder':
      return stackVessel([roundPiece(shape.lengthMm, shape.diameterMm, shape.diameterMm)], full);
    case 'frustum':
      return stackVessel([roundPiece(shape.lengthMm, shape.frontDiameterMm, shape.rearDiameterMm)], full);
    case 'capsule':
      return stackVessel(capsulePieces(shape.lengthMm, shape.diameterMm), full);
    case 'loft':
      return stackVessel(loftPieces(shape.sections), full);
    case 'box':
    case 'taperedBox':
    case 'prism':
    case 'mesh':
      // Flat faces, so that the facets are the shape itself. A round shape needs a vessel of its own.
      return polyhedronVessel(tessellate(shape), full);
  }
}

function roundSection(xMm: number, diameterMm: number): LoftSection {
  return { xMm, widthMm: diameterMm, heightMm: diameterMm, centreYMm: 0, centreZMm: 0, roundness: 1 };
}

function roundPiece(lengthMm: number, frontMm: number, rearMm: number): StackPiece {
  return loftPiece(roundSection(-lengthMm / 2, frontMm), roundSection(lengthMm / 2, rearMm));
}

function capsulePieces(lengthMm: number, diameterMm: number): StackPiece[] {
  const radius = diameterMm / 2;
  const barrel = lengthMm - diameterMm;
  const end = barrel / 2;
  return [
    ballPiece(-Math.PI / 2, 0, -end, radius),
    ...(barrel > 0 ? [roundPiece(barrel, diameterMm, diameterMm)] : []),
    ballPiece(0, Math.PI / 2, end, radius),
  ];
}

function loftPieces(sections: readonly LoftSection[]): StackPiece[] {
  const inOrder = [...sections].sort((a, b) => a.xMm - b.xMm);
  return inOrder.slice(1).flatMap((b, k) => (b.xMm > inOrder[k]!.xMm ? [loftPiece(inOrder[k]!, b)] : []));
}
