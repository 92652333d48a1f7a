import { formatLength, formatMass, fromOwnUnit, type UnitSystem } from '../units';

/** How a remedy is spoken: in whose units, and where stations are read from. */
export interface Spoken {
  readonly units: UnitSystem;
  /** The reference point that stations are read from, mm aft of the datum. */
  readonly fromMm: number;
}

/** The steps that figures are spoken in, coarse ones first, mm. */
export const lengthStepsMm = ({ units }: Spoken): readonly [coarse: number, fine: number] =>
  units === 'metric' ? [1, 0.1] : [fromOwnUnit(0.05, 'length', units), fromOwnUnit(0.01, 'length', units)];

/** The step that masses are spoken in, g. */
export const massStepG = ({ units }: Spoken): number =>
  units === 'metric' ? 1 : fromOwnUnit(0.01, 'mass', units);

/** A multiple of a step, never NaN's neighbour: 0.1 × 3 is 0.3. */
export const stepped = (count: number, step: number): number => Number((count * step).toPrecision(12));

const WAYS = [
  ['forward', 'aft'],
  ['left', 'right'],
  ['down', 'up'],
] as const;

/** "24 mm aft"; of a step that is a whole figure in the person's unit, so exactly what is done. */
export function shiftWords(shiftMm: number, axis: 0 | 1 | 2, fine: boolean, { units }: Spoken): string {
  return `${formatLength(Math.abs(shiftMm), units, { fine })} ${WAYS[axis][shiftMm < 0 ? 0 : 1]}`;
}

export const massWords = (massG: number, { units }: Spoken): string => formatMass(massG, units);

/** A station as it is read from the reference point. */
export const stationWords = (stationMm: number, { units, fromMm }: Spoken): string =>
  formatLength(stationMm - fromMm, units);
