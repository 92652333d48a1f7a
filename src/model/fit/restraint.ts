import { castAlong } from '../../engine/fit/castAlong';
import { volumeProperties } from '../../engine/mass/volumeProperties';
import { itemSolid, standing } from '../airframe/solids';
import { fuelDensity } from '../airframe/tanks';
import { type Item, itemById } from '../document/edit';
import type { Aircraft, LoadFactors } from '../document/types';

/** Standard gravity, m/s² (ISO 80000-3; 3rd CGPM, 1901). */
const standardGravity = 9.80665;

/** Multiples of g that fixings are held to when the file says nothing. Common practice, no source. */
export const defaultLoadFactors: LoadFactors = { ahead: 15, up: 6, side: 6 };

export interface Force {
  readonly newtons: number;
  readonly kgf: number;
}

/** The force that a fixing must hold at a load factor (a multiple of g). */
export const restraint = (massG: number, loadFactor: number): Force => ({
  newtons: (massG / 1000) * loadFactor * standardGravity,
  kgf: (massG / 1000) * loadFactor,
});

/** What an item's fixing must hold. */
export interface ItemForces {
  /** The mass to be held, g: of a tank, with what it starts with. */
  readonly massG: number;
  readonly loadFactors: LoadFactors;
  /** True when the load factors are the defaults: common practice, no source. */
  readonly commonPractice: boolean;
  readonly ahead: Force;
  readonly up: Force;
  readonly side: Force;
}

export interface ItemRestraint extends ItemForces {
  /** The first thing it runs into when it breaks loose in a sudden stop, and how far ahead, mm; null for none. */
  readonly strikes: { readonly id: string; readonly name: string; readonly afterMm: number } | null;
}

/** What holds an item must bear, and what lies ahead of it. Null for an unknown id. */
export function itemRestraint(aircraft: Aircraft, itemId: string): ItemRestraint | null {
  const item = itemById(aircraft, itemId);
  return item ? { ...itemForces(aircraft, item), strikes: firstAhead(aircraft, item) } : null;
}

/** What holds an item must bear. */
export function itemForces(aircraft: Aircraft, item: Item): ItemForces {
  const loadFactors = aircraft.loadFactors ?? defaultLoadFactors;
  const massG = heldMassG(aircraft, item);
  return {
    massG,
    loadFactors,
    commonPractice: aircraft.loadFactors === undefined,
    ahead: restraint(massG, loadFactors.ahead),
    up: restraint(massG, loadFactors.up),
    side: restraint(massG, loadFactors.side),
  };
}

function heldMassG({ fuel }: Aircraft, item: Item): number {
  if (!('emptyMassG' in item)) return item.massG;
  const startMl = item.startMl ?? volumeProperties(item.shape).volumeMm3 / 1000;
  return item.emptyMassG + startMl * (fuel ? fuelDensity(fuel) : 0);
}

/** The first part, tank or structure that an item meets going straight ahead (−x). */
function firstAhead(aircraft: Aircraft, item: Item): ItemRestraint['strikes'] {
  const solid = itemSolid(item);
  let first: ItemRestraint['strikes'] = null;
  for (const other of standing(aircraft)) {
    if (other.solid === solid || other.solid.minMm[0] >= solid.maxMm[0]) continue;
    if ([1, 2].some((axis) => apartAcross(solid, other.solid, axis as 1 | 2))) continue;
    const afterMm = castAlong(solid, [-1, 0, 0], other.solid);
    if (afterMm !== null && (!first || afterMm < first.afterMm))
      first = { id: other.id, name: other.name, afterMm };
  }
  return first;
}

type Boxed = ReturnType<typeof itemSolid>;

const apartAcross = (a: Boxed, b: Boxed, axis: 1 | 2): boolean =>
  a.minMm[axis] >= b.maxMm[axis] || b.minMm[axis] >= a.maxMm[axis];
