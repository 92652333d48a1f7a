import { isName, LONGEST_NAME, NAME_WANTED } from '../../model/document/names';
import type { Aircraft } from '../../model/document/types';
import { writeAircraft } from '../../model/document/write';
import { newFleetId } from '../../store/fleetId';
import type { FleetCard } from '../../store/fleetStore';
import { cardOf } from './cardOf';
import { type ActionParts, type FleetWork, fleetWork, type Refused } from './fleetWork';
import { revisionActions } from './revisionActions';
import { wholeFleetActions } from './wholeFleetActions';

/** What a person does with the fleet; each says why it was not done. */
export function fleetActions(parts: ActionParts) {
  const work = fleetWork(parts);
  return {
    ...aircraftActions(parts, work),
    ...deletedActions(parts, work),
    ...wholeFleetActions(parts, work),
    ...revisionActions(parts, work),
  };
}

const aircraftActions = (parts: ActionParts, work: FleetWork) => ({
  /** `stillWanted`: asked again once it is read; what came onto the bench meanwhile may stand in the way. */
  open: async (id: string, stillWanted = () => true): Promise<Refused> => {
    const { bench, keeping } = parts;
    if (id !== work.onBench()) {
      await keeping.settle();
      try {
        const aircraft = await work.read(id);
        if (!stillWanted()) return null;
        bench.drag.cancel();
        bench.document.replace(aircraft, `Take ${aircraft.name} from the fleet`, id);
      } catch (error) {
        return error instanceof Error ? error.message : String(error);
      }
    }
    bench.view.setState({ place: 'bench' });
    return null;
  },
  duplicate: (id: string) =>
    work.act(async () => {
      const { fleet } = parts;
      const names = new Set((await fleet.cards()).map(({ name }) => name));
      const aircraft = await work.read(id);
      const copy = { ...aircraft, name: copyName(aircraft.name, names) };
      const written = writtenAs(newFleetId(), copy, await work.cardNow(id));
      await fleet.put({ ...written, history: null, seen: null });
    }),
  rename: async (id: string, name: string): Promise<Refused> => {
    const { bench, keeping } = parts;
    if (!isName(name)) return `Expected ${NAME_WANTED}.`;
    if (id !== work.onBench()) return renameElsewhere(parts, work, id, name);
    bench.document.commit('Rename the aircraft', { ...bench.document.api.getState().committed, name });
    await keeping.settle();
    return null;
  },
});

const renameElsewhere = ({ fleet, autosaveOf }: ActionParts, work: FleetWork, id: string, name: string) =>
  work.act(() =>
    work.alone(id, async () => {
      const aircraft = { ...(await work.read(id)), name };
      const [kept, card] = [await fleet.read(id), await work.cardNow(id)];
      const written = writtenAs(id, aircraft, card);
      await fleet.put({ ...written, history: kept?.history ?? null, seen: kept?.stamp ?? null });
      // Slots that do not read, for a later version wrote them, say, are no older state of this.
      if (autosaveOf(id).restore().kind === 'restored') autosaveOf(id).clear();
    }),
  );

/** An aircraft's text and card under an id, its word of the verdict as on another card. */
function writtenAs(id: string, aircraft: Aircraft, like: FleetCard | undefined) {
  const text = writeAircraft(aircraft);
  return { text, card: cardOf(id, aircraft, text, { tone: like?.tone ?? null, changedAtMs: Date.now() }) };
}

function deletedActions({ bench, fleet, autosaveOf }: ActionParts, { act, alone, cardNow }: FleetWork) {
  const restore = async (id: string): Promise<Refused> => {
    bench.notice.drop('deleted');
    return act(() => fleet.change(id, (card) => ({ ...card, deletedAtMs: null })));
  };
  return {
    remove: (id: string) =>
      act(() =>
        alone(id, async () => {
          await fleet.change(id, (card) => ({ ...card, deletedAtMs: Date.now() }));
          // The next start would begin with what is in its slots.
          const slots = autosaveOf(id);
          if (slots.latest() === (await fleet.read(id))?.text) slots.clear();
          const name = (await cardNow(id))?.name ?? 'It';
          bench.notice.tell({
            about: 'deleted',
            tone: 'done',
            text: `${name} is deleted; for ${DELETED_DAYS} days it can be taken back from the foot of the fleet.`,
            actions: [{ label: 'Undo', run: () => void restore(id) }],
          });
        }),
      ),
    restore,
    forget: (id: string) =>
      act(() =>
        alone(id, async () => {
          await fleet.forget(id);
          autosaveOf(id).clear();
        }),
      ),
  };
}

/** How long a deleted aircraft can be taken back, days. */
export const DELETED_DAYS = 30;

/** "Knot copy", "Knot copy 2": a name that the fleet does not have yet. */
export function copyName(name: string, taken: ReadonlySet<string>): string {
  const stem = name.replace(/ copy( \d+)?$/, '');
  for (let count = 1; ; count++) {
    const ending = count === 1 ? ' copy' : ` copy ${count}`;
    const next = stem.slice(0, LONGEST_NAME - ending.length) + ending;
    if (!taken.has(next)) return next;
  }
}
