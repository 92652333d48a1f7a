import { afterAll, beforeAll, expect, test } from 'vitest';
import { blankAircraft } from '../../src/model/document/blank';
import type { Aircraft, Part, StructurePiece, TankItem } from '../../src/model/document/types';
import { readAircraft } from '../../src/model/reading/read';
import { type Bench, openBench, put, walk } from './harness';

// The harness asks the same after every test: no complaint on the console, no figure on the page that is none.
let bench: Bench;
beforeAll(async () => {
  bench = await openBench({ width: 1120, height: 640, graphics: 'unpainted' });
  await bench.page.waitForSelector('[data-testid=stage] canvas');
});
afterAll(() => bench.close());

const level = { yawDeg: 0, pitchDeg: 0, rollDeg: 0 } as const;

const part = (massG: number, sizeMm: number, stationMm = 0): Part => ({
  id: 'pack',
  name: 'Pack',
  role: 'energy',
  shape: { kind: 'box', lengthMm: sizeMm, widthMm: sizeMm, heightMm: sizeMm },
  massG,
  positionMm: [stationMm, 0, 0],
  ...level,
});

const tank = (sizeMm: number, change: Partial<TankItem> = {}): TankItem => ({
  id: 'tank',
  name: 'Tank',
  shape: { kind: 'box', lengthMm: sizeMm, widthMm: sizeMm, heightMm: sizeMm },
  positionMm: [100, 0, 0],
  ...level,
  emptyMassG: 0,
  startMl: null,
  unusableMl: 0,
  feeds: 'outlet',
  rank: 1,
  ...change,
});

const pod = (sizeMm: number): StructurePiece => ({
  id: 'pod',
  kind: 'fuselage',
  name: 'Pod',
  sides: 'centre',
  buttlineMm: 0,
  sections: [0, 100].map((stationMm) => ({
    stationMm,
    widthMm: sizeMm,
    heightMm: sizeMm,
    waterlineMm: 0,
    roundness: 0.5,
  })),
  skinMm: 0,
  mass: { by: 'skin', gPerM2: 0 },
});

const petrol: NonNullable<Aircraft['fuel']> = {
  kind: 'petrol',
  name: 'Petrol',
  densityGPerMl: 0.74,
  use: 'burn',
  share: 'volume',
  flow: { idleMlPerMin: 0, fullMlPerMin: 20 },
  profile: { name: 'Idle', phases: [{ name: 'Idle', durationS: 60, throttlePct: 0 }] },
  reservePct: 0,
};

const blank = blankAircraft();

test.each<[string, Partial<Aircraft>]>([
  ['nothing at all', {}],
  ['a band, and nothing in it', { targetBand: { by: 'station', forwardMm: 40, aftMm: 60 } }],
  ['one part without mass', { parts: [part(0, 20)] }],
  ['one part that is a speck', { parts: [part(5, 0.001)] }],
  ['one part on the datum', { parts: [part(10, 20)] }],
  ['only a tank, full to the brim', { tanks: [tank(40)], fuel: petrol }],
  ['a tank that is a speck', { tanks: [tank(0.001)], fuel: petrol, parts: [part(10, 20)] }],
  [
    'a tank of which nothing can be used',
    { tanks: [tank(40, { unusableMl: 64 })], fuel: petrol, parts: [part(10, 20)] },
  ],
  ['a tank with nothing in it', { tanks: [tank(40, { startMl: 0 })], fuel: petrol, parts: [part(10, 20)] }],
  ['fuel and no tank', { fuel: petrol, parts: [part(10, 20)] }],
  ['a hull of next to no size', { structure: [pod(0.001)], parts: [part(10, 20)] }],
  ['a hull without mass, and nothing in it', { structure: [pod(60)] }],
])('%s: every place can be walked', async (_what, aboard) => {
  const aircraft: Aircraft = { ...blank, ...aboard };
  expect(readAircraft(structuredClone(aircraft))).toMatchObject({ ok: true });
  await put(bench.page, aircraft);
  expect(await walk(bench.page)).toEqual([]);
});

test('from there undo leads back to the aircraft that was on the bench first', async () => {
  const { page } = bench;
  await page.evaluate(() => {
    const { document } = window.counterpoise;
    while (document.api.getState().past.length > 0) document.undo();
  });
  expect(await page.evaluate(() => window.counterpoise.document.current().name)).toBe('Sandmartin');
});
