import { afterEach, describe, expect, test, vi } from 'vitest';
import { createBench } from '../../src/store/bench';
import { createCalmStore } from '../../src/store/calmStore';
import { aircraftOf, boxPart } from '../model/aircraft';

afterEach(() => vi.unstubAllGlobals());

const plane = aircraftOf([], [boxPart('pack', 300, [100, 0, 0])]);

describe('a balance that cannot be worked out', () => {
  test('leaves no old figure, says on what it failed, and is mended by undo', () => {
    const { document, balance } = createBench(plane);
    expect(balance.get().massG).toBe(300);
    document.commit('Break it', { ...plane, parts: null as never, name: 'Snipe' });
    expect(balance.get()).toMatchObject({ massG: 0, cgMm: null, travel: [], bodies: [] });
    expect(balance.fault()).toMatch(/^The balance of Snipe could not be worked out: .+\.$/);
    document.undo();
    expect([balance.get().massG, balance.fault()]).toEqual([300, null]);
  });

  test('retry works it out anew and tells who listens', () => {
    const { balance } = createBench(plane);
    const before = balance.get();
    const heard = vi.fn();
    const off = balance.subscribe(heard);
    balance.retry();
    off();
    balance.retry();
    expect(heard).toHaveBeenCalledTimes(1);
    expect(balance.get()).not.toBe(before);
  });
});

test('a listener that throws is reported, and the others still hear of the change', async () => {
  const reported = vi.fn();
  vi.stubGlobal('reportError', reported);
  const store = createCalmStore(() => ({ n: 0 }));
  const heard: number[] = [];
  store.subscribe(() => {
    throw new Error('broken');
  });
  store.subscribe(({ n }) => heard.push(n));
  store.setState({ n: 1 });
  expect(heard).toEqual([1]);
  expect(reported).toHaveBeenCalledWith(expect.objectContaining({ message: 'broken' }));
});
