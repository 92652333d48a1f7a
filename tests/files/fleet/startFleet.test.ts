import 'fake-indexeddb/auto';
import { IDBFactory } from 'fake-indexeddb';
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { listAside } from '../../../src/files/aside';
import { type Autosave, createAutosave, placesInSlots } from '../../../src/files/autosave';
import type { FilePickers } from '../../../src/files/filePickers';
import { startFleet } from '../../../src/files/fleet/startFleet';
import { createKeeping } from '../../../src/files/keeping';
import { oneTab, type TabLocks } from '../../../src/files/oneTab';
import { blankAircraft } from '../../../src/model/document/blank';
import { addPart, updatePart } from '../../../src/model/document/edit';
import type { Aircraft } from '../../../src/model/document/types';
import { writeAircraft } from '../../../src/model/document/write';
import { createBench } from '../../../src/store/bench';
import { boxPart } from '../../model/aircraft';
import { browserLocks } from '../browserLocks';
import { mapStorage } from '../mapStorage';

const named = (name: string): Aircraft =>
  addPart({ ...blankAircraft(), name }, boxPart('pack', 200, [300, 0, 0])).aircraft;
const soon = () => new Promise((done) => setTimeout(done, 5));
const pickers: FilePickers = { chooseFile: async () => null, download: () => {} };

beforeEach(() => {
  vi.stubGlobal('indexedDB', new IDBFactory());
  vi.stubGlobal('BroadcastChannel', undefined);
  vi.stubGlobal('navigator', {});
});
afterEach(() => {
  vi.unstubAllGlobals();
});

interface PageParts {
  readonly storage: ReturnType<typeof mapStorage>;
  readonly locks: TabLocks | null;
  readonly aircraft?: Aircraft;
  readonly fleetId?: string;
  readonly wanted?: string;
}

/** A page with a bench that is kept, as the page itself puts it together. */
async function page({ storage, locks, aircraft, fleetId, wanted }: PageParts) {
  const bench = createBench(aircraft ?? named('Fresh'), {}, fleetId);
  const { document, notice } = bench;
  const autosaves = new Map<string, Autosave>();
  const autosaveOf = (id: string) => {
    const autosave = autosaves.get(id) ?? createAutosave(storage, id);
    autosaves.set(id, autosave);
    return autosave;
  };
  const keeping = createKeeping({ document, notice, autosaveOf });
  let arrived: (late: boolean) => void = () => {};
  const tabs = oneTab(locks, null, {
    keeps: (late) => {
      keeping.begin(late);
      arrived(late);
    },
    waits: keeping.wait,
    gives: keeping.flush,
    company: () => {},
  });
  const here = () => document.api.getState().fleetId;
  document.api.subscribe((now, before) => {
    if (now.fleetId !== before.fleetId) tabs.goTo(now.fleetId);
  });
  tabs.goTo(here());
  await soon();
  const fleet = startFleet({
    bench,
    keeping,
    pickers,
    storage,
    locks,
    autosaveOf,
    wanted: wanted ?? null,
    comesAfresh: aircraft === undefined,
    bringsIn: true,
    save: () => {},
  });
  arrived = fleet.arrived;
  const settle = async () => {
    for (let turn = 0; turn < 3; turn++) {
      await fleet.settle();
      await soon();
    }
  };
  await settle();
  const close = async () => {
    keeping.flush();
    await settle();
    tabs.leave();
    await soon();
  };
  const cards = () =>
    bench.fleet
      .get()
      .cards.map(({ name }) => name)
      .sort();
  return { bench, document, fleet, settle, close, cards, here };
}

const browsers = [
  ['with locks', () => browserLocks().locks],
  ['without locks', () => null],
] as const;

test.each(browsers)('what was opened twice is one, also after the next start, %s', async (_, locksOf) => {
  const [storage, locks] = [mapStorage(), locksOf()];
  const first = await page({ storage, locks });
  for (const name of ['Knot', 'Ruff', 'Knot']) {
    first.document.replace(named(name));
    await first.settle();
  }
  expect(first.cards()).toEqual(['Knot', 'Ruff']);
  await first.close();
  const second = await page({ storage, locks });
  expect(second.cards()).toEqual(['Knot', 'Ruff']);
  // What is in the fleet and on no bench needs no slots.
  expect(placesInSlots(storage).filter((place) => place !== second.here())).toEqual([]);
});

