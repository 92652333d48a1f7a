import { writeAircraft } from '../../model/document/write';
import { textDigest } from '../../model/history/textDigest';
import type { Bench } from '../../store/bench';
import { putAside } from '../aside';
import { type Autosave, placesInSlots } from '../autosave';
import type { FilePickers } from '../filePickers';
import type { Keeping } from '../keeping';
import { ifNobodyHas, type TabLocks } from '../oneTab';
import { isFull, reason, type TextStorage } from '../storage';
import { DELETED_DAYS, fleetActions } from './actions';
import { cardOf } from './cardOf';
import { databaseShelves } from './databaseShelves';
import { createFleet, type Fleet } from './fleet';
import { createFleetKeeping, type FleetKeeping } from './fleetKeeping';
import { fleetNews } from './fleetNews';
import { laterShelves, memoryShelves, type Shelves } from './shelves';

export interface FleetParts {
  readonly bench: Bench;
  readonly keeping: Keeping;
  readonly pickers: FilePickers;
  readonly storage: TextStorage;
  readonly locks: TabLocks | null;
  autosaveOf(fleetId: string): Autosave;
  /** What the last visit had on the bench, where its slots are gone; null where there is nothing to bring back. */
  readonly wanted: string | null;
  /** The page began with what it comes with, which is no work yet. */
  readonly comesAfresh: boolean;
  /** False where slots hold what could not be put aside: they are left alone. */
  readonly bringsIn: boolean;
  save(): unknown;
}

export interface RunningFleet {
  readonly actions: ReturnType<typeof fleetActions>;
  arrived(late: boolean): void;
  settle(): Promise<void>;
}

const DATABASE = 'counterpoise';
const DAY_MS = 86_400_000;

/** Opens the fleet and keeps it in step with the bench. It always starts: without a store it lives in the tab. */
export function startFleet(parts: FleetParts): RunningFleet {
  const { bench, keeping, locks, autosaveOf } = parts;
  const fleet = createFleet(laterShelves(openShelves(parts)));
  const news = fleetNews();
  const inStep = createFleetKeeping({
    bench,
    fleet,
    keeping,
    changed: news.tell,
    comesAfresh: parts.comesAfresh,
    written: (fleetId, text) => {
      if (bench.fleet.get().where !== 'browser') return;
      if (fleetId === bench.document.api.getState().fleetId) return dropStale(parts, text);
      void ifNobodyHas(locks, fleetId, async () => clearIf(autosaveOf(fleetId), text));
    },
    worthKeeping: () => void askToKeep(bench),
    refused: (error) => tellRefused(parts, error),
    went: () => {
      if (bench.fleet.get().where === 'browser') bench.fleet.api.setState({ trouble: null });
      bench.notice.drop('fleet');
    },
  });
  const refresh = () => void inStep.inTurn(inStep.refresh);
  news.hear(refresh);
  bench.document.api.subscribe((now, before) => {
    if (now.fleetId !== before.fleetId) refresh();
  });
  bench.view.subscribe((now, before) => {
    if (now.place !== before.place) void inStep.settle();
  });
  const actions = fleetActions({
    ...parts,
    fleet,
    keeping: inStep,
    changed: news.tell,
    ifNobodyHas: (fleetId, run) => ifNobodyHas(locks, fleetId, run),
  });
  void inStep.inTurn(inStep.refresh).then(() => {
    if (bench.fleet.get().where !== 'browser') return;
    if (parts.bringsIn) void inStep.inTurn(() => sweep(fleet, inStep, parts));
    const { wanted } = parts;
    const isUntouched = () => bench.document.api.getState().past.length === 0;
    const isThere = bench.fleet
      .get()
      .cards.some(({ id, deletedAtMs }) => id === wanted && deletedAtMs === null);
    if (wanted && isUntouched() && isThere) void actions.open(wanted, isUntouched);
  });
  if (keeping.keeps()) inStep.arrived(false);
  return { actions, arrived: inStep.arrived, settle: inStep.settle };
}

async function openShelves({ bench, save }: FleetParts): Promise<Shelves> {
  try {
    const shelves = await databaseShelves(DATABASE, {
      gone: (trouble) => {
        bench.fleet.api.setState({ trouble });
        bench.notice.tell({ about: 'fleet', tone: 'bad', text: trouble });
      },
    });
    await shelves.list('cards');
    const promised = (await navigator.storage?.persisted?.().catch(() => null)) ?? null;
    bench.fleet.api.setState({ where: 'browser', promised: promised || null });
    return shelves;
  } catch (error) {
    const trouble = `The browser keeps no fleet for this page (${reason(error)}). Other aircraft than the one on the bench are gone when this tab closes: save them as files.`;
    bench.fleet.api.setState({ where: 'tab', trouble });
    bench.notice.tell({
      about: 'no-fleet',
      tone: 'note',
      text: trouble,
      actions: [{ label: 'Save what is on the bench', run: save }],
    });
    return memoryShelves();
  }
}

