import * as v from 'valibot';
import type { Shape, ShapeKind } from '../../../engine/mass/shapes';
import { list, placeMm, record, sizeMm, sizeOrZeroMm, unit } from './fields';
import { mostOf } from './limits';

const box = record({
  kind: v.literal('box'),
  lengthMm: sizeMm,
  widthMm: sizeMm,
  heightMm: sizeMm,
});
const taperedBox = record({
  kind: v.literal('taperedBox'),
  lengthMm: sizeMm,
  frontWidthMm: sizeMm,
  frontHeightMm: sizeMm,
  rearWidthMm: sizeMm,
  rearHeightMm: sizeMm,
});
const cylinder = record({ kind: v.literal('cylinder'), lengthMm: sizeMm, diameterMm: sizeMm });
const tube = record({
  kind: v.literal('tube'),
  lengthMm: sizeMm,
  outerDiameterMm: sizeMm,
  innerDiameterMm: sizeOrZeroMm,
});
const frustum = record({
  kind: v.literal('frustum'),
  lengthMm: sizeMm,
  frontDiameterMm: sizeOrZeroMm,
  rearDiameterMm: sizeOrZeroMm,
});
const sphere = record({ kind: v.literal('sphere'), diameterMm: sizeMm });
const ellipsoid = record({
  kind: v.literal('ellipsoid'),
  lengthMm: sizeMm,
  widthMm: sizeMm,
  heightMm: sizeMm,
});
const capsule = record({ kind: v.literal('capsule'), lengthMm: sizeMm, diameterMm: sizeMm });
const prism = record({
  kind: v.literal('prism'),
  lengthMm: sizeMm,
  outlineMm: v.pipe(
    list(v.strictTuple([placeMm, placeMm], 'Expected [y, z] in mm'), mostOf.corners),
    v.minLength(3, 'Expected at least 3 corners [y, z]'),
  ),
});
const loft = record({
  kind: v.literal('loft'),
  sections: v.pipe(
    list(
      record({
        xMm: placeMm,
        widthMm: sizeOrZeroMm,
        heightMm: sizeOrZeroMm,
        centreYMm: placeMm,
        centreZMm: placeMm,
        roundness: unit,
      }),
      mostOf.sections,
    ),
    v.minLength(2, 'Expected at least 2 sections'),
  ),
});
const corner = v.pipe(v.number('Expected the number of a corner'), v.integer(), v.minValue(0));
/** A closed triangle mesh in its own frame. */
export const mesh = record({
  kind: v.literal('mesh'),
  verticesMm: list(v.strictTuple([placeMm, placeMm, placeMm], 'Expected [x, y, z] in mm'), mostOf.vertices),
  triangles: list(v.strictTuple([corner, corner, corner], 'Expected three corner numbers'), mostOf.triangles),
});

/** Every solid of the engine but a flying surface's panel, which is stated as part of its surface. */
const solids = {
  box,
  taperedBox,
  cylinder,
  tube,
  frustum,
  sphere,
  ellipsoid,
  capsule,
  prism,
  loft,
  mesh,
} satisfies { [K in Exclude<ShapeKind, 'panel'>]: v.GenericSchema<unknown, Extract<Shape, { kind: K }>> };

const { tube: _open, ...closedSolids } = solids;

/** The shape of a part or a loose piece of structure, in its own frame, axis along x. */
export const partShape = v.variant('kind', Object.values(solids));

/** The inside of a tank. */
export const tankShape = v.variant('kind', Object.values(closedSolids));
