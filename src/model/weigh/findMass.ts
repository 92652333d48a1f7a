import { COVERAGE_FACTOR, standardUncertainty } from '../../engine/balance/uncertainty';
import type { Balance } from '../balance/balance';
import { cgErrorOf } from '../balance/certainty';
import { measuredThings } from '../balance/measurements';
import { itemById, updatePart, updateTank } from '../document/edit';
import { shownText } from '../document/names';
import { twinOf } from '../document/twins';
import type { Aircraft } from '../document/types';

/** A mass that was found from the whole. */
export interface FoundMass {
  readonly massG: number;
  /** Two standard uncertainties, g. */
  readonly plusMinusG: number;
}

/** The whole aircraft on a scale, g, and what the scale may be off by: two standard uncertainties. */
export interface WholeWeighed {
  readonly massG: number;
  readonly plusMinusG: number;
}

/**
 * The mass of a part or tank from that of the whole at a loading: the whole less all else aboard, halved for a mirrored
 * pair. Its ± is that of the whole and of all else together. A sentence where it cannot be found.
 */
export function massFromWhole(
  aircraft: Aircraft,
  balance: Balance,
  id: string,
  whole: WholeWeighed,
): FoundMass | string {
  const item = itemById(aircraft, id);
  const name = `“${shownText(item?.name ?? id)}”`;
  const twinId = twinOf(aircraft, id)?.id;
  const wanted = new Set([id, ...(twinId === undefined ? [] : [twinId])]);
  const things = measuredThings(aircraft, balance.bodies);
  const aboard = [...aircraft.parts, ...aircraft.tanks].filter(
    (thing) => wanted.has(thing.id) && itemById(balance.loaded, thing.id),
  ).length;
  if (!item || aboard === 0) return `${name} is not aboard in the load state shown.`;
  const unknown = things.find(({ massFrom, sourceId }) => massFrom === 'unknown' && !wanted.has(sourceId));
  if (unknown) {
    return `The mass of “${shownText(unknown.name)}” is not known either: one weighing of the whole finds one of them.`;
  }
  const ownG = things.reduce((sum, { sourceId, mass }) => (wanted.has(sourceId) ? sum + mass.massG : sum), 0);
  const othersG = balance.massG - ownG;
  const massG = (whole.massG - othersG) / aboard;
  if (!(massG > 0)) {
    return `All else aboard weighs ${Math.round(othersG)} g by the list, so that of ${Math.round(whole.massG)} g nothing is left for ${name}.`;
  }
  const ownSigmaG = Math.hypot(
    ...things.flatMap(({ sourceId, sigmaG }) => (wanted.has(sourceId) ? [sigmaG] : [])),
  );
  const allSigmaG = cgErrorOf(aircraft, balance)?.massSigmaG ?? 0;
  const othersVariance = Math.max(0, allSigmaG ** 2 - ownSigmaG ** 2);
  const sigmaG = Math.sqrt(othersVariance + standardUncertainty(whole.plusMinusG) ** 2) / aboard;
  return { massG: rounded(massG), plusMinusG: Math.ceil(10 * COVERAGE_FACTOR * sigmaG) / 10 };
}

const rounded = (massG: number) => Math.round(massG * 10) / 10;

/** Enters a mass that was worked out from a weighing of the whole: mass, ± and source. */
export function enterFound(aircraft: Aircraft, id: string, { massG, plusMinusG }: FoundMass): Aircraft {
  return aircraft.tanks.some((tank) => tank.id === id)
    ? updateTank(aircraft, id, { emptyMassG: massG, plusMinusG, massFrom: 'measured' })
    : updatePart(aircraft, id, { massG, plusMinusG, massFrom: 'measured' });
}
