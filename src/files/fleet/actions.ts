import { isName, LONGEST_NAME, NAME_WANTED } from '../../model/document/names';
import type { Aircraft } from '../../model/document/types';
import { writeAircraft } from '../../model/document/write';
import { parseAircraft } from '../../model/reading/read';
import type { Bench } from '../../store/bench';
import { newFleetId } from '../../store/fleetId';
import type { FleetCard } from '../../store/fleetStore';
import type { Autosave } from '../autosave';
import type { FilePickers } from '../filePickers';
import { cardOf } from './cardOf';
import type { Fleet } from './fleet';
import type { FleetKeeping } from './fleetKeeping';
import { fleetToFile, takeInFleet } from './wholeFleet';

export interface ActionParts {
  readonly bench: Bench;
  readonly fleet: Fleet;
  readonly keeping: FleetKeeping;
  readonly pickers: FilePickers;
  autosaveOf(fleetId: string): Autosave;
  /** Runs something with an aircraft that no tab has on its bench; false where one has. */
  ifNobodyHas(fleetId: string, run: () => Promise<unknown>): Promise<boolean>;
  changed(): void;
}

type Refused = string | null;

/** An action of the fleet that says why it was refused. */
class Refusal extends Error {}

const ELSEWHERE = 'It is on the bench of another tab: do it there, or close that tab first.';
const ON_BENCH = 'It is on the bench. Put another aircraft there first.';

