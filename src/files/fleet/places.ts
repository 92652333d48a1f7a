import { blankAircraft } from '../../model/document/blank';
import type { Aircraft } from '../../model/document/types';
import { writeAircraft } from '../../model/document/write';
import { textDigest } from '../../model/history/textDigest';
import type { Tone } from '../../model/words/verdictFacts';
import type { Bench } from '../../store/bench';
import { type DocumentState, historyOf, ownSteps } from '../../store/documentStore';
import type { FleetCard } from '../../store/fleetStore';
import { cardOf } from './cardOf';
import type { Fleet } from './fleet';
import { packHistory, recallHistory } from './recallHistory';
import { createVisits, type Visits } from './visits';

export interface PlaceParts {
  readonly bench: Bench;
  readonly fleet: Fleet;
  /** A place is written: slots that hold the same, or less, may give back their room. */
  written(fleetId: string, text: string): void;
  /** The fleet has changed, for other tabs. */
  changed(): void;
  /** The first work that is worth asking the browser to keep it. */
  worthKeeping(): void;
}

/** The places of the fleet as they are written from the bench, and what comes back from them to it. */
export interface Places {
  /** Writes what is on the bench into its place; `tone` is the word of its verdict where it has been heard. */
  put(state: DocumentState, tone: Tone | null): Promise<void>;
  /** Gives what has come onto the bench the steps that its place has kept; `late` when another tab kept it before. */
  recall(late: boolean): Promise<void>;
  /** Reads the cards, and the revisions of what is on the bench, afresh. */
  refresh(): Promise<void>;
  before: Visits['before'];
}

export function createPlaces(parts: PlaceParts): Places {
  const { bench, fleet } = parts;
  const { api } = bench.document;
  const visits = createVisits(fleet);
  const recalled = new Set<number>();
  let lastPut: DocumentState | null = null;

  const refresh = async () => {
    const { fleetId } = api.getState();
    const [cards, revisions] = [await fleet.cards(), await fleet.revisions(fleetId)];
    bench.fleet.api.setState({ cards, revisions: revisions.map(({ text, ...revision }) => revision) });
  };

  const put = async (state: DocumentState, heard: Tone | null) => {
    const { fleetId, committed } = state;
    const text = writeAircraft(committed);
    if (text === BLANK) return;
    const before = bench.fleet.get().cards.find(({ id }) => id === fleetId);
    const twin = before ? undefined : await sameUnedited(parts, state, text);
    if (twin) {
      bench.document.moveTo(twin.id);
      await refresh();
      // Its first place is given up: in its slots the next start would find it once more.
      return parts.written(fleetId, text);
    }
    const next = nextCard(before, fleetId, committed, text, heard);
    if (!next.differs && hasSteps(lastPut, state)) return;
    // Left before its steps came back from the fleet, it keeps those that the fleet has.
    const history = recalled.has(state.aircraftNumber)
      ? packHistory(state)
      : ((await fleet.read(fleetId))?.history ?? packHistory(state));
    await visits.put(state, { card: next.card, text, history });
    lastPut = state;
    parts.written(fleetId, text);
    if (ownSteps(state).length > 0) parts.worthKeeping();
    await refresh();
    parts.changed();
  };

  const recall = async (late: boolean) => {
    const state = api.getState();
    const { fleetId, aircraftNumber, committed } = state;
    const kept = await fleet.read(fleetId);
    visits.arrive(fleetId, kept, late);
    const { past, future } = historyOf(state);
    // Undo brought it back with its steps.
    if (recalled.has(aircraftNumber) && past.length + future.length > 0) return;
    const from = past[0]?.aircraft ?? committed;
    const history = kept?.history ? await recallHistory(kept.history, from) : null;
    if (api.getState().aircraftNumber !== aircraftNumber) return;
    recalled.add(aircraftNumber);
    if (history) bench.document.recall(history);
    else if (kept?.history) bench.notice.tell({ about: 'history', tone: 'note', text: DAMAGED_HISTORY });
  };

  return { put, recall, refresh, before: visits.before };
}

const BLANK = writeAircraft(blankAircraft());
const DAMAGED_HISTORY =
  'The steps of the last visit could not be read, so undo does not reach back to them. The aircraft itself is whole.';

/** Whether the fleet has its steps too; of what came from there untouched it has. */
const hasSteps = (lastPut: DocumentState | null, state: DocumentState): boolean =>
  state.past.length + state.future.length === 0 ||
  (lastPut?.fleetId === state.fleetId && lastPut.past === state.past && lastPut.future === state.future);

/** The same aircraft in the fleet already: what was opened twice is one. */
async function sameUnedited(
  { bench, fleet }: PlaceParts,
  state: DocumentState,
  text: string,
): Promise<FleetCard | undefined> {
  if (ownSteps(state).length > 0 || bench.document.api.getState() !== state) return;
  const digest = textDigest(text);
  return (await fleet.cards()).find((card) => card.digest === digest && card.deletedAtMs === null);
}

/** The card of what is on the bench, and whether it says anything else than the one before. */
function nextCard(
  before: FleetCard | undefined,
  fleetId: string,
  aircraft: Aircraft,
  text: string,
  heard: Tone | null,
) {
  const same = before?.digest === textDigest(text);
  const tone = heard ?? (same ? before.tone : null);
  const changedAtMs = same ? before.changedAtMs : Date.now();
  const card = cardOf(fleetId, aircraft, text, { tone, changedAtMs });
  // One that was deleted and came back by an undo is wanted again.
  const isDeleted = before !== undefined && before.deletedAtMs !== null;
  return { card, differs: !same || isDeleted || before.tone !== tone };
}
