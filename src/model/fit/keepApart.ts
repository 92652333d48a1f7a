import { shapeDistance } from '../../engine/fit/shapeDistance';
import type { Vec3 } from '../../engine/geometry/types';
import { perAircraft } from '../airframe/perAircraft';
import { itemSolid } from '../airframe/solids';
import type { Item } from '../document/edit';
import { shownText } from '../document/names';
import type { Aircraft, KeepApartRule } from '../document/types';
import { clearances } from './clearances';

/** The usual rules, for a file that states none. Common practice, no source: check what your radio's maker says. */
export const defaultKeepApart: readonly KeepApartRule[] = [
  {
    between: 'radio',
    and: 'powerplant',
    atLeastMm: 60,
    why: 'ignition, motor controllers and pumps disturb the receiver and its aerial',
    commonPractice: true,
  },
  {
    between: 'energy',
    and: 'powerplant',
    atLeastMm: 25,
    why: 'packs must not be warmed by the engine, its controller or its exhaust',
    commonPractice: true,
  },
];

/** Two things nearer to each other than a rule allows. */
export interface KeepApartFault {
  readonly rule: KeepApartRule;
  readonly aId: string;
  readonly bId: string;
  readonly distanceMm: number;
  readonly shortByMm: number;
  /** The nearest points, aircraft frame, mm. */
  readonly pointsMm: readonly [Vec3, Vec3];
  readonly sentence: string;
}

export const keepApartRules = (aircraft: Aircraft): readonly KeepApartRule[] =>
  aircraft.keepApart ?? defaultKeepApart;

/** Every pair nearer than its rules allow, the worst first. Distances are between surfaces. */
export function keepApartFaults(aircraft: Aircraft): KeepApartFault[] {
  const items = [...aircraft.parts, ...aircraft.tanks];
  const faults: KeepApartFault[] = [];
  for (const rule of keepApartRules(aircraft)) {
    const seen = new Set<string>();
    for (const a of items.filter((item) => meant(aircraft, rule.between, item))) {
      for (const b of items.filter((item) => meant(aircraft, rule.and, item))) {
        const key = [a.id, b.id].sort().join(' ');
        if (a === b || seen.has(key)) continue;
        seen.add(key);
        const fault = faultOf(rule, a, b);
        if (fault) faults.push(fault);
      }
    }
  }
  return faults.sort((one, other) => other.shortByMm - one.shortByMm);
}

function faultOf(rule: KeepApartRule, a: Item, b: Item): KeepApartFault | null {
  const { distanceMm, pointsMm } = shapeDistance(itemSolid(a), itemSolid(b));
  const shortByMm = rule.atLeastMm - distanceMm;
  if (shortByMm <= 0) return null;
  const sentence = `${shownText(a.name)} is ${distanceMm.toFixed(0)} mm from ${shownText(b.name)}, at least ${rule.atLeastMm} mm wanted: ${shownText(rule.why)}.`;
  return { rule, aId: a.id, bId: b.id, distanceMm, shortByMm, pointsMm, sentence };
}

/** What of one item's places breaks a rule, the worst first: from its clearances, so quick enough for a drag. */
export const keepApartFaultsOf = perAircraft((aircraft, itemId): readonly NearFault[] => {
  const near = new Map(clearances(aircraft, itemId).map((one) => [one.id, one]));
  return keepOutZones(aircraft, itemId)
    .flatMap((zone) => {
      const found = near.get(zone.itemId);
      if (!found || found.distanceMm >= zone.atLeastMm) return [];
      return [{ ...zone, name: found.name, distanceMm: Math.max(0, found.distanceMm) }];
    })
    .sort((a, b) => b.atLeastMm - b.distanceMm - (a.atLeastMm - a.distanceMm));
});

/** Whether a word of a rule means an item: its id, or where no item has that id, its role. */
function meant({ parts, tanks }: Aircraft, word: string, item: Item): boolean {
  if (item.id === word) return true;
  const isId = parts.some(({ id }) => id === word) || tanks.some(({ id }) => id === word);
  return !isId && 'role' in item && item.role === word;
}

/** A zone to keep out of while an item is dragged: around `itemId`, so wide, mm. */
export interface KeepOutZone {
  readonly itemId: string;
  readonly atLeastMm: number;
  readonly why: string;
  readonly commonPractice: boolean;
}

/** A zone that an item stands in. Lengths in mm. */
export interface NearFault extends KeepOutZone {
  /** The other's name. */
  readonly name: string;
  readonly distanceMm: number;
}

/** The zones around other items that a dragged one must keep out of. */
export function keepOutZones(aircraft: Aircraft, itemId: string): KeepOutZone[] {
  const items: readonly Item[] = [...aircraft.parts, ...aircraft.tanks];
  const own = items.find(({ id }) => id === itemId);
  if (!own) return [];
  return keepApartRules(aircraft).flatMap((rule) =>
    items.flatMap((other) => {
      const both = [
        [rule.between, rule.and],
        [rule.and, rule.between],
      ] as const;
      const applies =
        other !== own && both.some(([p, q]) => meant(aircraft, p, own) && meant(aircraft, q, other));
      if (!applies) return [];
      const { atLeastMm, why, commonPractice = false } = rule;
      return [{ itemId: other.id, atLeastMm, why, commonPractice }];
    }),
  );
}
