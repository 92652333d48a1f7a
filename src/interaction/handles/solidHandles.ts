import { directionToAircraft, pointToAircraft } from '../../engine/geometry/rotation';
import type { Vec3 } from '../../engine/geometry/types';
import { poseOf } from '../../model/airframe/poses';
import { leastSizeMm, most } from '../../model/document/schema/limits';
import type { Block, TankItem } from '../../model/document/types';
import type { Handle, Shaped } from './handle';
import { sizeHandle } from './pointHandles';

type Solid = TankItem | Block;
type Loft = Extract<Solid['shape'], { kind: 'loft' }>;
type Section = Loft['sections'][number];

/** A tank or block: by its sections where it has them, else by the sizes of its shape. */
export const solidHandles = (thing: Solid): Handle[] =>
  thing.shape.kind === 'loft' ? loftHandles(thing, thing.shape) : plainHandles(thing);

/** The sizes of a plain solid that a hand can change, and the way of its own frame in which each is measured. */
const SIZES: Readonly<Record<string, { readonly label: string; readonly along: Vec3 }>> = {
  lengthMm: { label: 'Length', along: [1, 0, 0] },
  widthMm: { label: 'Width', along: [0, 1, 0] },
  heightMm: { label: 'Height', along: [0, 0, 1] },
  diameterMm: { label: 'Diameter', along: [0, 0, 1] },
};

/** A plain shape, its middle staying where it is. */
function plainHandles(thing: Solid): Handle[] {
  const pose = poseOf(thing);
  return Object.entries(thing.shape).flatMap(([key, sizeMm]) => {
    const size = SIZES[key];
    if (!size || typeof sizeMm !== 'number') return [];
    const handle = sizeHandle({
      id: key,
      label: size.label,
      place: 0,
      middleMm: thing.positionMm,
      axis: directionToAircraft(pose, size.along),
      sizeMm,
      set: (value) => ({ ...thing, shape: { ...thing.shape, [key]: value } }) as Shaped,
    });
    return [{ ...handle, main: true }];
  });
}

/** Neighbouring sections are kept so far apart by hand, mm. */
const APART_MM = 1;

function loftHandles(thing: Solid, shape: Loft): Handle[] {
  return shape.sections.flatMap((section, at) => sectionHandles(thing, shape, section, at));
}

function sectionHandles(thing: Solid, shape: Loft, section: Section, at: number): Handle[] {
  const pose = poseOf(thing);
  const { xMm, widthMm, heightMm, centreYMm, centreZMm } = section;
  const y = 'mirrored' in thing && thing.mirrored ? -centreYMm : centreYMm;
  const name = `section ${at + 1}`;
  const set = (change: Partial<Section>): Shaped => ({
    ...thing,
    shape: { ...shape, sections: shape.sections.with(at, { ...section, ...change }) },
  });
  const middleMm = pointToAircraft(pose, [xMm, y, centreZMm]);
  return [
    {
      id: `${at} along`,
      label: `Along, ${name}`,
      atMm: middleMm,
      axis: directionToAircraft(pose, [1, 0, 0]),
      lean: 0,
      quantity: 'length',
      value: xMm,
      least: (shape.sections[at - 1]?.xMm ?? -most.lengthMm - APART_MM) + APART_MM,
      most: (shape.sections[at + 1]?.xMm ?? most.lengthMm + APART_MM) - APART_MM,
      place: at,
      main: true,
      after: (along) => xMm + along,
      set: (value) => set({ xMm: value }),
    },
    sizeHandle({
      id: `${at} width`,
      label: `Width, ${name}`,
      place: at,
      middleMm,
      axis: directionToAircraft(pose, [0, 1, 0]),
      sizeMm: Math.max(leastSizeMm, widthMm),
      set: (value) => set({ widthMm: value }),
    }),
    sizeHandle({
      id: `${at} height`,
      label: `Height, ${name}`,
      place: at,
      middleMm,
      axis: directionToAircraft(pose, [0, 0, 1]),
      sizeMm: Math.max(leastSizeMm, heightMm),
      set: (value) => set({ heightMm: value }),
    }),
  ];
}
