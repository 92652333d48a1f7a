import type { Pose } from '../../../src/engine/geometry/types';
import type { LoftShape, PanelShape, PrismShape, Shape, ShapeKind } from '../../../src/engine/mass/shapes';

/** A channel, as a saddle tank has. */
export const saddle: PrismShape = {
  kind: 'prism',
  lengthMm: 40,
  outlineMm: [
    [-15, -6],
    [15, -6],
    [15, 14],
    [5, 14],
    [5, 2],
    [-4, 2],
    [-4, 14],
    [-15, 14],
  ],
};

/** A fuselage with a pointed nose, off-centre sections and changing roundness. */
export const fuselage: LoftShape = {
  kind: 'loft',
  sections: [
    { xMm: -120, widthMm: 0, heightMm: 0, centreYMm: 0, centreZMm: -4, roundness: 1 },
    { xMm: -60, widthMm: 60, heightMm: 50, centreYMm: 0, centreZMm: 0, roundness: 1 },
    { xMm: 90, widthMm: 70, heightMm: 90, centreYMm: 6, centreZMm: 8, roundness: 0.35 },
    { xMm: 280, widthMm: 14, heightMm: 22, centreYMm: -3, centreZMm: 30, roundness: 0.8 },
  ],
};

/** Swept, tapered, raised, thinned and washed out. */
export const wing: PanelShape = {
  kind: 'panel',
  spanMm: 600,
  rootChordMm: 250,
  tipChordMm: 150,
  sweepMm: 60,
  riseMm: 40,
  rootTwistDeg: 2,
  tipTwistDeg: -3,
  rootThickness: 0.14,
  tipThickness: 0.09,
};

/** A solid of each kind but the mesh: the compiler asks for one of a new kind. */
const samples: { readonly [K in Exclude<ShapeKind, 'mesh'>]: Extract<Shape, { kind: K }> } = {
  box: { kind: 'box', lengthMm: 140, widthMm: 45, heightMm: 30 },
  taperedBox: {
    kind: 'taperedBox',
    lengthMm: 90,
    frontWidthMm: 30,
    frontHeightMm: 50,
    rearWidthMm: 44,
    rearHeightMm: 12,
  },
  cylinder: { kind: 'cylinder', lengthMm: 60, diameterMm: 35 },
  tube: { kind: 'tube', lengthMm: 200, outerDiameterMm: 20, innerDiameterMm: 16 },
  frustum: { kind: 'frustum', lengthMm: 55, frontDiameterMm: 60, rearDiameterMm: 24 },
  sphere: { kind: 'sphere', diameterMm: 42 },
  ellipsoid: { kind: 'ellipsoid', lengthMm: 130, widthMm: 70, heightMm: 40 },
  capsule: { kind: 'capsule', lengthMm: 120, diameterMm: 50 },
  prism: saddle,
  loft: fuselage,
  panel: wing,
};

/** One of each kind but the mesh, and a frustum with a point. */
export const sampleShapes: readonly Shape[] = [
  ...Object.values(samples),
  { kind: 'frustum', lengthMm: 55, frontDiameterMm: 0, rearDiameterMm: 50 },
];

/** At home; far off and turned; beyond a quarter turn on every axis. */
export const samplePoses: readonly Pose[] = [
  { positionMm: [0, 0, 0], yawDeg: 0, pitchDeg: 0, rollDeg: 0 },
  { positionMm: [1200, -340, 77], yawDeg: 23, pitchDeg: -37, rollDeg: 61 },
  { positionMm: [-15, 8000, 2500], yawDeg: -128, pitchDeg: 74, rollDeg: 151 },
];

/** A name that tells two shapes of one kind apart. */
export const nameOf = (shape: Shape): string =>
  shape.kind === 'frustum' && shape.frontDiameterMm === 0 ? 'cone' : shape.kind;
