import { writeAircraft } from '../../model/document/write';
import { type DocumentState, ownSteps } from '../../store/documentStore';
import type { Fleet, Kept, Put } from './fleet';

/** After so much work, or so long, what stands on the bench is kept as a revision. */
const STEPS = 40;
const WORK_MS = 10 * 60_000;

/** What this tab knows of an aircraft that it has, or had, on its bench. */
interface Visit {
  /** Of the fleet's state that this tab wrote or read last. */
  stamp: string | null;
  /** The fleet has not had it before. */
  isNew: boolean;
  /** Its text when it came onto the bench; null once that is a revision. */
  cameWith: string | null;
  revisionAtMs: number;
  stepsAtRevision: number;
}

export interface Visits {
  arrive(fleetId: string, kept: Kept | null, late: boolean): void;
  put(state: DocumentState, put: Omit<Put, 'seen'>): Promise<void>;
  /** Keeps a state as a revision for a reason. */
  before(state: DocumentState, why: string): Promise<void>;
}

/** Writes the bench into the fleet, and revisions beside it: as it came, after a while, before a large step. */
export function createVisits(fleet: Fleet): Visits {
  const visits = new Map<string, Visit>();
  const visitOf = (fleetId: string): Visit => {
    const before = visits.get(fleetId);
    if (before) return before;
    const fresh = { stamp: null, isNew: true, cameWith: null, revisionAtMs: Date.now(), stepsAtRevision: 0 };
    visits.set(fleetId, fresh);
    return fresh;
  };
  const keep = async (fleetId: string, text: string, why: string) => {
    const [latest] = await fleet.revisions(fleetId);
    if (latest?.text !== text) await fleet.keepRevision({ fleetId, atMs: Date.now(), name: null, why, text });
  };
  return {
    arrive: (fleetId, kept, late) => {
      const isBack = visits.has(fleetId);
      const visit = visitOf(fleetId);
      if (isBack && !late) return;
      visit.stamp = kept?.stamp ?? null;
      visit.cameWith = kept?.text ?? null;
      visit.isNew = kept === null;
    },
    put: async (state, put) => {
      const { fleetId } = state;
      const visit = visitOf(fleetId);
      const done = ownSteps(state);
      const steps = done.length;
      if (visit.isNew) visit.cameWith = writeAircraft(done[0]?.aircraft ?? state.committed);
      visit.isNew = false;
      if (visit.cameWith !== null && visit.cameWith !== put.text) {
        await keep(fleetId, visit.cameWith, 'as it came onto the bench');
        visit.cameWith = null;
      }
      visit.stamp = await fleet.put({ ...put, seen: visit.stamp });
      const since = Date.now() - visit.revisionAtMs;
      if (Math.abs(steps - visit.stepsAtRevision) < STEPS && since < WORK_MS) return;
      visit.revisionAtMs = Date.now();
      visit.stepsAtRevision = steps;
      await keep(fleetId, put.text, 'while it was worked on');
    },
    before: ({ fleetId, committed }, why) => keep(fleetId, writeAircraft(committed), why),
  };
}
