import type { Balance } from '../balance/balance';
import { itemById, placeItem } from '../document/edit';
import type { Aircraft } from '../document/types';
import { benchBalance, type LessonBench, withMass } from './bench';
import type { Change, Estimator, PartFor } from './types';

/** What the wanted figure means for the CG: the axis, and where on it, mm from the datum. */
export interface WantedPlace {
  readonly axis: 0 | 1;
  readonly mm: number;
}

/** Null where a margin is wanted and there is no estimate. */
export function wantedPlace(
  { estimate }: Balance,
  { quantity, value }: PartFor['wanted'],
): WantedPlace | null {
  switch (quantity.of) {
    case 'cgStation':
      return { axis: 0, mm: value };
    case 'cgButtline':
      return { axis: 1, mm: value };
    case 'margin':
      return estimate && { axis: 0, mm: estimate.neutralPointMm - (value / 100) * estimate.macMm };
  }
}

/** What the part weighs, or where it stands, as it is: g or mm. Null where it is not aboard. */
export function asItIs({ aircraft }: LessonBench, { itemId, solve }: PartFor): number | null {
  const item = itemById(aircraft, itemId);
  if (!item) return null;
  switch (solve) {
    case 'mass':
      return 'massG' in item ? item.massG : item.emptyMassG;
    case 'station':
      return item.positionMm[0];
    case 'buttline':
      return item.positionMm[1];
  }
}

/** The aircraft with the part so. */
function withFigure(aircraft: Aircraft, { itemId, solve }: PartFor, figure: number): Aircraft {
  const item = itemById(aircraft, itemId);
  if (!item) return aircraft;
  const [x, y, z] = item.positionMm;
  switch (solve) {
    case 'mass':
      return withMass(aircraft, itemId, figure);
    case 'station':
      return placeItem(aircraft, itemId, [figure, y, z]);
    case 'buttline':
      return placeItem(aircraft, itemId, [x, figure, z]);
  }
}

/** The same as a change of the bench. */
export function solvedChange({ itemId, solve }: PartFor, figure: number): Change {
  switch (solve) {
    case 'mass':
      return { do: 'mass', itemId, massG: figure };
    case 'station':
      return { do: 'place', itemId, stationMm: figure };
    case 'buttline':
      return { do: 'place', itemId, buttlineMm: figure };
  }
}

/** Two figures so far apart that the line through what they give is certain, g or mm. */
const APART = 100;

/**
 * What the part must weigh (g) or where it must stand (mm) for the wanted to come about. Mass and moment are straight lines in
 * either, so two balances are enough. Null where no mass of 0 or more, or no place, does it.
 */
export function solvedFigure(bench: LessonBench, asked: PartFor, estimator: Estimator): number | null {
  const { aircraft } = bench;
  if (!itemById(aircraft, asked.itemId)) return null;
  const estimating = asked.wanted.quantity.of === 'margin' ? estimator : undefined;
  const at = (figure: number) =>
    benchBalance({ ...bench, aircraft: withFigure(aircraft, asked, figure) }, estimating);
  const [first, second] = [at(0), at(APART)];
  const place = wantedPlace(second, asked.wanted);
  if (!place) return null;
  const missing = ({ massG, cgMm }: Balance) => (cgMm ? massG * (cgMm[place.axis] - place.mm) : 0);
  const found = (-missing(first) * APART) / (missing(second) - missing(first));
  if (!Number.isFinite(found) || (asked.solve === 'mass' && found < 0)) return null;
  return found;
}
