import { shapeBounds } from '../../engine/mass/shapeBounds';
import type { Part } from '../../model/document/types';

type PartShape = Part['shape'];
export type PlainKind = Exclude<PartShape['kind'], 'loft' | 'mesh' | 'prism'>;

/** The shapes that a few dimensions describe, in the words of the card. */
const plainLabels: Readonly<Record<PlainKind, string>> = {
  box: 'Box',
  taperedBox: 'Tapered box',
  cylinder: 'Cylinder',
  tube: 'Tube',
  frustum: 'Cone',
  sphere: 'Sphere',
  ellipsoid: 'Ellipsoid',
  capsule: 'Capsule',
};

/** The same as a list, in the order that they are offered in. */
export const plainShapes = (Object.keys(plainLabels) as PlainKind[]).map((kind) => ({
  kind,
  label: plainLabels[kind],
}));

/** The others, which an item may have but the card cannot give it. */
const builtLabels: Readonly<Record<Exclude<PartShape['kind'], PlainKind>, string>> = {
  loft: 'Through sections',
  prism: 'Prism',
  mesh: 'Mesh',
};

/** The word for a shape that is not one of the plain ones; undefined for those. */
export const builtLabel = (kind: PartShape['kind']): string | undefined =>
  kind in builtLabels ? builtLabels[kind as keyof typeof builtLabels] : undefined;

type DimensionKey = {
  [K in PlainKind]: Exclude<keyof Extract<PartShape, { kind: K }>, 'kind'>;
}[PlainKind];

const words: Readonly<Record<DimensionKey, string>> = {
  lengthMm: 'Length',
  widthMm: 'Width',
  heightMm: 'Height',
  diameterMm: 'Diameter',
  outerDiameterMm: 'Outside',
  innerDiameterMm: 'Bore',
  frontDiameterMm: 'Front diameter',
  rearDiameterMm: 'Rear diameter',
  frontWidthMm: 'Front width',
  frontHeightMm: 'Front height',
  rearWidthMm: 'Rear width',
  rearHeightMm: 'Rear height',
};

export interface Dimension {
  readonly key: string;
  readonly label: string;
  readonly valueMm: number;
}

/** Every dimension of a shape that is one figure. */
export const dimensionsOf = (shape: PartShape): Dimension[] =>
  Object.entries(shape).flatMap(([key, value]) =>
    typeof value === 'number' && key in words
      ? [{ key, label: words[key as DimensionKey], valueMm: value }]
      : [],
  );

/** The shape with one of its dimensions changed. */
export const withDimension = (shape: PartShape, key: string, valueMm: number): PartShape =>
  ({ ...shape, [key]: valueMm }) as PartShape;

/** Another shape that fills about the same room: its overall length, width and height are kept where it has them. */
export function shapeAs(shape: PartShape, kind: PlainKind): PartShape {
  const { minMm, maxMm } = shapeBounds(shape);
  const [lengthMm, widthMm, heightMm] = [maxMm[0] - minMm[0], maxMm[1] - minMm[1], maxMm[2] - minMm[2]];
  const diameterMm = (widthMm + heightMm) / 2;
  switch (kind) {
    case 'box':
    case 'ellipsoid':
      return { kind, lengthMm, widthMm, heightMm };
    case 'taperedBox':
      return {
        kind,
        lengthMm,
        frontWidthMm: widthMm,
        frontHeightMm: heightMm,
        rearWidthMm: widthMm,
        rearHeightMm: heightMm,
      };
    case 'cylinder':
      return { kind, lengthMm, diameterMm };
    case 'capsule':
      return { kind, lengthMm: Math.max(lengthMm, diameterMm), diameterMm };
    case 'tube':
      return { kind, lengthMm, outerDiameterMm: diameterMm, innerDiameterMm: diameterMm * 0.8 };
    case 'frustum':
      return { kind, lengthMm, frontDiameterMm: diameterMm, rearDiameterMm: diameterMm };
    case 'sphere':
      return { kind, diameterMm: (lengthMm + widthMm + heightMm) / 3 };
  }
}
