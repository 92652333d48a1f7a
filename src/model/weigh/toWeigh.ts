import { cgPerG } from '../../engine/balance/uncertainty';
import { massSum } from '../../engine/mass/massProperties';
import type { Balance } from '../balance/balance';
import { measuredThings } from '../balance/measurements';
import { itemById, updatePart, updateTank } from '../document/edit';
import type { Aircraft } from '../document/types';

/** Something for the kitchen scale: a part, or a tank with nothing in it. */
export interface ToWeigh {
  readonly id: string;
  readonly name: string;
  readonly massG: number;
  readonly plusMinusG: number;
  /** What its ± does to the station of the CG, mm. */
  readonly effectMm: number;
  /** The day that it was weighed; null when nobody says. */
  readonly weighedOn: string | null;
}

/** Every part and tank aboard, the largest effect of its ± on the CG first. */
export function toWeigh(aircraft: Aircraft, { bodies }: Balance): readonly ToWeigh[] {
  const { massG: totalG, cgMm } = massSum(bodies.map(({ mass }) => mass));
  if (!cgMm) return [];
  return measuredThings(aircraft, bodies)
    .flatMap(({ id, name, mass, plusMinus }): readonly ToWeigh[] => {
      const item = itemById(aircraft, id);
      if (!item || !mass.cgMm) return [];
      const effectMm = Math.abs(cgPerG(mass.cgMm, totalG, cgMm)[0] * plusMinus.g);
      const weighedOn = item.weighedOn ?? null;
      return [{ id, name, massG: mass.massG, plusMinusG: plusMinus.g, effectMm, weighedOn }];
    })
    .sort((a, b) => b.effectMm - a.effectMm);
}

/** Enters a reading of the kitchen scale: mass, ±, day and source. */
export function enterWeighed(
  aircraft: Aircraft,
  id: string,
  {
    massG,
    plusMinusG,
    weighedOn,
  }: { readonly massG: number; readonly plusMinusG: number; readonly weighedOn: string },
): Aircraft {
  return aircraft.tanks.some((tank) => tank.id === id)
    ? updateTank(aircraft, id, { emptyMassG: massG, plusMinusG, weighedOn, massFrom: 'weighed' })
    : updatePart(aircraft, id, { massG, plusMinusG, weighedOn, massFrom: 'weighed' });
}
