import type { Vec3 } from '../../engine/geometry/types';
import { freeId } from '../document/ids';
import type { Aircraft, ScaleReading, WeighIn } from '../document/types';

type Reading = WeighIn['reading'];

const NONE: readonly WeighIn[] = [];

/** The log, in the order that it was made. */
export const weighInsOf = ({ weighIns = NONE }: Aircraft): readonly WeighIn[] => weighIns;

export const weighInById = (aircraft: Aircraft, id: string | null): WeighIn | undefined =>
  weighInsOf(aircraft).find((entry) => entry.id === id);

/** The one of the latest day; of one day the one that was entered last. */
export const lastWeighIn = (aircraft: Aircraft): WeighIn | undefined =>
  weighInsOf(aircraft).reduce<WeighIn | undefined>(
    (last, entry) => (last && last.date > entry.date ? last : entry),
    undefined,
  );

export function addWeighIn(
  aircraft: Aircraft,
  entry: Omit<WeighIn, 'id'>,
): { readonly aircraft: Aircraft; readonly id: string } {
  const id = freeId(aircraft, `weighed ${entry.date}`, 'weighed');
  return { aircraft: { ...aircraft, weighIns: [...weighInsOf(aircraft), { ...entry, id }] }, id };
}

export const updateWeighIn = (aircraft: Aircraft, id: string, change: Partial<WeighIn>): Aircraft => ({
  ...aircraft,
  weighIns: weighInsOf(aircraft).map((entry) => (entry.id === id ? { ...entry, ...change } : entry)),
});

export const removeWeighIn = (aircraft: Aircraft, id: string): Aircraft => ({
  ...aircraft,
  weighIns: weighInsOf(aircraft).filter((entry) => entry.id !== id),
});

/** Changes the reading of one that is of that sort. */
export function updateReading<K extends Reading['by']>(
  aircraft: Aircraft,
  id: string,
  by: K,
  change: Partial<Extract<Reading, { readonly by: K }>>,
): Aircraft {
  const entry = weighInById(aircraft, id);
  if (entry?.reading.by !== by) return aircraft;
  return updateWeighIn(aircraft, id, { reading: { ...entry.reading, ...change } as Reading });
}

/** Changes one scale of a weigh-in on scales. */
export function updateScale(
  aircraft: Aircraft,
  id: string,
  at: number,
  change: Partial<ScaleReading>,
): Aircraft {
  const entry = weighInById(aircraft, id);
  if (entry?.reading.by !== 'scales') return aircraft;
  const scales = entry.reading.scales.map((scale, index) => (index === at ? { ...scale, ...change } : scale));
  return updateReading(aircraft, id, 'scales', { scales });
}

export interface Wheel {
  readonly name: string;
  readonly axleMm: Vec3;
}

/** Every wheel of the aircraft as it stands on the ground, legs down, from the nose aft. */
export function wheelsOf({ structure }: Aircraft): readonly Wheel[] {
  return structure
    .flatMap((piece): readonly Wheel[] => {
      if (piece.kind !== 'leg') return [];
      const { name, axleMm, sides } = piece;
      const [x, y, z] = axleMm;
      if (sides !== 'both') return [{ name, axleMm }];
      return [
        { name: `${name}, left`, axleMm: [x, -y, z] },
        { name: `${name}, right`, axleMm },
      ];
    })
    .sort((a, b) => a.axleMm[0] - b.axleMm[0]);
}

/** Kitchen scales and a tape, where nothing else is said. Common practice, no source. */
const USUAL = { resolutionG: 1, tapeMm: 2, pitchPlusMinusDeg: 0.2, standMm: 2, massPlusMinusG: 2 } as const;

/** Scales under every wheel, nothing read yet; two places to be measured where there are no wheels. */
export function freshScales(aircraft: Aircraft): Reading {
  const wheels = wheelsOf(aircraft);
  const supports =
    wheels.length > 1
      ? wheels
      : [
          { name: 'Front support', axleMm: [0, 0, 0] as const },
          { name: 'Rear support', axleMm: [500, 0, 0] as const },
        ];
  return {
    by: 'scales',
    scales: supports.map(({ name, axleMm }) => ({ name, grossG: 0, tareG: 0, supportMm: axleMm })),
    resolutionG: USUAL.resolutionG,
    tapeMm: USUAL.tapeMm,
    pitchDeg: 0,
    pitchPlusMinusDeg: USUAL.pitchPlusMinusDeg,
  };
}

/** A stand with nothing added; the supports start where the CG is thought to be. */
export const freshStand = (stationMm: number): Reading => ({
  by: 'stand',
  supportMm: stationMm,
  plusMinusMm: USUAL.standMm,
  addedG: 0,
  addedAtMm: 0,
  massG: null,
  massPlusMinusG: USUAL.massPlusMinusG,
});
