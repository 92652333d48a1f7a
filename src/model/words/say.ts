import { stepsDown, stepsUp } from '../../engine/geometry/wholeSteps';
import { formatLength, toOwnUnit, type UnitSystem } from '../units';

/** How figures are put into words: in the person's units, and stations from their reference point. */
export interface Say {
  readonly units: UnitSystem;
  /** The station that readings are taken from, mm aft of the datum. */
  readonly fromMm: number;
  length(mm: number): string;
  station(mm: number): string;
  mass(g: number): string;
}

/** From here on whole millimetres say enough, mm. */
const WHOLE_FROM_MM = 10;

/** The step that a length is shown in, mm. */
const shownStepMm = (mm: number, units: UnitSystem): number =>
  units === 'metric' ? (mm < WHOLE_FROM_MM ? 0.1 : 1) : 0.01 / toOwnUnit(1, 'length', units);

const shown = (mm: number, units: UnitSystem): string =>
  formatLength(mm, units, { fine: mm < WHOLE_FROM_MM });

/** How far something is out, which is never said to be less than it is, nor nothing. Up to rounding errors. */
export function lengthUp(mm: number, { units }: Say): string {
  const step = shownStepMm(mm, units);
  return shown(Math.max(1, stepsUp(mm / step)) * step, units);
}

/** How much room is left, which is never said to be more than it is. */
export function lengthDown(mm: number, { units }: Say): string {
  const step = shownStepMm(mm, units);
  return shown(stepsDown(mm / step) * step, units);
}

/** A station to the tenth of a millimetre, as it is read from the reference point. */
export const fineStation = (stationMm: number, { units, fromMm }: Pick<Say, 'units' | 'fromMm'>): string =>
  formatLength(stationMm - fromMm, units, { fine: true });
