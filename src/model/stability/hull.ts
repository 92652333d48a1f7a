import { rootCarry } from '../../engine/wing/bodyCarry';
import type { FuselageStation } from '../../engine/wing/fuselage';
import type { Aircraft, Fuselage } from '../document/types';
import { liftingSurface } from './liftingSurfaces';

/** The main hull and how many there are besides; the hull null without one. */
export interface Hulls {
  readonly main: readonly FuselageStation[] | null;
  readonly others: number;
}

/** The hull on the centre line that is largest seen from above, nose to tail. */
export function hullsOf({ structure }: Pick<Aircraft, 'structure'>): Hulls {
  const hulls = structure.filter((element) => element.kind === 'fuselage');
  let main: Fuselage | null = null;
  let mainAreaMm2 = 0;
  for (const hull of hulls) {
    if (hull.sides !== 'centre') continue;
    const areaMm2 = areaFromAbove(hull);
    if (areaMm2 > mainAreaMm2) [main, mainAreaMm2] = [hull, areaMm2];
  }
  const sections = main?.sections.map(({ stationMm, widthMm, heightMm, waterlineMm }) => ({
    stationMm,
    widthMm,
    heightMm,
    waterlineMm,
  }));
  return { main: sections ?? null, others: hulls.length - (main ? 1 : 0) };
}

function areaFromAbove({ sections }: Fuselage): number {
  return sections.slice(1).reduce((sum, rear, index) => {
    const front = sections[index] ?? rear;
    return sum + ((rear.stationMm - front.stationMm) * (rear.widthMm + front.widthMm)) / 2;
  }, 0);
}

/** How far each flying surface's root is carried to the middle, 0 … 1, by id: as said on it, else by the hull. */
export function rootCarries(structure: Aircraft['structure']): Readonly<Record<string, number>> {
  const { main } = hullsOf({ structure });
  return Object.fromEntries(
    structure.flatMap((piece) =>
      piece.kind === 'surface'
        ? [[piece.id, rootCarry(liftingSurface(piece), main ?? [], piece.joinsBody ?? 'byGeometry')]]
        : [],
    ),
  );
}
