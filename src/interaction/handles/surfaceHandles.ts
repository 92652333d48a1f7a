import { cosDeg, sinDeg } from '../../engine/geometry/angle';
import { directionToAircraft, pointToAircraft } from '../../engine/geometry/rotation';
import type { Vec3 } from '../../engine/geometry/types';
import { surfacePose } from '../../model/airframe/poses';
import { most } from '../../model/document/schema/limits';
import type { Surface } from '../../model/document/types';
import { mostSweepMm } from '../wingTip';
import type { Handle } from './handle';

type Panel = Surface['panels'][number];

/** What a hand can make of a panel: no span or chord is smaller, mm; a panel stands no steeper, degrees. */
const LEAST_MM = 5;
const STEEPEST_DEG = 80;

const tangent = (deg: number) => Math.tan((deg * Math.PI) / 180);

/** A wing, tail or fin: its root, and the tip of each panel by span, sweep, chord and dihedral. */
export function surfaceHandles(surface: Surface, catches: readonly number[]): Handle[] {
  const handles = rootHandles(surface, catches);
  let at: Vec3 = [0, 0, 0];
  for (const [index, panel] of surface.panels.entries()) {
    const tip: Vec3 = [
      at[0] + panel.sweepMm,
      at[1] + panel.spanMm,
      at[2] + panel.spanMm * tangent(panel.dihedralDeg),
    ];
    handles.push(...tipHandles(surface, index, panel, tip));
    at = tip;
  }
  return handles;
}

const LENGTH = { quantity: 'length' } as const;

function rootHandles(surface: Surface, catches: readonly number[]): Handle[] {
  const [x, y, z] = surface.rootMm;
  const pose = surfacePose(surface);
  const whole = { ...LENGTH, place: 0, least: -most.lengthMm, most: most.lengthMm } as const;
  return [
    {
      ...whole,
      id: 'root station',
      label: 'Station of the root',
      atMm: surface.rootMm,
      axis: [1, 0, 0],
      lean: -1,
      value: x,
      main: true,
      catches,
      after: (along) => x + along,
      set: (value) => ({ ...surface, rootMm: [value, y, z] }),
    },
    {
      ...whole,
      id: 'root waterline',
      label: 'Waterline of the root',
      atMm: pointToAircraft(pose, [surface.rootChordMm / 2, 0, 0]),
      axis: [0, 0, 1],
      value: z,
      main: false,
      after: (along) => z + along,
      set: (value) => ({ ...surface, rootMm: [x, y, value] }),
    },
    {
      ...whole,
      id: 'root chord',
      label: 'Root chord',
      atMm: pointToAircraft(pose, [surface.rootChordMm, 0, 0]),
      axis: directionToAircraft(pose, [1, 0, 0]),
      value: surface.rootChordMm,
      least: LEAST_MM,
      main: false,
      after: (along) => surface.rootChordMm + along,
      set: (value) => ({ ...surface, rootChordMm: value }),
    },
  ];
}

function tipHandles(surface: Surface, index: number, panel: Panel, tip: Vec3): Handle[] {
  const { spanMm, sweepMm, tipChordMm, dihedralDeg } = panel;
  const pose = surfacePose(surface);
  const of = surface.panels.length > 1 ? `, panel ${index + 1}` : '';
  const on = (share: number) => pointToAircraft(pose, [tip[0] + share * tipChordMm, tip[1], tip[2]]);
  const way = (direction: Vec3) => directionToAircraft(pose, direction);
  const set = (change: (value: number) => Partial<Panel>) => (value: number) => ({
    ...surface,
    panels: surface.panels.with(index, { ...panel, ...change(value) }),
  });
  const shared = { ...LENGTH, place: index + 1 } as const;
  return [
    {
      ...shared,
      id: `${index} span`,
      label: `Span${of}`,
      atMm: on(0.5),
      // Along the panel as it rises, so that the knob stays under the hand.
      axis: way([0, cosDeg(dihedralDeg), sinDeg(dihedralDeg)]),
      value: spanMm,
      least: LEAST_MM,
      most: most.lengthMm,
      main: true,
      after: (along) => spanMm + along * cosDeg(dihedralDeg),
      set: set((value) => ({ spanMm: value })),
    },
    {
      ...shared,
      id: `${index} sweep`,
      label: `Sweep${of}`,
      atMm: on(0),
      axis: way([1, 0, 0]),
      lean: -1,
      value: sweepMm,
      least: -mostSweepMm(spanMm),
      most: mostSweepMm(spanMm),
      main: false,
      after: (along) => sweepMm + along,
      set: set((value) => ({ sweepMm: value })),
    },
    {
      ...shared,
      id: `${index} chord`,
      label: `Tip chord${of}`,
      atMm: on(1),
      axis: way([1, 0, 0]),
      value: tipChordMm,
      least: LEAST_MM,
      most: most.lengthMm,
      main: false,
      after: (along) => tipChordMm + along,
      set: set((value) => ({ tipChordMm: value })),
    },
    {
      ...shared,
      quantity: 'angle',
      id: `${index} dihedral`,
      label: `Dihedral${of}`,
      atMm: on(0.75),
      axis: way([0, 0, 1]),
      value: dihedralDeg,
      least: -STEEPEST_DEG,
      most: STEEPEST_DEG,
      main: false,
      after: (along) => (Math.atan2(spanMm * tangent(dihedralDeg) + along, spanMm) * 180) / Math.PI,
      set: set((value) => ({ dihedralDeg: value })),
    },
  ];
}
