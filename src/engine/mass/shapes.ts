import type { Vec3 } from '../geometry/types';

/**
 * The shapes a body can have. Each is given in its own frame: x aft, y right, z up, and unless said
 * otherwise the origin is the middle of its bounding box. Sizes are overall sizes in mm.
 */
export type Shape =
  | BoxShape
  | TaperedBoxShape
  | CylinderShape
  | TubeShape
  | FrustumShape
  | SphereShape
  | EllipsoidShape
  | CapsuleShape
  | PrismShape
  | LoftShape
  | PanelShape
  | MeshShape;

export type ShapeKind = Shape['kind'];

export interface BoxShape {
  readonly kind: 'box';
  readonly lengthMm: number;
  readonly widthMm: number;
  readonly heightMm: number;
}

/** A box whose front and rear faces differ in size; both centred on the x axis. */
export interface TaperedBoxShape {
  readonly kind: 'taperedBox';
  readonly lengthMm: number;
  readonly frontWidthMm: number;
  readonly frontHeightMm: number;
  readonly rearWidthMm: number;
  readonly rearHeightMm: number;
}

/** Axis along x. */
export interface CylinderShape {
  readonly kind: 'cylinder';
  readonly lengthMm: number;
  readonly diameterMm: number;
}

/** A cylinder with a bore, axis along x. */
export interface TubeShape {
  readonly kind: 'tube';
  readonly lengthMm: number;
  readonly outerDiameterMm: number;
  readonly innerDiameterMm: number;
}

/** A cone frustum, axis along x; one diameter may be 0. */
export interface FrustumShape {
  readonly kind: 'frustum';
  readonly lengthMm: number;
  readonly frontDiameterMm: number;
  readonly rearDiameterMm: number;
}

export interface SphereShape {
  readonly kind: 'sphere';
  readonly diameterMm: number;
}

export interface EllipsoidShape {
  readonly kind: 'ellipsoid';
  readonly lengthMm: number;
  readonly widthMm: number;
  readonly heightMm: number;
}

/** A cylinder with half-sphere ends, axis along x; `lengthMm` is overall, at least the diameter. */
export interface CapsuleShape {
  readonly kind: 'capsule';
  readonly lengthMm: number;
  readonly diameterMm: number;
}

/** A simple polygon in the y-z plane, drawn out along x from −length/2 to +length/2. May be non-convex (saddle). */
export interface PrismShape {
  readonly kind: 'prism';
  readonly lengthMm: number;
  /** [y, z] corners in the shape's own frame, either winding, not self-crossing. */
  readonly outlineMm: readonly (readonly [y: number, z: number])[];
}

/**
 * A skin through sections across x. Each section is a rectangle whose corners are rounded by quarter
 * ellipses with semi-axes roundness × width/2 and roundness × height/2: 0 a rectangle, 1 an ellipse.
 * Between neighbouring sections width, height, centre and roundness run linearly with x.
 * The origin is the frame's own: `xMm`, `centreYMm` and `centreZMm` are taken as they stand.
 */
export interface LoftShape {
  readonly kind: 'loft';
  readonly sections: readonly LoftSection[];
}

export interface LoftSection {
  readonly xMm: number;
  readonly widthMm: number;
  readonly heightMm: number;
  readonly centreYMm: number;
  readonly centreZMm: number;
  readonly roundness: number;
}

/**
 * One flying-surface panel, origin at the root leading edge, span along +y.
 * Root section in the plane y = 0, tip section in y = span; between them straight lines join like
 * points of the two (a ruled solid). Sections are the symmetric four-digit thickness form (closed
 * trailing edge, see aerofoil.ts), turned nose up by their twist about their own quarter-chord point.
 */
export interface PanelShape {
  readonly kind: 'panel';
  readonly spanMm: number;
  readonly rootChordMm: number;
  readonly tipChordMm: number;
  /** Tip leading edge aft of root leading edge, before twist, mm. */
  readonly sweepMm: number;
  /** Tip leading edge above root leading edge, before twist, mm. */
  readonly riseMm: number;
  readonly rootTwistDeg: number;
  readonly tipTwistDeg: number;
  /** Thickness as a fraction of chord, e.g. 0.12. */
  readonly rootThickness: number;
  readonly tipThickness: number;
}

/** A closed triangle mesh in its own frame. */
export interface MeshShape {
  readonly kind: 'mesh';
  readonly verticesMm: readonly Vec3[];
  readonly triangles: readonly (readonly [number, number, number])[];
}