test('one that was deleted and stands on the bench is in the fleet again', async () => {
  const [storage, locks] = [mapStorage(), browserLocks().locks];
  const first = await page({ storage, locks });
  first.document.replace(named('Knot'));
  await first.settle();
  const knot = first.here();
  first.document.replace(named('Ruff'));
  await first.settle();
  expect(await first.fleet.actions.remove(knot)).toBeNull();
  await first.close();
  const second = await page({ storage, locks, aircraft: named('Knot'), fleetId: knot });
  await second.settle();
  expect(second.bench.fleet.get().cards.find(({ id }) => id === knot)?.deletedAtMs).toBeNull();
});

test('one that was deleted after its tab was closed does not come back at the next start', async () => {
  const [storage, locks] = [mapStorage(), browserLocks().locks];
  const first = await page({ storage, locks });
  first.document.replace(named('Knot'));
  await first.settle();
  const knot = first.here();
  await first.close();
  const second = await page({ storage, locks });
  createAutosave(storage, knot).save(named('Knot'));
  expect(await second.fleet.actions.remove(knot)).toBeNull();
  expect(createAutosave(storage, knot).restore().kind).toBe('nothing');
  await second.close();
  const third = await page({ storage, locks, wanted: knot });
  expect(third.document.current().name).toBe('Fresh');
  expect(third.cards()).toEqual(['Knot']);
});

test('what a later version left in the slots is not lost by what is done with the aircraft in the fleet', async () => {
  const [storage, locks] = [mapStorage(), browserLocks().locks];
  const first = await page({ storage, locks });
  first.document.replace(named('Knot'));
  await first.settle();
  const knot = first.here();
  await first.close();
  const second = await page({ storage, locks });
  const later = JSON.stringify({ ...named('Knot'), version: 99 });
  storage.setItem(`counterpoise.autosave.${knot}.a`, later);
  await second.fleet.actions.rename(knot, 'Red Knot');
  await second.fleet.actions.open(knot);
  await second.settle();
  second.document.commit('Rename', named('Great Knot'));
  await second.close();
  expect([...storage.map.values()].some((text) => text.includes('"version":99'))).toBe(true);
});

test('of two copies in the slots the one that reads comes into the fleet, the other is put aside', async () => {
  const [storage, locks] = [mapStorage(), browserLocks().locks];
  const slots = createAutosave(storage, 'knot');
  slots.save(named('Knot'));
  slots.save(named('Red Knot'));
  storage.setItem('counterpoise.autosave.knot.b', '{"format":');
  const made = await page({ storage, locks });
  expect(made.cards()).toEqual(['Knot']);
  expect(await made.fleet.actions.open('knot')).toBeNull();
  expect(made.document.current().name).toBe('Knot');
  expect(listAside(storage).map(({ text }) => text)).toEqual(['{"format":']);
});

test('where the slots have no room the next start has what the fleet has, not an older copy', async () => {
  const long = (mark: string) => ({ ...named('Knot'), notes: mark.repeat(400) });
  // Room for one copy and a half.
  const [storage, locks] = [mapStorage(1.5 * writeAircraft(long('a')).length), browserLocks().locks];
  const first = await page({ storage, locks });
  first.document.replace(long('a'));
  await first.settle();
  const knot = first.here();
  first.document.commit('Weigh', updatePart({ ...long('b') }, 'pack', { massG: 250 }));
  await first.close();
  const slots = createAutosave(storage, knot).restore();
  const kept = slots.kind === 'restored' ? slots.aircraft : null;
  expect(kept === null || kept.notes.startsWith('b')).toBe(true);
  const second = await page(
    kept ? { storage, locks, aircraft: kept, fleetId: knot } : { storage, locks, wanted: knot },
  );
  expect(second.document.current().notes.startsWith('b')).toBe(true);
});

test('what came by a link meanwhile is not covered by what the last visit had', async () => {
  const [storage, locks] = [mapStorage(), browserLocks().locks];
  const first = await page({ storage, locks });
  first.document.replace(named('Knot'));
  await first.settle();
  const knot = first.here();
  await first.close();
  const second = await page({ storage, locks });
  const opening = second.fleet.actions.open(knot, () => second.document.api.getState().past.length === 0);
  second.document.replace(named('Dunlin'), 'Open a link');
  await opening;
  expect(second.document.current().name).toBe('Dunlin');
});
