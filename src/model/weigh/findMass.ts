import { COVERAGE_FACTOR, standardUncertainty } from '../../engine/balance/uncertainty';
import type { Balance } from '../balance/balance';
import { cgErrorOf } from '../balance/certainty';
import { measuredThings } from '../balance/measurements';
import { itemById, replaceStructure, structureById, updatePart, updateTank } from '../document/edit';
import { shownText } from '../document/names';
import { twinOf } from '../document/twins';
import type { Aircraft, StructurePiece } from '../document/types';

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
 * The mass of a part, a tank or a piece of structure from that of the whole at a loading: the whole less all else aboard,
 * shared by the two of a mirrored pair. Its ± is that of the whole and of all else together. A sentence where it cannot be
 * found; `say` writes a mass in it.
 */
export function massFromWhole(
  aircraft: Aircraft,
  balance: Balance,
  id: string,
  whole: WholeWeighed,
  say: (massG: number) => string,
): FoundMass | string {
  const piece = structureById(aircraft, id);
  const name = `“${shownText(itemById(aircraft, id)?.name ?? piece?.name ?? id)}”`;
  if (piece && isWeighedAsWhole(aircraft)) {
    return `${name} was weighed with the whole bare airframe, whose mass counts in its place.`;
  }
  const twinId = twinOf(aircraft, id)?.id;
  const wanted = new Set([id, ...(twinId === undefined ? [] : [twinId])]);
  const aboard = aboardOf(balance.loaded, wanted);
  if (aboard === 0) return `${name} is not aboard in the load state shown.`;
  const unknown = unknownBeside(balance.loaded, wanted);
  if (unknown) {
    return `The mass of “${shownText(unknown.name)}” is not known either: one weighing of the whole finds one of them.`;
  }
  const things = measuredThings(aircraft, balance.bodies);
  const wantedThings = things.filter(({ sourceId }) => wanted.has(sourceId));
  const othersG = balance.massG - wantedThings.reduce((sum, { mass }) => sum + mass.massG, 0);
  const massG = rounded((whole.massG - othersG) / aboard);
  if (!(massG > 0)) {
    return `All else aboard weighs ${say(othersG)} by the list, so that of ${say(whole.massG)} nothing is left for ${name}.`;
  }
  const wantedSigmaG = Math.hypot(...wantedThings.map(({ sigmaG }) => sigmaG));
  const allSigmaG = cgErrorOf(aircraft, balance)?.massSigmaG ?? 0;
  const othersVariance = Math.max(0, allSigmaG ** 2 - wantedSigmaG ** 2);
  // The two of a pair are taken to be off by chance, each for itself: so much each, and both come to that of the whole.
  const sigmaG = Math.sqrt((othersVariance + standardUncertainty(whole.plusMinusG) ** 2) / aboard);
  return { massG, plusMinusG: Math.ceil(10 * COVERAGE_FACTOR * sigmaG) / 10 };
}

/** How many things of some ids are aboard: a piece of structure on both sides is two. */
function aboardOf({ parts, tanks, structure }: Aircraft, ids: ReadonlySet<string>): number {
  const pieces = structure.filter((piece) => ids.has(piece.id));
  const items = [...parts, ...tanks].filter((item) => ids.has(item.id));
  return items.length + pieces.reduce((sum, { sides }) => sum + (sides === 'both' ? 2 : 1), 0);
}

/** The first thing aboard beside some whose mass nobody knows, though the list may have it as nothing at all. */
function unknownBeside(aircraft: Aircraft, ids: ReadonlySet<string>) {
  const { parts, tanks, structure, bareAirframe } = aircraft;
  if (isWeighedAsWhole(aircraft) && bareAirframe?.massFrom === 'unknown') return { name: 'Bare airframe' };
  const pieces = isWeighedAsWhole(aircraft) ? [] : structure;
  return [...parts, ...tanks, ...pieces].find(({ id, massFrom }) => massFrom === 'unknown' && !ids.has(id));
}

const isWeighedAsWhole = ({ bareAirframe }: Aircraft) =>
  bareAirframe !== null && bareAirframe.use !== 'compare';

const rounded = (massG: number) => Math.round(massG * 10) / 10;

/** Enters a mass that was worked out from a weighing of the whole: mass, ± and source. */
export function enterFound(aircraft: Aircraft, id: string, { massG, plusMinusG }: FoundMass): Aircraft {
  const found = { plusMinusG, massFrom: 'measured' } as const;
  const piece = structureById(aircraft, id);
  if (piece) return replaceStructure(aircraft, { ...withMass(piece, massG), ...found });
  return aircraft.tanks.some((tank) => tank.id === id)
    ? updateTank(aircraft, id, { emptyMassG: massG, ...found })
    : updatePart(aircraft, id, { massG, ...found });
}

/** A piece of structure that weighs so much, of a mirrored pair each side, g; the mass is spread as it was. */
function withMass(piece: StructurePiece, massG: number): StructurePiece {
  if (piece.kind === 'leg') {
    const { strutMassG, wheelMassG } = piece;
    const wheelShare = strutMassG + wheelMassG > 0 ? wheelMassG / (strutMassG + wheelMassG) : 0;
    const wheelG = rounded(massG * wheelShare);
    return { ...piece, strutMassG: rounded(massG - wheelG), wheelMassG: wheelG };
  }
  const { mass } = piece;
  const spread = mass.by === 'weighed' ? mass.spread : mass.by === 'skin' ? 'skin' : 'solid';
  return { ...piece, mass: { by: 'weighed', massG, ...(spread && { spread }) } };
}