/** What a person does with the fleet; each says why it was not done. */
export function fleetActions(parts: ActionParts) {
  const { bench, fleet, keeping, pickers } = parts;
  const { document, notice } = bench;
  const onBench = () => document.api.getState().fleetId;

  /** One after the other, and everything shown afresh afterwards. */
  const act = async (work: () => Promise<unknown>): Promise<Refused> => {
    await keeping.settle();
    let refused: Refused = null;
    const done = await keeping.inTurn(async () => {
      try {
        await work();
      } catch (error) {
        if (!(error instanceof Refusal)) throw error;
        refused = error.message;
      }
      await keeping.refresh();
      parts.changed();
    });
    return done instanceof Error ? done.message : refused;
  };
  const read = async (id: string): Promise<Aircraft> => {
    const slots = parts.autosaveOf(id).restore();
    if (slots.kind === 'restored') return slots.aircraft;
    const kept = await fleet.read(id);
    if (!kept) throw new Refusal('It is no longer in the fleet: another tab has taken it out.');
    const result = parseAircraft(kept.text);
    if (result.ok) return result.aircraft;
    notice.tell({
      about: 'damaged',
      tone: 'bad',
      text: `An aircraft of the fleet does not read: ${result.faults[0]?.sentence ?? ''} Its text is kept.`,
      actions: [{ label: 'Save it as a file', run: () => pickers.download('kept-copy.json', kept.text) }],
    });
    throw new Refusal('It does not read; its text can be saved as a file.');
  };
  const cardNow = async (id: string): Promise<FleetCard | undefined> =>
    (await fleet.cards()).find((card) => card.id === id);
  const putNew = async (aircraft: Aircraft, like?: FleetCard) => {
    const text = writeAircraft(aircraft);
    const id = newFleetId();
    const card = cardOf(id, aircraft, text, { tone: like?.tone ?? null, changedAtMs: Date.now() });
    await fleet.put({ card, text, history: null, seen: null });
  };
  const alone = async (id: string, work: () => Promise<unknown>) => {
    if (id === onBench()) throw new Refusal(ON_BENCH);
    if (!(await parts.ifNobodyHas(id, work))) throw new Refusal(ELSEWHERE);
  };

  return {
    /** `stillWanted`: asked again once it is read; what came onto the bench meanwhile may stand in the way. */
    open: async (id: string, stillWanted = () => true): Promise<Refused> => {
      if (id !== onBench()) {
        await keeping.settle();
        try {
          const aircraft = await read(id);
          if (!stillWanted()) return null;
          bench.drag.cancel();
          document.replace(aircraft, `Take ${aircraft.name} from the fleet`, id);
        } catch (error) {
          return error instanceof Error ? error.message : String(error);
        }
      }
      bench.view.setState({ place: 'bench' });
      return null;
    },
    duplicate: (id: string) =>
      act(async () => {
        const names = new Set((await fleet.cards()).map(({ name }) => name));
        const aircraft = await read(id);
        await putNew({ ...aircraft, name: copyName(aircraft.name, names) }, await cardNow(id));
      }),
    rename: async (id: string, name: string): Promise<Refused> => {
      if (!isName(name)) return `Expected ${NAME_WANTED}.`;
      if (id === onBench()) {
        document.commit('Rename the aircraft', { ...document.api.getState().committed, name });
        await keeping.settle();
        return null;
      }
      return act(() =>
        alone(id, async () => {
          const aircraft = { ...(await read(id)), name };
          const [kept, card] = [await fleet.read(id), await cardNow(id)];
          const text = writeAircraft(aircraft);
          const next = cardOf(id, aircraft, text, { tone: card?.tone ?? null, changedAtMs: Date.now() });
          await fleet.put({ card: next, text, history: kept?.history ?? null, seen: kept?.stamp ?? null });
          // Slots that do not read, for a later version wrote them, say, are no older state of this.
          if (parts.autosaveOf(id).restore().kind === 'restored') parts.autosaveOf(id).clear();
        }),
      );
    },
    remove: (id: string) =>
      act(() =>
        alone(id, async () => {
          await fleet.change(id, (card) => ({ ...card, deletedAtMs: Date.now() }));
          // The next start would begin with what is in its slots.
          const slots = parts.autosaveOf(id);
          if (slots.latest() === (await fleet.read(id))?.text) slots.clear();
          const name = (await cardNow(id))?.name ?? 'It';
          notice.tell({
            about: 'deleted',
            tone: 'done',
            text: `${name} is deleted; for ${DELETED_DAYS} days it can be taken back from the foot of the fleet.`,
            actions: [{ label: 'Undo', run: () => void restore(id) }],
          });
        }),
      ),
    restore: (id: string) => restore(id),
    forget: (id: string) =>
      act(() =>
        alone(id, async () => {
          await fleet.forget(id);
          parts.autosaveOf(id).clear();
        }),
      ),
    saveAll: () =>
      act(async () => {
        const { text, count, left } = await fleetToFile(fleet);
        const name = `fleet-${new Date().toISOString().slice(0, 10)}.json`;
        pickers.download(name, text);
        notice.tell({
          about: 'file',
          tone: left > 0 ? 'bad' : 'done',
          text: `${count} aircraft saved as ${name}, in the browser’s downloads.${left > 0 ? ` ${left} of the fleet do not read and are not in it.` : ''}`,
        });
      }),
    takeIn: async (): Promise<Refused> => {
      const file = await pickers.chooseFile('.json,application/json');
      if (!file) return null;
      return act(async () => {
        const told = await takeInFleet(fleet, file);
        if (!told.ok) throw new Refusal(told.sentence);
        notice.tell({ about: 'file', tone: told.left > 0 ? 'bad' : 'note', text: told.sentence });
      });
    },
    keepRevision: (name: string) =>
      act(async () => {
        const given = name.trim();
        if (!isName(given)) throw new Refusal(`Expected ${NAME_WANTED}.`);
        const { fleetId, committed } = document.api.getState();
        await fleet.keepRevision({
          fleetId,
          atMs: Date.now(),
          name: given,
          why: '',
          text: writeAircraft(committed),
        });
      }),
    renameRevision: (key: number, name: string) =>
      act(async () => {
        const given = name.trim();
        if (!isName(given)) throw new Refusal(`Expected ${NAME_WANTED}.`);
        await fleet.renameRevision(onBench(), key, given);
      }),
    forgetRevision: (key: number) => act(() => fleet.forgetRevision(onBench(), key)),
    readRevision: async (key: number): Promise<Aircraft | string> => {
      const kept = (await fleet.revisions(onBench())).find((revision) => revision.key === key);
      if (!kept) return 'This revision is no longer there.';
      const result = parseAircraft(kept.text);
      return result.ok ? result.aircraft : `It does not read: ${result.faults[0]?.sentence ?? ''}`;
    },
  };

  async function restore(id: string): Promise<Refused> {
    notice.drop('deleted');
    return act(() => fleet.change(id, (card) => ({ ...card, deletedAtMs: null })));
  }
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
