import type { ReferencePoint } from '../model/document/types';
import { formatLength, formatMass, type UnitSystem } from '../model/units';
import type { Say } from '../model/words/verdict';

/** Figures in the person's units, stations from their reference point (null: the datum). */
export function sayIn(system: UnitSystem, from: ReferencePoint | null): Say {
  return {
    units: system,
    fromMm: from?.positionMm[0] ?? 0,
    length: (mm) => formatLength(mm, system, { fine: true }),
    station: (mm) => formatLength(mm - (from?.positionMm[0] ?? 0), system),
    mass: (g) => formatMass(g, system),
  };
}
