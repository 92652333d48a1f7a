import type { Aircraft, Part, TankItem } from '../../src/model/document/types';
import { changeStability } from '../../src/model/stability/stability';
import { type DemoName, partOf } from './demoAircraft';

/** A demo with a fault planted in it, and what must be said of it. */
export interface Broken {
  readonly demo: DemoName;
  readonly fault: string;
  readonly plant: (aircraft: Aircraft) => Aircraft;
  /** What the fault adds to the sum in every load state and fuel state: g, and g·mm about the datum along x and y. */
  readonly adds?: (aircraft: Aircraft) => {
    readonly massG: number;
    readonly xGmm: number;
    readonly yGmm: number;
  };
  readonly tone: 'danger' | 'bad' | 'caution' | 'unknown' | 'good';
  readonly headline: RegExp;
  readonly cause?: RegExp;
  /** What the label of the remedy must read like; null: none must be offered. */
  readonly fix?: RegExp | null;
  readonly facts?: Readonly<Record<string, RegExp>>;
}

type Change<T> = (item: T) => Partial<T>;
export const part =
  (id: string, change: Change<Part>) =>
  (aircraft: Aircraft): Aircraft => ({
    ...aircraft,
    parts: aircraft.parts.map((one) => (one.id === id ? { ...one, ...change(one) } : one)),
  });
export const tank =
  (id: string, change: Change<TankItem>) =>
  (aircraft: Aircraft): Aircraft => ({
    ...aircraft,
    tanks: aircraft.tanks.map((one) => (one.id === id ? { ...one, ...change(one) } : one)),
  });
export const shift =
  (id: string, x: number, y = 0, z = 0) =>
  (aircraft: Aircraft): Aircraft =>
    part(id, ({ positionMm: p }) => ({ positionMm: [p[0] + x, p[1] + y, p[2] + z] }))(aircraft);
export const mass = (id: string, massG: number) => part(id, () => ({ massG }));
export const gone =
  (id: string) =>
  (aircraft: Aircraft): Aircraft => ({
    ...aircraft,
    parts: aircraft.parts.filter((one) => one.id !== id),
    leads: (aircraft.leads ?? []).filter(({ from, to }) => from !== id && to !== id),
  });
export const both =
  (...plants: readonly ((aircraft: Aircraft) => Aircraft)[]) =>
  (aircraft: Aircraft): Aircraft =>
    plants.reduce((now, plant) => plant(now), aircraft);
export const band =
  (forwardMm: number, aftMm: number) =>
  (aircraft: Aircraft): Aircraft => ({ ...aircraft, targetBand: { by: 'station', forwardMm, aftMm } });
export const level = (aircraft: Aircraft): Aircraft => ({ ...aircraft, lateralToleranceMm: 0 });
export const unbanded = (aircraft: Aircraft): Aircraft => ({ ...aircraft, targetBand: null });
export const wanted = (minPct: number, maxPct: number) => (aircraft: Aircraft) =>
  changeStability(aircraft, { marginRange: { minPct, maxPct } });
export const lead =
  (massG: number, x: number, y: number, z: number, locked = true) =>
  (aircraft: Aircraft): Aircraft => ({
    ...aircraft,
    parts: [
      ...aircraft.parts,
      {
        id: 'planted',
        name: 'Planted lead',
        role: 'ballast',
        shape: { kind: 'box', lengthMm: 10, widthMm: 10, heightMm: 10 },
        massG,
        positionMm: [x, y, z],
        yawDeg: 0,
        pitchDeg: 0,
        rollDeg: 0,
        locked,
      },
    ],
  });
export const locked = (aircraft: Aircraft): Aircraft => ({
  ...aircraft,
  parts: aircraft.parts.map((one) => ({ ...one, locked: true })),
});

/** A part that comes (+) or goes (−) as heavy as it is, where it is. */
export const weight = (id: string, byG: (massG: number) => number) => (aircraft: Aircraft) => {
  const { massG, positionMm } = partOf(aircraft, id);
  const addedG = byG(massG);
  return { massG: addedG, xGmm: addedG * positionMm[0], yGmm: addedG * positionMm[1] };
};
export const moment =
  (ids: readonly string[], x: number, y = 0) =>
  (aircraft: Aircraft) => {
    const massG = ids.reduce((sum, id) => sum + partOf(aircraft, id).massG, 0);
    return { massG: 0, xGmm: massG * x, yGmm: massG * y };
  };
export const TO_MASS = (massG: number) => (was: number) => massG - was;
export const GONE = (was: number) => -was;

export const TAIL = /^Do not fly: tail-heavy by /;
export const NOSE = /^Nose-heavy by /;
