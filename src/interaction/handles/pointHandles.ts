import type { Vec3 } from '../../engine/geometry/types';
import { normalise, sub } from '../../engine/geometry/vec3';
import { leastSizeMm, most } from '../../model/document/schema/limits';
import type { Boom, Leg } from '../../model/document/types';
import type { Handle, Shaped } from './handle';

const AXES = [
  { axis: [1, 0, 0], word: 'Station' },
  { axis: [0, 1, 0], word: 'Buttline' },
  { axis: [0, 0, 1], word: 'Waterline' },
] as const;

interface PointAsk {
  readonly id: string;
  readonly of: string;
  readonly place: number;
  readonly atMm: Vec3;
  /** Where the knob of its station stands: before the point or behind it. */
  readonly lean: 1 | -1;
  readonly catches: readonly number[];
  readonly set: (at: Vec3) => Shaped;
}

/** A point by its station, buttline and waterline; by its station it is always seen. */
function pointHandles({ id, of, place, atMm, lean, catches, set }: PointAsk): Handle[] {
  return AXES.map(({ axis, word }, k): Handle => {
    const value = atMm[k as 0 | 1 | 2];
    return {
      id: `${id} ${word.toLowerCase()}`,
      label: `${word} of ${of}`,
      atMm,
      axis,
      quantity: 'length',
      value,
      least: -most.lengthMm,
      most: most.lengthMm,
      place,
      main: k === 0,
      ...(k === 0 && { catches, lean }),
      after: (along) => value + along,
      set: (figure) => set(atMm.map((mm, i) => (i === k ? figure : mm)) as unknown as Vec3),
    };
  });
}

interface SizeAsk {
  readonly id: string;
  readonly label: string;
  readonly place: number;
  /** The middle that the size is about, the way that it is measured, and the size. */
  readonly middleMm: Vec3;
  readonly axis: Vec3;
  readonly sizeMm: number;
  readonly set: (sizeMm: number) => Shaped;
}

/** A size about a middle that stays: its handle stands half of it away. */
export function sizeHandle({ id, label, place, middleMm, axis, sizeMm, set }: SizeAsk): Handle {
  return {
    id,
    label,
    atMm: middleMm.map((mm, k) => mm + (axis[k as 0 | 1 | 2] * sizeMm) / 2) as unknown as Vec3,
    axis,
    quantity: 'length',
    value: sizeMm,
    least: leastSizeMm,
    most: most.lengthMm,
    place,
    main: false,
    after: (along) => sizeMm + 2 * along,
    set,
  };
}

/** A direction across another, as upright as can be. */
function across(along: Vec3): Vec3 {
  const [x, , z] = along;
  return normalise([-z, 0, x]) ?? [0, 0, 1];
}

/** A boom by both ends, and its thickness there. */
export function boomHandles(boom: Boom, catches: readonly number[]): Handle[] {
  const side = across(sub(boom.rearMm, boom.frontMm));
  return [
    ...pointHandles({
      id: 'front',
      of: 'the front end',
      place: 0,
      atMm: boom.frontMm,
      lean: -1,
      catches,
      set: (frontMm) => ({ ...boom, frontMm }),
    }),
    sizeHandle({
      id: 'front diameter',
      label: 'Front diameter',
      place: 0,
      middleMm: boom.frontMm,
      axis: side,
      sizeMm: boom.frontDiameterMm,
      set: (frontDiameterMm) => ({ ...boom, frontDiameterMm }),
    }),
    ...pointHandles({
      id: 'rear',
      of: 'the rear end',
      place: 1,
      atMm: boom.rearMm,
      lean: 1,
      catches,
      set: (rearMm) => ({ ...boom, rearMm }),
    }),
    sizeHandle({
      id: 'rear diameter',
      label: 'Rear diameter',
      place: 1,
      middleMm: boom.rearMm,
      axis: side,
      sizeMm: boom.rearDiameterMm,
      set: (rearDiameterMm) => ({ ...boom, rearDiameterMm }),
    }),
  ];
}

/** A leg by its top, its axle and its wheel. */
export function legHandles(leg: Leg, catches: readonly number[]): Handle[] {
  return [
    ...pointHandles({
      id: 'axle',
      of: 'the axle',
      place: 0,
      atMm: leg.axleMm,
      lean: 1,
      catches,
      set: (axleMm) => ({ ...leg, axleMm }),
    }),
    sizeHandle({
      id: 'wheel',
      label: 'Wheel diameter',
      place: 0,
      middleMm: leg.axleMm,
      axis: [-1, 0, 0],
      sizeMm: leg.wheelDiameterMm,
      set: (wheelDiameterMm) => ({ ...leg, wheelDiameterMm }),
    }),
    ...pointHandles({
      id: 'top',
      of: 'the top',
      place: 1,
      atMm: leg.topMm,
      lean: -1,
      catches,
      set: (topMm) => ({ ...leg, topMm }),
    }),
  ];
}
