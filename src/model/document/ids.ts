import { roles } from './schema/aircraft';
import type { Aircraft } from './types';

/** What a tank feeds that feeds no other: the engine or the dump valve. */
export const OUTLET_ID = 'outlet';
/** The id under which the weighed airframe, or its correction, appears among the bodies. */
export const BARE_AIRFRAME_ID = 'bare-airframe';
/** The switch that retracting legs make; no switch in a file may be called so. */
export const UNDERCARRIAGE_ID = 'undercarriage';

/** The most characters that a name gives to an id. */
const LONGEST_STEM = 60;

/**
 * Every id that a new thing cannot take: all ids in the file, whatever they are for, those that the bench itself
 * uses, and the roles, which stand beside ids in the rules of distance.
 */
export function takenIds(aircraft: Aircraft): Set<string> {
  const { parts, tanks, structure, referencePoints, bays, hatches, leads, switches, weighIns } = aircraft;
  const { ballastSpots, ballastFree } = aircraft;
  const leftOut = (aircraft.variants?.shared ?? []).flatMap(({ id, put }) =>
    id !== undefined && put ? [{ id }] : [],
  );
  const lists = [
    parts,
    tanks,
    structure,
    referencePoints,
    bays,
    hatches,
    leads,
    ballastSpots,
    ballastFree,
    switches,
    weighIns,
    leftOut,
  ];
  return new Set([
    OUTLET_ID,
    BARE_AIRFRAME_ID,
    UNDERCARRIAGE_ID,
    ...roles,
    ...lists.flatMap((list) => (list ?? []).map(({ id }) => id)),
  ]);
}

/** An id that the aircraft does not use yet, made of a name: the name in lower case, or `otherwise`, then with 2, 3, ... */
export const freeId = (aircraft: Aircraft, name: string, otherwise = 'part'): string =>
  freeIdAmong(takenIds(aircraft), name, otherwise);

/** The same among ids that are gathered elsewhere. */
export function freeIdAmong(taken: ReadonlySet<string>, name: string, otherwise: string): string {
  const plain = name
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .slice(0, LONGEST_STEM)
    .replace(/^-+|-+$/g, '');
  const base = plain || otherwise;
  if (!taken.has(base)) return base;
  let n = 2;
  while (taken.has(`${base}-${n}`)) n += 1;
  return `${base}-${n}`;
}
