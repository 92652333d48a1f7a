import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { createAutosave, placesInSlots } from '../../src/files/autosave';
import { createKeeping } from '../../src/files/keeping';
import type { TextStorage } from '../../src/files/storage';
import { blankAircraft } from '../../src/model/document/blank';
import { createDocumentStore } from '../../src/store/documentStore';
import { createNoticeStore } from '../../src/store/noticeStore';
import { mapStorage } from './mapStorage';

const named = (name: string) => ({ ...blankAircraft(), name });

const nameIn = (storage: TextStorage, fleetId: string) => {
  const restored = createAutosave(storage, fleetId).restore();
  return restored.kind === 'restored' ? restored.aircraft.name : restored.kind;
};

function table(storage = mapStorage(), name = 'Knot') {
  const document = createDocumentStore(named(name), 'knot');
  const notice = createNoticeStore();
  const keeping = createKeeping({
    document,
    notice,
    autosaveOf: (fleetId) => createAutosave(storage, fleetId),
  });
  const here = () => document.api.getState().fleetId;
  const said = () => notice.api.getState().notices.map(({ about }) => about);
  return { document, notice, keeping, storage, here, keptName: () => nameIn(storage, here()), said };
}

beforeEach(() => {
  vi.useFakeTimers();
});
afterEach(() => {
  vi.useRealTimers();
});

describe('keeping the work', () => {
  test('under edits that never rest it is never a second behind', () => {
    const { document, keeping, keptName } = table();
    keeping.begin(false);
    for (let edit = 0; edit < 200; edit++) {
      document.commit('Rename', named(`edit ${edit}`));
      vi.advanceTimersByTime(60);
      // Sixteen edits of 60 ms each are within the second.
      const kept = /edit (\d+)/.exec(keptName())?.[1];
      if (edit >= 16) expect(Number(kept)).toBeGreaterThanOrEqual(edit - 16);
    }
  });

  test('it is kept soon after the last edit, and at once when asked', () => {
    const { document, keeping, keptName } = table();
    keeping.begin(false);
    document.commit('Rename', named('Ruff'));
    expect(keeping.unkept()).toBe(true);
    keeping.flush();
    expect([keptName(), keeping.unkept()]).toEqual(['Ruff', false]);
    document.commit('Rename', named('Snipe'));
    vi.advanceTimersByTime(1000);
    expect(keptName()).toBe('Snipe');
  });

  test('what cannot be kept is told and counts as unkept, until it can', () => {
    const storage = mapStorage(10);
    const { document, keeping, said } = table(storage);
    keeping.begin(false);
    document.commit('Rename', named('Ruff'));
    vi.advanceTimersByTime(1000);
    expect([said(), keeping.unkept()]).toEqual([['autosave'], true]);
  });
});

describe('each aircraft in its own place', () => {
  test('what comes onto the bench writes over nothing, and undo goes on in the place that it came from', () => {
    const { document, keeping, storage, here } = table();
    keeping.begin(false);
    document.commit('Rename', named('Red Knot'));
    // Before the edit has been kept.
    document.replace(named('Ruff'));
    const ruff = here();
    keeping.begin(false);
    expect([nameIn(storage, 'knot'), nameIn(storage, ruff)]).toEqual(['Red Knot', 'Ruff']);
    document.undo();
    keeping.begin(false);
    document.commit('Rename', named('Great Knot'));
    keeping.flush();
    expect([here(), nameIn(storage, 'knot'), nameIn(storage, ruff)]).toEqual(['knot', 'Great Knot', 'Ruff']);
    expect([...placesInSlots(storage)].sort()).toEqual(['knot', ruff].sort());
  });

  test('what undo brings back is a copy of its own when another tab has gone on with it', () => {
    const { document, keeping, storage, here, said } = table();
    keeping.begin(false);
    document.commit('Rename', named('Red Knot'));
    document.replace(named('Ruff'));
    keeping.begin(false);
    createAutosave(storage, 'knot').save(named('Great Knot'));
    document.undo();
    keeping.begin(false);
    expect(here()).not.toBe('knot');
    expect(said()).toContain('copy');
    keeping.begin(false);
    expect([nameIn(storage, 'knot'), nameIn(storage, here())]).toEqual(['Great Knot', 'Red Knot']);
  });
});

describe('two tabs with one aircraft', () => {
  const pair = () => {
    const storage = mapStorage();
    const [first, second] = [table(storage), table(storage)];
    first.keeping.begin(false);
    second.keeping.wait();
    return { storage, first, second };
  };

  test('the one that waits follows, without a step of its own', () => {
    const { first, second } = pair();
    first.document.commit('Rename', named('Red Knot'));
    vi.advanceTimersByTime(1000);
    second.keeping.followed();
    expect(second.document.current().name).toBe('Red Knot');
    expect(second.document.api.getState().past).toEqual([]);
    expect(second.keeping.unkept()).toBe(false);
  });

  test('an edit in the one that waits is a copy of its own, and the shared one stays as it is', () => {
    const { storage, first, second } = pair();
    first.document.commit('Rename', named('Red Knot'));
    vi.advanceTimersByTime(1000);
    second.keeping.followed();
    second.document.commit('Rename', named('Snipe'));
    expect(second.here()).not.toBe('knot');
    second.keeping.begin(false);
    expect([nameIn(storage, 'knot'), nameIn(storage, second.here())]).toEqual(['Red Knot', 'Snipe']);
    expect(second.said()).toContain('copy');
  });

  test('editing in turn for 200 rounds loses no edit', () => {
    const { storage, first, second } = pair();
    const tabs = [first, second];
    for (let round = 0; round < 200; round++) {
      const [gives, takes] = [tabs[round % 2]!, tabs[(round + 1) % 2]!];
      gives.document.commit('Add', {
        ...gives.document.current(),
        notes: `${gives.document.current().notes}${round}\n`,
      });
      // As the tabs agree: what is not kept yet is kept before the lock is given.
      gives.keeping.flush();
      gives.keeping.wait();
      takes.keeping.begin(true);
    }
    const restored = createAutosave(storage, 'knot').restore();
    const notes = restored.kind === 'restored' ? restored.aircraft.notes : '';
    expect(notes.trim().split('\n')).toEqual(Array.from({ length: 200 }, (_, round) => `${round}`));
    expect(placesInSlots(storage)).toEqual(['knot']);
  });

  test('a tab whose aircraft was taken while it had unkept edits keeps them as a copy', () => {
    const { storage, first, second } = pair();
    first.document.commit('Rename', named('Red Knot'));
    second.keeping.begin(true);
    first.keeping.wait();
    expect(first.here()).not.toBe('knot');
    first.keeping.begin(false);
    expect(nameIn(storage, first.here())).toBe('Red Knot');
  });
});
