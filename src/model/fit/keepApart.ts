import { shapeDistance } from '../../engine/fit/shapeDistance';
import { boxGap } from '../../engine/fit/solid';
import type { Vec3 } from '../../engine/geometry/types';
import { perObject, perObjects } from '../../engine/memory/memory';
import { itemSolid } from '../airframe/solids';
import { type Item, itemById } from '../document/edit';
import { shownText } from '../document/names';
import type { Aircraft, KeepApartRule } from '../document/types';
import { solidDistance } from './overlaps';

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

/** Two items nearer to each other than a rule allows. */
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
  return faults.sort((first, other) => other.shortByMm - first.shortByMm);
}

function faultOf(rule: KeepApartRule, a: Item, b: Item): KeepApartFault | null {
  const { distanceMm, pointsMm } = shapeDistance(itemSolid(a), itemSolid(b));
  const shortByMm = rule.atLeastMm - distanceMm;
  if (shortByMm <= 0) return null;
  const sentence = `${shownText(a.name)} is ${distanceMm.toFixed(0)} mm from ${shownText(b.name)}, at least ${rule.atLeastMm} mm wanted: ${shownText(rule.why)}.`;
  return { rule, aId: a.id, bId: b.id, distanceMm, shortByMm, pointsMm, sentence };
}

/** What of one item's places breaks a rule, the worst first: only its own pairs, so quick enough for a drag. */
export const keepApartFaultsOf = perObjects((aircraft: Aircraft, itemId: string): readonly NearFault[] => {
  const item = itemById(aircraft, itemId);
  if (!item) return [];
  return keepOutZones(aircraft, itemId)
    .flatMap((zone) => {
      const other = itemById(aircraft, zone.itemId);
      if (!other || boxGap(itemSolid(item), itemSolid(other)) >= zone.atLeastMm) return [];
      const { distanceMm } = solidDistance(itemSolid(item), itemSolid(other));
      return distanceMm < zone.atLeastMm ? [{ ...zone, name: other.name, distanceMm }] : [];
    })
    .sort((a, b) => b.atLeastMm - b.distanceMm - (a.atLeastMm - a.distanceMm));
});

/** Whether a word of a rule means an item: its id, or where no item has that id, its role. */
function meant({ parts, tanks }: Aircraft, word: string, item: Item): boolean {
  if (item.id === word) return true;
  const isId = parts.some(({ id }) => id === word) || tanks.some(({ id }) => id === word);
  return !isId && 'role' in item && item.role === word;
}

/** A rule and what it is about, on either side. */
export interface RuleSides {
  readonly rule: KeepApartRule;
  readonly between: readonly Item[];
  readonly and: readonly Item[];
}

/** Every rule with the items that each of its words means: by id, or where no item has that id, by role. */
export const ruleSides = perObject((aircraft: Aircraft): readonly RuleSides[] => {
  const byId = new Map<string, Item>();
  const byRole = new Map<string, Item[]>();
  for (const item of [...aircraft.parts, ...aircraft.tanks]) {
    byId.set(item.id, item);
    if (!('role' in item)) continue;
    const alike = byRole.get(item.role) ?? [];
    alike.push(item);
    byRole.set(item.role, alike);
  }
  const meant = (word: string): readonly Item[] => {
    const item = byId.get(word);
    return item ? [item] : (byRole.get(word) ?? []);
  };
  return keepApartRules(aircraft).map((rule) => ({
    rule,
    between: meant(rule.between),
    and: meant(rule.and),
  }));
});

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
export const keepOutZones = perObjects((aircraft: Aircraft, itemId: string): readonly KeepOutZone[] => {
  const itself = itemById(aircraft, itemId);
  if (!itself) return [];
  const items: readonly Item[] = [...aircraft.parts, ...aircraft.tanks];
  return ruleSides(aircraft).flatMap(({ rule, between, and }) => {
    const kept = new Set([
      ...(between.includes(itself) ? and : []),
      ...(and.includes(itself) ? between : []),
    ]);
    kept.delete(itself);
    const { atLeastMm, why, commonPractice = false } = rule;
    return items
      .filter((item) => kept.has(item))
      .map(({ id }) => ({ itemId: id, atLeastMm, why, commonPractice }));
  });
});
