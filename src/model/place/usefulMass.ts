import type { Band } from '../../engine/balance/band';
import type { Vec3 } from '../../engine/geometry/types';
import { type MassRange, massRange } from '../../engine/place/massRange';
import type { LoadCase } from '../../engine/place/types';
import { partBody } from '../airframe/bodies';
import type { ShelfPart } from '../airframe/shelf';
import type { Aircraft, Part } from '../document/types';
import { itemZone } from './itemZone';
import { type AircraftCase, aircraftCases } from './loadCases';
import { withStandIn } from './standIn';

/** The masses that a part may have where it is, so that everything keeps its limits. */
export interface UsefulMass {
  readonly part: Part;
  /** All masses that do, g. */
  readonly range: MassRange;
  /** What must be added to it at least, g; negative where it is too heavy, 0 where it is right as it is. */
  readonly changeG: number;
}

/** Roles whose mass does something besides weighing: a larger pack flies longer. */
const USEFUL = new Set<Part['role']>(['energy', 'payload']);

/**
 * Useful mass before lead: the packs and payloads that, heavier or lighter where they are, bring every load state within
 * its limits; the least change first. The CG is taken to stay where the part's is.
 * @param band that is to be kept, mm; see judgement/bandToKeep
 */
export function usefulMass(aircraft: Aircraft, down: Vec3, band: Band | null): UsefulMass[] {
  if (!band) return [];
  const limits = { band, lateralMm: aircraft.lateralToleranceMm > 0 ? aircraft.lateralToleranceMm : null };
  const cases = aircraftCases(aircraft, down);
  return aircraft.parts
    .flatMap((part): UsefulMass[] => {
      const at = partBody(part).mass.cgMm;
      if (!USEFUL.has(part.role) || part.locked || part.twinId !== undefined || !at) return [];
      // Where it is not aboard its mass changes nothing, so those cases must do without.
      const aboard = cases.filter((load) => load.massOf(part.id) > 0);
      const rest = cases.filter((load) => load.massOf(part.id) === 0);
      if (massRange(rest.map(plain), limits, at)?.leastG !== 0 && rest.length > 0) return [];
      const range = massRange(
        aboard.map((each) => less(each, part.massG, at)),
        limits,
        at,
      );
      if (!range) return [];
      const changeG = Math.max(range.leastG - part.massG, 0) || Math.min(range.mostG - part.massG, 0);
      return [{ part, range, changeG }];
    })
    .sort((a, b) => Math.abs(a.changeG) - Math.abs(b.changeG));
}

/** The least and the most that may be carried at a point besides everything aboard, g; null when nothing keeps the limits. */
export function payloadAt(aircraft: Aircraft, down: Vec3, atMm: Vec3, band: Band | null): MassRange | null {
  if (!band) return null;
  const lateralMm = aircraft.lateralToleranceMm > 0 ? aircraft.lateralToleranceMm : null;
  return massRange(aircraftCases(aircraft, down).map(plain), { band, lateralMm }, atMm);
}

/** One thing for another, and what both do where they are. */
export interface Swap {
  readonly aircraft: Aircraft;
  readonly beforeMm: number;
  readonly afterMm: number;
  /** Where the new one would sit best along x, mm; null when no place keeps all limits. */
  readonly bestMm: number | null;
}

/** Puts another part from the shelf in a part's place, and compares the least margins over all load states, mm. */
export function swapPart(
  aircraft: Aircraft,
  partId: string,
  other: ShelfPart,
  { down, band }: { readonly down: Vec3; readonly band: Band | null },
): Swap | null {
  const part = aircraft.parts.find(({ id }) => id === partId);
  const before = part && itemZone(aircraft, partId, down, band);
  if (!part || !before) return null;
  const after = withStandIn(aircraft, part, other);
  const zone = itemZone(after, partId, down, band);
  if (!zone) return null;
  const [x, y] = part.positionMm;
  return {
    aircraft: after,
    beforeMm: before.marginAt(x, y).marginMm,
    afterMm: zone.marginAt(x, y).marginMm,
    bestMm: zone.possible ? zone.station.bestMm : null,
  };
}

const plain = ({ id, name, massG, momentGmm }: AircraftCase): LoadCase => ({ id, name, massG, momentGmm });

const less = ({ id, name, massG, momentGmm: [x, y, z] }: AircraftCase, ownG: number, at: Vec3): LoadCase => ({
  id,
  name,
  massG: massG - ownG,
  momentGmm: [x - ownG * at[0], y - ownG * at[1], z - ownG * at[2]],
});
