import * as v from 'valibot';
import { list, real, record, sizeMm, sizeOrZeroMm, unit } from './fields';

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
    list(v.strictTuple([real, real], 'Expected [y, z] in mm')),
    v.minLength(3, 'Expected at least 3 corners [y, z]'),
  ),
});
const loft = record({
  kind: v.literal('loft'),
  sections: v.pipe(
    list(
      record({
        xMm: real,
        widthMm: sizeOrZeroMm,
        heightMm: sizeOrZeroMm,
        centreYMm: real,
        centreZMm: real,
        roundness: unit,
      }),
    ),
    v.minLength(2, 'Expected at least 2 sections'),
  ),
});
const corner = v.pipe(v.number('Expected the number of a corner'), v.integer(), v.minValue(0));
const mesh = record({
  kind: v.literal('mesh'),
  verticesMm: list(v.strictTuple([real, real, real], 'Expected [x, y, z] in mm')),
  triangles: list(v.strictTuple([corner, corner, corner], 'Expected three corner numbers')),
});

/** The shape of a part or a loose piece of structure, in its own frame, axis along x. */
export const partShape = v.variant('kind', [
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
]);

/** The inside of a tank. */
export const tankShape = v.variant('kind', [
  box,
  taperedBox,
  cylinder,
  frustum,
  sphere,
  ellipsoid,
  capsule,
  prism,
  loft,
  mesh,
]);
