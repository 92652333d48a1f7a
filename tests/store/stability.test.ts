import { describe, expect, test } from 'vitest';
import { movedStructure, placeItem } from '../../src/model/document/edit';
import type { Aircraft, StructurePiece } from '../../src/model/document/types';
import {
  changeStability,
  type StabilityAnswer,
  type StabilityDetail,
  type StabilityEstimate,
  type StabilityInput,
  stabilityInput,
} from '../../src/model/stability/stability';
import { createBench } from '../../src/store/bench';
import { aircraftOf, boxPart, weightlessWing } from '../model/aircraft';

const wing: StructurePiece = { ...weightlessWing, mass: { by: 'weighed', massG: 500 } };
const plane = aircraftOf([wing], [boxPart('pack', 300, [520, 0, 0])]);
const wingAt = (stationMm: number, aircraft: Aircraft = plane): Aircraft => ({
  ...aircraft,
  structure: [movedStructure(wing, [stationMm - 500, 0, 0])],
});
const answerAt = (neutralPointMm: number, detail: StabilityDetail): StabilityEstimate => ({
  neutralPointMm,
  macMm: 200,
  lemacMm: 500,
  macButtlineMm: 300,
  pctMac: 25,
  clAlphaPerRad: 5,
  fuselageShiftMm: 0,
  refinedBy: null,
  unknowns: 1,
  converged: true,
  detail,
  textbookMm: null,
  textbookDiffers: false,
  strips: [],
  neutralPointSigmaMm: 4,
  doubts: [],
  notes: [],
});

/** A bench whose estimates are given by hand: at the wing's leading edge, 50 mm aft. */
function handBench() {
  const bench = createBench(plane);
  const asks: {
    input: StabilityInput;
    detail: StabilityDetail;
    settle: (answer?: StabilityAnswer | Error) => Promise<void>;
  }[] = [];
  let inFlight = 0;
  let mostInFlight = 0;
  const start = () =>
    bench.stability.start((input, detail) => {
      mostInFlight = Math.max(mostInFlight, ++inFlight);
      return new Promise((resolve, reject) => {
        const settle = async (answer?: StabilityAnswer | Error) => {
          inFlight -= 1;
          const own = answerAt((input.surfaces[0]?.rootMm[0] ?? 0) + 50, detail);
          if (answer instanceof Error) reject(answer);
          else resolve(answer === undefined ? own : answer);
          for (let turn = 0; turn < 6; turn++) await Promise.resolve();
        };
        asks.push({ input, detail, settle });
      });
    });
  const shown = () => {
    const { estimate, fresh } = bench.stability.get();
    return { at: estimate?.neutralPointMm ?? null, detail: estimate?.detail ?? null, fresh };
  };
  return { ...bench, asks, start, shown, mostInFlight: () => mostInFlight };
}

