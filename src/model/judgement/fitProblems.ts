import { leadStates } from '../airframe/leads';
import type { Aircraft } from '../document/types';
import { bayFault } from '../fit/bays';
import { clearances, hullFit } from '../fit/clearances';
import { keepApartFaults } from '../fit/keepApart';

export type FitKind =
  | 'overlap'
  | 'within'
  | 'through'
  | 'outside'
  | 'outOfBay'
  | 'shortLead'
  | 'tooNear'
  | 'thinWall';

export interface FitParty {
  readonly id: string;
  readonly name: string;
}

/** One thing that does not fit. */
export interface FitProblem {
  readonly key: string;
  readonly kind: FitKind;
  readonly severity: 'bad' | 'caution';
  /** The one to be moved first. */
  readonly parties: readonly [FitParty, ...FitParty[]];
  /** How far it is in, out or short, mm. */
  readonly byMm: number;
  /** The load states in which it holds; empty is all. */
  readonly states: readonly { readonly switchId: string }[];
}

/** Touching is no clash, mm. */
const TOUCH_MM = 1e-6;

/** Everything that does not fit, as the aircraft stands; of `about` only where one of these is in it, and leads. */
export function fitProblemsOf(
  aircraft: Aircraft,
  about: ReadonlySet<string> | null = null,
): readonly FitProblem[] {
  const asked = ({ id }: { readonly id: string }) => !about || about.has(id);
  const parts = aircraft.parts.filter(asked);
  const tanks = aircraft.tanks.filter(asked);
  const found = new Map<string, FitProblem>();
  const add = (kind: FitKind, byMm: number, ...parties: readonly [FitParty, ...FitParty[]]) => {
    const ids = parties.map(({ id }) => id).sort();
    const key = [kind, ...(kind === 'through' ? ids.slice(0, 1) : ids)].join(' ');
    const severity = kind === 'tooNear' ? 'caution' : 'bad';
    if (!found.has(key)) found.set(key, { key, kind, severity, parties, byMm, states: [] });
  };
  const names = new Map([...aircraft.parts, ...aircraft.tanks].map(({ id, name }) => [id, name]));
  for (const item of [...parts, ...tanks]) {
    for (const other of clearances(aircraft, item.id)) {
      if (other.what !== 'hull' && other.clearByMm && other.distanceMm < -TOUCH_MM) {
        add('overlap', -other.distanceMm, item, other);
      }
    }
    const hull = hullFit(aircraft, item.id);
    if (hull.place === 'inside' && hull.clearance.distanceMm < -TOUCH_MM) {
      add('through', -hull.clearance.distanceMm, item, hull.clearance);
    }
  }
  for (const part of parts) {
    const fault = bayFault(aircraft, part);
    if (fault) add('outOfBay', fault.overMm, part, { id: fault.bayId, name: fault.bayName });
  }
  for (const lead of leadStates(aircraft)) if (lead.slackMm < 0) add('shortLead', -lead.slackMm, lead);
  for (const { aId, bId, shortByMm } of keepApartFaults(aircraft)) {
    if (about && !about.has(aId) && !about.has(bId)) continue;
    const party = (id: string) => ({ id, name: names.get(id) ?? id });
    add('tooNear', shortByMm, party(aId), party(bId));
  }
  return [...found.values()];
}
