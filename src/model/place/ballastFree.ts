import { growthMm, halfBeside } from '../../engine/place/ballastRoom';
import { gapAlong } from '../../engine/place/regions';
import type { BallastSpot, KeepApart, Obstacle, PlaceBox } from '../../engine/place/types';
import { itemExtent } from '../airframe/extent';
import type { Aircraft } from '../document/types';

/** Ballast is kept this far from packs and from what gets hot, mm; common practice, no source. */
const FROM_PACKS_MM = 3;
const FROM_HEAT_MM = 15;

/** Whether two boxes share room; touching is none. */
export const boxesMeet = (a: PlaceBox, b: PlaceBox): boolean =>
  ([0, 1, 2] as const).every((axis) => gapAlong(a, b, axis) < 0);

/** Ballast is kept off packs, wherever they go. */
export const ballastRules = (aircraft: Aircraft, spots: readonly BallastSpot[]): KeepApart[] =>
  spots.flatMap(({ id }) =>
    aircraft.parts
      .filter(({ role }) => role === 'energy')
      .map((pack) => ({ id: 'ballast off packs', a: id, b: pack.id, gapMm: FROM_PACKS_MM })),
  );

/** Where no ballast may be: what the file says, and what gets hot. */
export const ballastFreeZones = (aircraft: Aircraft): Obstacle[] => [
  ...(aircraft.ballastFree ?? []).map(
    ({ id, name, positionMm: [x, y, z], lengthMm, widthMm, heightMm }): Obstacle => ({
      id: `free ${id}`,
      name,
      minMm: [x - lengthMm / 2, y - widthMm / 2, z - heightMm / 2],
      maxMm: [x + lengthMm / 2, y + widthMm / 2, z + heightMm / 2],
    }),
  ),
  ...hotZones(aircraft),
];

/** What is said of spots that lie in a zone kept free of ballast. */
export const keptFreeNotes = (spots: readonly BallastSpot[], free: readonly Obstacle[]): string[] =>
  spots.flatMap((spot) => {
    const zone = free.find((each) => halfBeside(spot, each, 0) < growthMm(spot));
    return zone ? [`No ballast at ${spot.name}: it lies in ${zone.name}, where none may be.`] : [];
  });

/** Round everything of an engine that burns something: it gets hot, and lead creeps. */
export function hotZones(aircraft: Aircraft): Obstacle[] {
  if (aircraft.kind !== 'petrol' && aircraft.kind !== 'turbine') return [];
  return aircraft.parts
    .filter(({ role, locked }) => role === 'powerplant' && locked)
    .map((part) => {
      const { minMm, maxMm } = itemExtent(part);
      return {
        id: `heat of ${part.id}`,
        name: `the heat of ${part.name}`,
        minMm: [minMm[0] - FROM_HEAT_MM, minMm[1] - FROM_HEAT_MM, minMm[2] - FROM_HEAT_MM],
        maxMm: [maxMm[0] + FROM_HEAT_MM, maxMm[1] + FROM_HEAT_MM, maxMm[2] + FROM_HEAT_MM],
      };
    });
}