describe('the estimate on the bench', () => {
  test('is asked for once started, fine at rest', async () => {
    const { asks, start, shown } = handBench();
    expect(shown()).toEqual({ at: null, detail: null, fresh: false });
    expect(asks).toHaveLength(0);
    start();
    expect(asks.map(({ detail }) => detail)).toEqual(['fine']);
    await asks[0]?.settle();
    expect(shown()).toEqual({ at: 550, detail: 'fine', fresh: true });
    expect(asks).toHaveLength(1);
  });

  test('is coarse while the structure is dragged and fine once it is set down', async () => {
    const { document, asks, start, shown } = handBench();
    start();
    await asks[0]?.settle();
    document.preview(wingAt(510));
    expect(shown()).toEqual({ at: 550, detail: 'fine', fresh: false });
    await asks[1]?.settle();
    expect(shown()).toEqual({ at: 560, detail: 'coarse', fresh: true });
    document.commitPreview('Move the wing');
    expect(shown()).toEqual({ at: 560, detail: 'coarse', fresh: true });
    await asks[2]?.settle();
    expect(shown()).toEqual({ at: 560, detail: 'fine', fresh: true });
    expect(asks.map(({ detail }) => detail)).toEqual(['fine', 'coarse', 'fine']);
  });

  test('has one question in flight, and the next is the latest, not every one between', async () => {
    const { document, asks, start, shown, mostInFlight } = handBench();
    start();
    await asks[0]?.settle();
    for (let x = 501; x <= 540; x++) document.preview(wingAt(x));
    expect(asks).toHaveLength(2);
    await asks[1]?.settle();
    expect(shown()).toEqual({ at: 551, detail: 'coarse', fresh: false });
    await asks[2]?.settle();
    expect(shown()).toEqual({ at: 590, detail: 'coarse', fresh: true });
    expect(asks).toHaveLength(3);
    expect(mostInFlight()).toBe(1);
  });

  test('drops an answer that came too late: the drag was given up', async () => {
    const { document, asks, start, shown } = handBench();
    start();
    await asks[0]?.settle();
    document.preview(wingAt(510));
    document.cancel();
    // The aircraft as committed was estimated before; nobody has to work it out again.
    expect(shown()).toEqual({ at: 550, detail: 'fine', fresh: true });
    await asks[1]?.settle();
    expect(shown()).toEqual({ at: 550, detail: 'fine', fresh: true });
    expect(asks).toHaveLength(2);
  });

  test('drops an answer for an aircraft that has left the bench, and shows none of its figures', async () => {
    const { document, asks, start, shown } = handBench();
    start();
    await asks[0]?.settle();
    document.preview(wingAt(510));
    document.replace(wingAt(900, { ...plane, name: 'Another' }));
    expect(shown()).toEqual({ at: null, detail: null, fresh: false });
    document.preview(wingAt(910));
    await asks[1]?.settle();
    expect(shown()).toEqual({ at: null, detail: null, fresh: false });
    await asks[2]?.settle();
    expect(shown()).toEqual({ at: 960, detail: 'coarse', fresh: true });
  });

  test('is not asked for when a pack is dragged or a margin typed, but when the fuselage is switched', async () => {
    const { document, asks, start, shown } = handBench();
    start();
    await asks[0]?.settle();
    document.preview(placeItem(plane, 'pack', [300, 0, 0]));
    document.commitPreview('Move the pack');
    document.commit('Margin', changeStability(document.current(), { marginRange: { minPct: 5, maxPct: 9 } }));
    expect(shown().fresh).toBe(true);
    expect(asks).toHaveLength(1);
    document.commit('Fuselage', changeStability(document.current(), { fuselage: false }));
    expect(shown().fresh).toBe(false);
    expect(asks[1]?.input).toBe(stabilityInput(document.current()));
  });

  test('says why there is none, asks no second time, and recovers with the next structure', async () => {
    const { document, stability, asks, start, shown } = handBench();
    start();
    await asks[0]?.settle(new Error('the worker stopped'));
    expect(stability.get()).toEqual({
      estimate: null,
      fresh: true,
      fault: 'the worker stopped',
      mayRetry: true,
    });
    expect(asks).toHaveLength(1);
    stability.retry();
    expect([stability.get().fresh, asks.length]).toEqual([false, 2]);
    await asks[1]?.settle(new Error('the worker stopped'));
    document.commit('Move the wing', wingAt(520));
    await asks[2]?.settle();
    expect(shown()).toEqual({ at: 570, detail: 'fine', fresh: true });
    expect(stability.get().fault).toBe(null);
  });

  test('impossible geometry in mid-drag stops nothing', async () => {
    const { document, balance, stability, asks, start } = handBench();
    start();
    await asks[0]?.settle();
    const crossed = movedStructure(wing, [0, -40, 0]);
    document.preview({ ...plane, structure: [crossed, { ...crossed, id: 'second' }] });
    expect(balance.get().massG).toBeGreaterThan(0);
    await asks[1]?.settle({ fault: 'The root lies left.' });
    expect(stability.get()).toEqual({
      estimate: null,
      fresh: true,
      fault: 'The root lies left.',
      mayRetry: false,
    });
    stability.retry();
    expect(asks).toHaveLength(2);
  });

  test('reaches the balance: band, fit and margin follow when it arrives, and nobody sees it stale as fresh', async () => {
    const { document, balance, asks, start } = handBench();
    document.commit('Margin', changeStability(plane, { marginRange: { minPct: 5, maxPct: 15 } }));
    let calls = 0;
    const seen: boolean[] = [];
    balance.subscribe(() => {
      calls += 1;
      const { estimate, estimateFresh } = balance.get();
      const ownWing = stabilityInput(document.current()).surfaces[0]?.rootMm[0] ?? 0;
      if (estimateFresh) seen.push(estimate?.neutralPointMm === ownWing + 50);
    });
    expect(balance.get().band).toBe(null);
    start();
    await asks[0]?.settle();
    expect(calls).toBeGreaterThan(0);
    expect(balance.get().band).toEqual({ forwardMm: 520, aftMm: 540 });
    expect(balance.get().margin?.nowPct).toBeCloseTo((550 - (balance.get().cgMm?.[0] ?? NaN)) / 2, 9);
    document.preview(wingAt(530, document.current()));
    expect(balance.get().estimateFresh).toBe(false);
    await asks[1]?.settle();
    expect(balance.get()).toMatchObject({ estimateFresh: true, band: { forwardMm: 550, aftMm: 570 } });
    expect(seen.length).toBeGreaterThan(0);
    expect(seen.every(Boolean)).toBe(true);
  });
});
