import type { Vec3 } from '../../engine/geometry/types';
import { lastOnly } from '../../engine/memory/memory';
import type { Balance } from '../balance/balance';
import type { Aircraft } from '../document/types';
import { bandToKeep } from '../judgement/bandToKeep';
import { itemZone } from '../place/itemZone';
import { type Numbered, numbered } from './numbered';

/** How far a pack may move along the aircraft before limits or margin are left; negative: it must move the other way by so much. */
export interface PackShift extends Pick<Numbered, 'number' | 'id' | 'name'> {
  readonly massG: number;
  /** Null where no station keeps them, everything else where it is. */
  readonly allowed: { readonly forwardMm: number; readonly aftMm: number } | null;
}

/** More packs than this are not gone through. */
export const MOST_PACKS = 24;

/** Everything of the role “energy”, everything else where it is; empty without a band. */
export const packShifts = lastOnly((aircraft: Aircraft, shown: Balance, down: Vec3): readonly PackShift[] => {
  const band = bandToKeep(shown, aircraft);
  if (!band) return [];
  return packsOf(aircraft)
    .slice(0, MOST_PACKS)
    .map(({ number, id, name, item, massG }) => {
      const stretch = itemZone(aircraft, id, down, band)?.station.allowed ?? null;
      const [x] = item.positionMm;
      return {
        number,
        id,
        name,
        massG,
        allowed: stretch && { forwardMm: x - stretch.fromMm, aftMm: stretch.toMm - x },
      };
    });
});

export const packsOf = (aircraft: Aircraft): readonly Numbered[] =>
  numbered(aircraft).filter(({ item }) => 'role' in item && item.role === 'energy');
