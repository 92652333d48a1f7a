import * as v from 'valibot';
import {
  about,
  angleDeg,
  choice,
  dihedralDeg,
  direction,
  flag,
  gPerM2,
  gPerMl,
  id,
  label,
  list,
  massG,
  percent,
  placeMm,
  plusMinusG,
  plusMinusMm,
  pointMm,
  record,
  sizeMm,
  sizeOrZeroMm,
  unit,
} from './fields';
import { mostOf } from './limits';
import { mesh, partShape } from './shapes';
import { massFrom, sizeFrom } from './sources';

/** Spread of a weighed mass: through the solid, or over its skin. */
const spread = about(
  v.optional(choice(['solid', 'skin'])),
  'where a weighed mass sits: through the solid, or over its skin; left out, a hull or boom is a skin and all else solid',
);

/**
 * Where a piece's mass comes from. `massG` is the piece's own; of a mirrored pair it is the right-hand
 * one's, and `leftMassG` the left-hand one's where the two differ.
 */
export const massSource = v.variant('by', [
  record(
    {
      by: v.literal('weighed'),
      massG: about(massG, 'g; of a mirrored pair the mass of the right-hand one'),
      leftMassG: about(v.optional(massG), 'g; the left-hand one of a pair, where it differs'),
      spread,
    },
    'from the scales',
  ),
  record({ by: v.literal('skin'), gPerM2 }, 'a closed skin of this areal density, g/m²'),
  record({ by: v.literal('foam'), gPerMl }, 'a solid of this density, g/ml'),
]);

const sides = about(
  choice(['centre', 'both']),
  'centre: one piece as given; both: the piece given is the right-hand one of a mirrored pair',
);

/** A hull through sections across the station axis; a pod or nacelle when it is set off the centre line. */
export const fuselage = record(
  {
    id,
    kind: v.literal('fuselage'),
    name: label,
    sides,
    buttlineMm: placeMm,
    sections: v.pipe(
      list(
        record({
          stationMm: placeMm,
          widthMm: sizeOrZeroMm,
          heightMm: sizeOrZeroMm,
          waterlineMm: about(placeMm, "of the section's middle"),
          roundness: about(unit, '0 a rectangle, 1 an ellipse'),
        }),
        mostOf.sections,
      ),
      v.minLength(2, 'Expected at least 2 sections'),
    ),
    mesh: about(
      v.optional(record({ shape: mesh, stationMm: placeMm, waterlineMm: placeMm })),
      'the hull’s own closed surface, its origin at this station and waterline and at the buttline; the sections are then cut from it',
    ),
    skinMm: about(sizeOrZeroMm, 'thickness of the wall, for fit; it has no say in the mass'),
    open: about(v.optional(choice(['front', 'rear', 'both'])), 'ends without a wall, for fit'),
    mass: massSource,
    massFrom,
    sizeFrom,
    plusMinusG,
    plusMinusMm,
  },
  'a hull through sections across the station axis',
);

/**
 * A wing, tail, canard or fin. `rootMm` is the leading edge of the (right-hand) root; `cantDeg` raises
 * the span about a fore-and-aft line through it: 0 lies flat, 90 stands up. Incidence turns the surface
 * nose up about its own span line before it is canted. Each panel begins where the one before it ends. Spans are measured square to the root; dihedral raises the panel's tip on top.
 */
export const surface = record(
  {
    id,
    kind: v.literal('surface'),
    name: label,
    role: choice(['wing', 'tailplane', 'canard', 'fin', 'v-tail']),
    sides,
    rootMm: about(pointMm, 'leading edge of the (right-hand) root: [station, buttline, waterline], mm'),
    cantDeg: about(angleDeg, '0 lies flat, 90 stands up'),
    incidenceDeg: about(angleDeg, 'nose up +, before the cant'),
    rootChordMm: sizeMm,
    rootThicknessPct: about(percent, '% of the chord'),
    panels: v.pipe(
      list(
        record({
          spanMm: about(sizeMm, 'square to the root, mm'),
          tipChordMm: sizeMm,
          sweepMm: about(placeMm, "tip leading edge aft of this panel's root leading edge, mm"),
          dihedralDeg: about(dihedralDeg, 'tip up +, on top of the cant'),
          twistDeg: about(angleDeg, "tip section against the surface's root, nose up +; washout is negative"),
          tipThicknessPct: about(percent, '% of the chord'),
        }),
        mostOf.panels,
      ),
      v.minLength(1, 'Expected at least 1 panel'),
    ),
    openToHull: about(
      flag,
      'for fit: inside a hull the surface is cut away, and things may reach from one into the other',
    ),
    joinsBody: about(
      v.optional(choice(['yes', 'no'])),
      'whether its lift carries through the body from half to half; left out, the geometry decides',
    ),
    mass: massSource,
    massFrom,
    sizeFrom,
    plusMinusG,
    plusMinusMm,
  },
  'a wing, tail, canard or fin, panel by panel from the root outwards',
);

/** A straight round boom between two points. */
export const boom = record(
  {
    id,
    kind: v.literal('boom'),
    name: label,
    sides,
    frontMm: pointMm,
    rearMm: pointMm,
    frontDiameterMm: sizeMm,
    rearDiameterMm: sizeMm,
    mass: massSource,
    massFrom,
    sizeFrom,
    plusMinusG,
    plusMinusMm,
  },
  'a straight round boom between two points',
);

const retract = record({
  axis: about(direction, 'the hinge line, as a direction; of a pair that of the right-hand leg'),
  angleDeg: about(angleDeg, 'from down to up, right-handed about the axis'),
});

/** An undercarriage leg: a straight strut from its hinge or mount down to the axle, with a wheel. */
export const leg = record(
  {
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
    spindle: about(
      v.optional(direction),
      'where the wheel’s spindle points, as a direction; across the aircraft when left out',
    ),
    retract: about(v.optional(retract), 'how the leg swings up about its top; a leg without it stays down'),
    massFrom,
    sizeFrom,
    plusMinusG,
    plusMinusMm,
  },
  'an undercarriage leg: a strut from its mount down to the axle, and a wheel',
);

/** Any other piece of structure: a former, a mount, a foam block. */
export const block = record(
  {
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
    cuttable: about(flag, 'parts may be let into it: what they displace is cut out'),
    minimumWallMm: about(v.optional(sizeOrZeroMm), 'the least that must be left around a cut-out, mm'),
    massFrom,
    sizeFrom,
    plusMinusG,
    plusMinusMm,
  },
  'any other piece of structure',
);

export const structurePiece = v.variant('kind', [fuselage, surface, boom, leg, block]);