function tellRefused({ bench, save }: FleetParts, error: unknown): void {
  const trouble = isFull(error)
    ? 'The browser has no room left for the fleet. Save it as a file, or delete aircraft for good at its foot.'
    : `The browser could not keep the fleet (${reason(error)}). Save what is on the bench as a file.`;
  bench.fleet.api.setState({ trouble });
  bench.notice.tell({
    about: 'fleet',
    tone: 'bad',
    text: trouble,
    actions: [{ label: 'Save what is on the bench', run: save }],
  });
}

/** Asks the browser, once, not to clear the store by itself. */
async function askToKeep({ fleet }: Bench): Promise<void> {
  if (fleet.get().promised !== null || typeof navigator.storage?.persist !== 'function') return;
  fleet.api.setState({ promised: false });
  const promised = await navigator.storage.persist().catch(() => false);
  fleet.api.setState({ promised });
}

/** Gives an aircraft's slots back where they hold nothing but what is kept elsewhere. */
function clearIf(slots: Autosave, text: string): void {
  if (slots.latest() === text) slots.clear();
}

/**
 * Where the slots have no room for what is on the bench but the fleet has it, their older copy goes: the next start would
 * begin with it.
 */
function dropStale({ bench, keeping, autosaveOf }: FleetParts, text: string): void {
  keeping.flush();
  const { fleetId, committed } = bench.document.api.getState();
  if (!keeping.keeps() || !keeping.unkept() || writeAircraft(committed) !== text) return;
  autosaveOf(fleetId).clear();
  keeping.flush();
}

type SweepParts = Pick<FleetParts, 'storage' | 'locks' | 'autosaveOf' | 'bench'>;

/** Brings what closed tabs left in their slots into the fleet, and forgets what was deleted long ago. */
async function sweep(fleet: Fleet, inStep: FleetKeeping, parts: SweepParts): Promise<void> {
  const here = parts.bench.document.api.getState().fleetId;
  for (const fleetId of placesIn(parts.storage)) {
    if (fleetId === here) continue;
    await ifNobodyHas(parts.locks, fleetId, () => bringIn(fleet, fleetId, parts));
  }
  for (const { id, deletedAtMs } of await fleet.cards())
    if (deletedAtMs !== null && Date.now() - deletedAtMs > DELETED_DAYS * DAY_MS)
      await ifNobodyHas(parts.locks, id, () => fleet.forget(id));
  await inStep.refresh();
}

async function bringIn(fleet: Fleet, fleetId: string, { storage, autosaveOf }: SweepParts): Promise<void> {
  const slots = autosaveOf(fleetId);
  const restored = slots.restore();
  if (restored.kind === 'damaged') {
    if (putAside(storage, restored.text, 'What the browser kept of an aircraft could not be read.'))
      slots.clear();
    return;
  }
  if (restored.kind !== 'restored') return;
  const { aircraft, damaged } = restored;
  const latest = slots.latest() ?? '';
  if (damaged && !putAside(storage, latest, 'The copy of an aircraft that was kept last could not be read.'))
    return;
  const text = damaged ? writeAircraft(aircraft) : latest;
  const kept = await fleet.read(fleetId);
  const isThere = kept ? kept.text === text : await hasAlike(fleet, text);
  if (!isThere) {
    const before = (await fleet.cards()).find(({ id }) => id === fleetId);
    const card = cardOf(fleetId, aircraft, text, { tone: null, changedAtMs: Date.now() });
    await fleet.put({
      card: { ...card, deletedAtMs: before?.deletedAtMs ?? null },
      text,
      history: kept?.history ?? null,
      seen: null,
    });
  }
  clearIf(slots, latest);
}

/** Whether the fleet has the very same aircraft in another place, where an opening of it ended. */
async function hasAlike(fleet: Fleet, text: string): Promise<boolean> {
  const digest = textDigest(text);
  const alike = (await fleet.cards()).filter((card) => card.digest === digest && card.deletedAtMs === null);
  for (const { id } of alike) if ((await fleet.read(id))?.text === text) return true;
  return false;
}

function placesIn(storage: TextStorage): readonly string[] {
  try {
    return placesInSlots(storage);
  } catch {
    return [];
  }
}
