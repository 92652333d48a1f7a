import { densityAtTemperature } from '../../engine/liquid/fuelDensity';
import type { Tank } from '../../engine/liquid/types';
import type { Shape } from '../../engine/mass/shapes';
import { volumeProperties } from '../../engine/mass/volumeProperties';
import { lastPerObject } from '../../engine/memory/memory';
import type { Aircraft, Fuel, TankItem } from '../document/types';
import { poseOf } from './poses';

/**
 * The tanks as the liquid engine takes them; an unchanged tank gives the same object again.
 * `mirrored` mirrors the tank's shape in its own frame (y → −y), before it is posed.
 */
export function engineTanks({ tanks, fuel }: Pick<Aircraft, 'tanks' | 'fuel'>): readonly Tank[] {
  return tanks.map((item) => engineTank(item, fuel));
}

/** One tank as the liquid engine takes it; without a fuel its contents weigh nothing. */
export const engineTank = lastPerObject(
  (item: TankItem, fuel: Fuel | null): Tank => ({
    id: item.id,
    name: item.name,
    shape: item.shape,
    pose: poseOf(item),
    mirrored: item.mirrored ?? false,
    densityGPerMl: fuel ? fuelDensity(fuel) : 0,
    startMl: item.startMl ?? shapeVolumeMl(item.shape),
    unusableMl: item.unusableMl,
    feeds: item.feeds,
    rank: item.rank,
    share: fuel?.share ?? 'volume',
  }),
);

/**
 * Density of the fuel in the tanks, g/ml: as weighed, or of kerosene with a temperature worked out from the
 * density at 15 °C. Throws a RangeError outside the range of the published correction.
 */
export const fuelDensity = ({ densityGPerMl, temperatureC }: Fuel): number =>
  temperatureC === undefined ? densityGPerMl : densityAtTemperature(densityGPerMl, temperatureC);

/** What the inside of a shape holds, ml. */
export const shapeVolumeMl = (shape: Shape): number => volumeProperties(shape).volumeMm3 / 1000;
