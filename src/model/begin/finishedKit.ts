import { massPoint, massSum } from '../../engine/mass/massProperties';
import { structureMass } from '../airframe/structureBodies';
import type { Aircraft } from '../document/types';
import type { Outfit } from './proportions';
import type { Family, Placed } from './thing';

/** An airframe that is finished and was weighed. */
export interface Kit {
  readonly massG: number;
  /** Where it balances, mm from the nose; null where nobody looked. */
  readonly balancesMm: number | null;
  /** What was in it on the scales. */
  readonly contains: readonly Family[];
}

/** What each family is called in a list of what the scales had on them. */
export const familyNames: Readonly<Record<Family, string>> = {
  servos: 'servos',
  motor: 'motor with propeller',
  controller: 'speed controller',
  receiver: 'receiver',
  pack: 'pack',
};

/** The shares of ready-to-fly mass that some families have together. */
export const sharesOf = (outfit: Outfit, contains: readonly Family[]): number =>
  contains.reduce((sum, family) => sum + shareOf(outfit, family), 0);

function shareOf(outfit: Outfit, family: Family): number {
  switch (family) {
    case 'servos':
      return outfit.servos;
    case 'motor':
      return outfit.motor + outfit.propeller + outfit.spinner;
    case 'controller':
      return outfit.controller;
    case 'receiver':
      return outfit.receiver;
    case 'pack':
      return outfit.pack;
  }
}

/** Where a weighed airframe that nobody balanced may balance: so much either way, of its length. Common practice. */
const UNKNOWN_SHARE = 0.04;

/**
 * The aircraft with its weighed airframe in place of the shapes. What was on the scales with it is no part of its own any
 * more, so that nothing counts twice. Where nobody looked where it balances, shapes and proportions say, with a large ±.
 */
export function finishedKit(aircraft: Aircraft, kit: Kit, placed: readonly Placed[]): Aircraft {
  const inside = placed.filter(({ family }) => kit.contains.includes(family)).map(({ part }) => part);
  const outside = new Set(inside.map(({ id }) => id));
  const shapes = massSum([
    structureMass(aircraft.structure),
    ...inside.map(({ massG, positionMm }) => massPoint(massG, positionMm)),
  ]);
  const stationMm = kit.balancesMm ?? Math.round(shapes.cgMm?.[0] ?? 0);
  const lengthMm = aircraft.referencePoints.find(({ id }) => id === 'tail-end')?.positionMm[0] ?? 0;
  return {
    ...aircraft,
    parts: aircraft.parts.filter(({ id }) => !outside.has(id)),
    bareAirframe: {
      massG: kit.massG,
      stationMm,
      buttlineMm: 0,
      use: 'replace',
      contains: containsWords(kit.contains),
      ...(kit.balancesMm === null && { plusMinusMm: Math.ceil(UNKNOWN_SHARE * lengthMm) }),
    },
  };
}

/** "the structure, servos and receiver". */
export function containsWords(contains: readonly Family[]): string {
  const names = ['the structure', ...contains.map((family) => familyNames[family])];
  const last = names.at(-1);
  return names.length === 1 ? 'the structure alone' : `${names.slice(0, -1).join(', ')} and ${last}`;
}
