import * as v from 'valibot';
import {
  angleDeg,
  id,
  label,
  massG,
  percent,
  pointMm,
  real,
  record,
  sizeMm,
  sizeOrZeroMm,
  unit,
} from './fields';
import { partShape } from './shapes';

/** Spread of a weighed mass: through the solid, or over its skin. */
const spread = v.optional(v.picklist(['solid', 'skin']));

/**
 * Where a piece's mass comes from. `massG` is the piece's own; of a mirrored pair it is the right-hand
 * one's, and `leftMassG` the left-hand one's where the two differ.
 */
export const massSource = v.variant('by', [
  record({ by: v.literal('weighed'), massG, leftMassG: v.optional(massG), spread }),
  record({ by: v.literal('skin'), gPerM2: massG }),
  record({ by: v.literal('foam'), gPerMl: massG }),
]);

const sides = v.picklist(['centre', 'both'], 'Expected "centre" (one piece) or "both" (a mirrored pair)');

/** A hull through sections across the station axis; a pod or nacelle when it is set off the centre line. */
export const fuselage = record({
  id,
  kind: v.literal('fuselage'),
  name: label,
  sides,
  buttlineMm: real,
  sections: v.pipe(
    v.array(
      record({
        stationMm: real,
        widthMm: sizeOrZeroMm,
        heightMm: sizeOrZeroMm,
        waterlineMm: real,
        roundness: unit,
      }),
    ),
    v.minLength(2, 'Expected at least 2 sections'),
  ),
  skinMm: sizeOrZeroMm,
  mass: massSource,
});

/**
 * A wing, tail, canard or fin. `rootMm` is the leading edge of the (right-hand) root; `cantDeg` raises
 * the span about a fore-and-aft line through it: 0 lies flat, 90 stands up. Each panel begins where
 * the one before it ends. Spans are measured square to the root; dihedral raises the panel's tip on top.
 */
export const surface = record({
  id,
  kind: v.literal('surface'),
  name: label,
  role: v.picklist(['wing', 'tailplane', 'canard', 'fin', 'v-tail']),
  sides,
  rootMm: pointMm,
  cantDeg: angleDeg,
  incidenceDeg: angleDeg,
  rootChordMm: sizeMm,
  rootThicknessPct: percent,
  panels: v.pipe(
    v.array(
      record({
        spanMm: sizeMm,
        tipChordMm: sizeMm,
        /** Tip leading edge aft of this panel's root leading edge. */
        sweepMm: real,
        dihedralDeg: angleDeg,
        /** Tip section against the surface's root, nose up +; washout is negative. */
        twistDeg: angleDeg,
        tipThicknessPct: percent,
      }),
    ),
    v.minLength(1, 'Expected at least 1 panel'),
  ),
  mass: massSource,
});

/** A straight round boom between two points. */
export const boom = record({
  id,
  kind: v.literal('boom'),
  name: label,
  sides,
  frontMm: pointMm,
  rearMm: pointMm,
  frontDiameterMm: sizeMm,
  rearDiameterMm: sizeMm,
  mass: massSource,
});

/** An undercarriage leg: a straight strut from its hinge or mount down to the axle, with a wheel. */
export const leg = record({
  id,
  kind: v.literal('leg'),
  name: label,
  sides,
  topMm: pointMm,
  axleMm: pointMm,
  strutDiameterMm: sizeMm,
  strutMassG: massG,
  wheelDiameterMm: sizeMm,
  wheelWidthMm: sizeMm,
  wheelMassG: massG,
});

/** Any other piece of structure: a former, a mount, a foam block. */
export const block = record({
  id,
  kind: v.literal('block'),
  name: label,
  sides,
  shape: partShape,
  positionMm: pointMm,
  yawDeg: angleDeg,
  pitchDeg: angleDeg,
  rollDeg: angleDeg,
  mass: massSource,
});

export const structurePiece = v.variant('kind', [fuselage, surface, boom, leg, block]);
