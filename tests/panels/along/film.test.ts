import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { filmed } from '../../../src/panels/along/film';
import { createBench } from '../../../src/store/bench';
import type { Pictures } from '../../../src/store/pictures';
import { aircraftOf } from '../../model/aircraft';

/** A recorder as the standard has it: its data come before it says that it has stopped (MediaStream Recording, W3C). */
class Recorder {
  static last: Recorder;
  static gives = new Blob(['film']);
  static isTypeSupported = () => true;
  state = 'inactive';
  ondataavailable: ((event: { data: Blob }) => void) | null = null;
  onstop: (() => void) | null = null;
  onerror: (() => void) | null = null;
  constructor() {
    Recorder.last = this;
  }
  start() {
    this.state = 'recording';
  }
  stop() {
    this.state = 'inactive';
    queueMicrotask(() => {
      this.ondataavailable?.({ data: Recorder.gives });
      this.onstop?.();
    });
  }
  breakOff() {
    this.onerror?.();
    this.stop();
  }
}

let paints: number;
let drawsUntilMs: number;
const bench = () => {
  const made = createBench(aircraftOf([], []));
  const canvas = { captureStream: () => ({ getTracks: () => [] }) };
  const pictures: Pick<Pictures, 'paint'> & { canvas: unknown } = { paint: () => void paints++, canvas };
  made.pictures.serve(pictures as Pictures);
  return made;
};
const still = (ms: number) => () => new Promise<void>((resolve) => setTimeout(resolve, ms));

beforeEach(() => {
  paints = 0;
  Recorder.gives = new Blob(['film']);
  vi.useFakeTimers();
  vi.stubGlobal('MediaRecorder', Recorder);
  drawsUntilMs = Number.POSITIVE_INFINITY;
  // A screen of 60 pictures in a second, for as long as it is in sight.
  const beganMs = Date.now();
  const next = (then: () => void) =>
    setTimeout(() => Date.now() - beganMs < drawsUntilMs && then(), 1000 / 60);
  vi.stubGlobal('requestAnimationFrame', next);
  vi.stubGlobal('cancelAnimationFrame', clearTimeout);
});
afterEach(() => {
  vi.useRealTimers();
  vi.unstubAllGlobals();
});

describe('a film', () => {
  test('has pictures for as long as something is shown, though nothing moves on the stage', async () => {
    const film = filmed(bench(), still(4000));
    await vi.advanceTimersByTimeAsync(6000);
    expect(new TextDecoder().decode(await film)).toBe('film');
    // 30 pictures in a second, and some more so that the last is on it.
    expect(paints).toBeGreaterThan(4 * 30);
    const after = paints;
    await vi.advanceTimersByTimeAsync(1000);
    expect(paints).toBe(after);
  });

  test('with nothing in it is told, and nothing is saved', async () => {
    Recorder.gives = new Blob([]);
    const film = expect(filmed(bench(), still(100))).rejects.toThrow(/recorded nothing/);
    await vi.advanceTimersByTimeAsync(2000);
    await film;
  });

  test('of a window that is out of sight is told', async () => {
    drawsUntilMs = 75;
    const film = expect(filmed(bench(), still(3000))).rejects.toThrow(/in sight/);
    await vi.advanceTimersByTimeAsync(5000);
    await film;
  });

  test('that breaks off is told at once', async () => {
    const film = expect(filmed(bench(), still(1e6))).rejects.toThrow(/broke off/);
    await vi.advanceTimersByTimeAsync(500);
    Recorder.last.breakOff();
    await film;
    const after = paints;
    await vi.advanceTimersByTimeAsync(500);
    expect(paints).toBe(after);
  });

  test('without a stage is told', async () => {
    await expect(filmed(createBench(aircraftOf([], [])), still(1))).rejects.toThrow(/no picture/);
  });
});
