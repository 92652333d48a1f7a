import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { listAside } from '../../src/files/aside';
import { createAutosave } from '../../src/files/autosave';
import { createKeeping } from '../../src/files/keeping';
import { blankAircraft } from '../../src/model/document/blank';
import { writeAircraft } from '../../src/model/document/write';
import { createDocumentStore } from '../../src/store/documentStore';
import { createNoticeStore } from '../../src/store/noticeStore';
import { mapStorage } from './mapStorage';

const named = (name: string) => ({ ...blankAircraft(), name });

function table(storage = mapStorage()) {
  const document = createDocumentStore(named('Knot'));
  const notice = createNoticeStore();
  const autosave = createAutosave(storage);
  const keeping = createKeeping(document, autosave, notice, storage);
  const keptName = () => {
    const restored = createAutosave(storage).restore();
    return restored.kind === 'restored' ? restored.aircraft.name : restored.kind;
  };
  const said = () => notice.api.getState().notices.map(({ about }) => about);
  return { document, notice, keeping, storage, keptName, said };
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

  test('while another tab keeps the work nothing is written; taking over puts that tab’s copy aside', () => {
    const storage = mapStorage();
    createAutosave(storage).save(named('Sanderling'));
    const { document, keeping, keptName } = table(storage);
    document.commit('Rename', named('Ruff'));
    vi.advanceTimersByTime(2000);
    expect([keptName(), keeping.unkept()]).toEqual(['Sanderling', true]);
    keeping.begin(true);
    expect(keptName()).toBe('Ruff');
    expect(listAside(storage).map(({ text }) => text)).toEqual([writeAircraft(named('Sanderling'))]);
  });

  test('taking over overwrites nothing that cannot be put aside first', () => {
    const storage = mapStorage(writeAircraft(named('Sanderling')).length + 120);
    createAutosave(storage).save(named('Sanderling'));
    const { document, keeping, keptName, said } = table(storage);
    document.commit('Rename', named('Ruff'));
    keeping.begin(true);
    expect([keptName(), said(), keeping.unkept()]).toEqual(['Sanderling', ['autosave'], true]);
  });
});
