import type { Vec3 } from '../../engine/geometry/types';
import { movedStructure } from '../../model/document/edit';
import { leastSizeMm, most } from '../../model/document/schema/limits';
import type { Fuselage } from '../../model/document/types';
import type { Handle } from './handle';

const AFT: Vec3 = [1, 0, 0];
const RIGHT: Vec3 = [0, 1, 0];
const UP: Vec3 = [0, 0, 1];
/** Neighbouring sections are kept so far apart by hand, mm. */
const APART_MM = 1;

type Section = Fuselage['sections'][number];

/** A hull by its sections: where each stands, how wide and high it is, how high its middle lies. */
export function hullHandles(hull: Fuselage, catches: readonly number[]): Handle[] {
  return hull.mesh
    ? meshHullHandles(hull, catches)
    : hull.sections.flatMap((_, i) => sectionHandles(hull, i, catches));
}

function sectionHandles(hull: Fuselage, at: number, catches: readonly number[]): Handle[] {
  const section = hull.sections[at];
  if (!section) return [];
  const { stationMm, widthMm, heightMm, waterlineMm } = section;
  const y = hull.buttlineMm;
  const name = `section ${at + 1}`;
  const set = (change: (value: number) => Partial<Section>) => (value: number) => ({
    ...hull,
    sections: hull.sections.with(at, { ...section, ...change(value) }),
  });
  const shared = { quantity: 'length', place: at } as const;
  return [
    {
      ...shared,
      id: `${at} station`,
      label: `Station, ${name}`,
      atMm: [stationMm, y, waterlineMm],
      axis: AFT,
      lean: 0,
      value: stationMm,
      least: (hull.sections[at - 1]?.stationMm ?? -most.lengthMm - APART_MM) + APART_MM,
      most: (hull.sections[at + 1]?.stationMm ?? most.lengthMm + APART_MM) - APART_MM,
      main: true,
      catches,
      after: (along) => stationMm + along,
      set: set((value) => ({ stationMm: value })),
    },
    {
      ...shared,
      id: `${at} width`,
      label: `Width, ${name}`,
      atMm: [stationMm, y + widthMm / 2, waterlineMm],
      axis: RIGHT,
      value: widthMm,
      least: leastSizeMm,
      most: most.lengthMm,
      main: false,
      after: (along) => widthMm + 2 * along,
      set: set((value) => ({ widthMm: value })),
    },
    {
      ...shared,
      id: `${at} height`,
      label: `Height, ${name}`,
      atMm: [stationMm, y, waterlineMm + heightMm / 2],
      axis: UP,
      value: heightMm,
      least: leastSizeMm,
      most: most.lengthMm,
      main: false,
      after: (along) => heightMm + 2 * along,
      set: set((value) => ({ heightMm: value })),
    },
    {
      ...shared,
      id: `${at} waterline`,
      label: `Waterline, ${name}`,
      atMm: [stationMm, y, waterlineMm - heightMm / 2],
      axis: UP,
      lean: -1,
      value: waterlineMm,
      least: -most.lengthMm,
      most: most.lengthMm,
      main: false,
      after: (along) => waterlineMm + along,
      set: set((value) => ({ waterlineMm: value })),
    },
  ];
}

/** A hull with a surface of its own is moved whole. */
function meshHullHandles(hull: Fuselage, catches: readonly number[]): Handle[] {
  const first = hull.sections[0];
  const last = hull.sections.at(-1);
  if (!hull.mesh || !first || !last) return [];
  const { waterlineMm } = hull.mesh;
  const noseMm = first.stationMm;
  const shared = {
    quantity: 'length',
    place: 0,
    main: true,
    least: -most.lengthMm,
    most: most.lengthMm,
  } as const;
  return [
    {
      ...shared,
      id: 'nose',
      label: 'Nose',
      atMm: [noseMm, hull.buttlineMm, first.waterlineMm],
      axis: AFT,
      lean: -1,
      value: noseMm,
      catches,
      after: (along) => noseMm + along,
      set: (value) => movedStructure(hull, [value - noseMm, 0, 0]),
    },
    {
      ...shared,
      id: 'waterline',
      label: 'Waterline',
      atMm: [(noseMm + last.stationMm) / 2, hull.buttlineMm, waterlineMm],
      axis: UP,
      value: waterlineMm,
      after: (along) => waterlineMm + along,
      set: (value) => movedStructure(hull, [0, 0, value - waterlineMm]),
    },
  ];
}
