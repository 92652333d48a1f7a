import type { Aircraft } from '../../model/document/types';
import { parseAircraft } from '../../model/reading/read';
import type { Bench } from '../../store/bench';
import type { FleetCard } from '../../store/fleetStore';
import type { Autosave } from '../autosave';
import type { FilePickers } from '../filePickers';
import type { Fleet } from './fleet';
import type { FleetKeeping } from './fleetKeeping';

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

/** Null where it was done. */
export type Refused = string | null;

/** Thrown by an action of the fleet; its message says to the person why it was refused. */
export class Refusal extends Error {}

const ELSEWHERE = 'It is on the bench of another tab: do it there, or close that tab first.';
const ON_BENCH = 'It is on the bench. Put another aircraft there first.';

/** What every action of the fleet is made with. */
export interface FleetWork {
  /** The aircraft on the bench. */
  onBench(): string;
  /** One after the other, and everything shown afresh afterwards. */
  act(work: () => Promise<unknown>): Promise<Refused>;
  /** An aircraft as it was last kept; a `Refusal` where there is none that reads. */
  read(id: string): Promise<Aircraft>;
  cardNow(id: string): Promise<FleetCard | undefined>;
  /** Does something with an aircraft that is on no bench; a `Refusal` where it is on one. */
  alone(id: string, work: () => Promise<unknown>): Promise<void>;
}

export function fleetWork(parts: ActionParts): FleetWork {
  const { bench, fleet, keeping } = parts;
  const onBench = () => bench.document.api.getState().fleetId;
  return {
    onBench,
    act: async (work) => {
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
    },
    read: (id) => readKept(parts, id),
    cardNow: async (id) => (await fleet.cards()).find((card) => card.id === id),
    alone: async (id, work) => {
      if (id === onBench()) throw new Refusal(ON_BENCH);
      if (!(await parts.ifNobodyHas(id, work))) throw new Refusal(ELSEWHERE);
    },
  };
}

async function readKept({ bench, fleet, pickers, autosaveOf }: ActionParts, id: string): Promise<Aircraft> {
  const slots = autosaveOf(id).restore();
  if (slots.kind === 'restored') return slots.aircraft;
  const kept = await fleet.read(id);
  if (!kept) throw new Refusal('It is no longer in the fleet: another tab has taken it out.');
  const result = parseAircraft(kept.text);
  if (result.ok) return result.aircraft;
  bench.notice.tell({
    about: 'damaged',
    tone: 'bad',
    text: `An aircraft of the fleet does not read: ${result.faults[0]?.sentence ?? ''} Its text is kept.`,
    actions: [{ label: 'Save it as a file', run: () => pickers.download('kept-copy.json', kept.text) }],
  });
  throw new Refusal('It does not read; its text can be saved as a file.');
}
