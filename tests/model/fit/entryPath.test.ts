import { describe, expect, test } from 'vitest';
import { itemById } from '../../../src/model/document/edit';
import type { Aircraft, Hatch, Surface } from '../../../src/model/document/types';
import { clearanceTest, entryPath, longestStepMm } from '../../../src/model/fit/entryPath';
import { fittingOrder } from '../../../src/model/fit/fittingOrder';
import { hatchCorners } from '../../../src/model/fit/hatchWalls';
import { demo } from '../../demo/demoAircraft';
import { benchOf, blockAt, box, partAt, squareHull } from './fitAircraft';

const hatch: Hatch = {
  id: 'hatch',
  name: 'Hatch',
  centreMm: [300, 0, 60],
  lengthMm: 160,
  widthMm: 80,
  normal: [0, 0, 1],
};

/** Every pose clear of all that is mounted, and none far from the one before. */
function verify(aircraft: Aircraft, itemId: string, hatchId: string): number {
  const path = entryPath(aircraft, itemId, hatchId);
  if (!path?.found) throw new Error(path?.sentence);
  const item = itemById(aircraft, itemId)!;
  const struck = clearanceTest(aircraft, item, aircraft.hatches!.find(({ id }) => id === hatchId)!);
  expect(path.poses.map(struck).filter(Boolean)).toEqual([]);
  expect(longestStepMm(item, path.poses)).toBeLessThan(2 + 1e-9);
  expect(path.poses.at(-1)?.positionMm).toEqual(item.positionMm);
  return path.poses.length;
}

describe('a pack ahead of the hatch, under the deck', () => {
  const aircraft = benchOf([squareHull], [partAt('pack', box(120, 50, 40), [120, 0, -30])], {
    hatches: [hatch],
  });

  test('goes in and forward, each step clear', () => {
    expect(verify(aircraft, 'pack', 'hatch')).toBeGreaterThan(100);
  });

  test('does not go through a hatch that is too small, and the words do not claim more than was tried', () => {
    const small = { ...aircraft, hatches: [{ ...hatch, lengthMm: 45, widthMm: 45 }] };
    const path = entryPath(small, 'pack', 'hatch', { budget: 1500 });
    expect(path).toMatchObject({ found: false, blockedBy: ['Hull'] });
    expect(path!.tried).toBeGreaterThan(1000);
    expect(path!.sentence).toMatch(/^No path found/);
    expect(path!.sentence).not.toMatch(/impossible/i);
  });

  test('a former across the hull behind it bars the way, and is named', () => {
    const former = blockAt('former', box(4, 114, 114), [200, 0, 0]);
    const barred = { ...aircraft, structure: [squareHull, former] };
    const path = entryPath(barred, 'pack', 'hatch', { budget: 1500 });
    expect(path).toMatchObject({ found: false });
    expect(!path?.found && path?.blockedBy).toContain('former');
  });

  test('the opening is where the hatch says', () => {
    expect(hatchCorners(hatch).map((corner) => corner.map(Math.round))).toEqual([
      [220, -40, 60],
      [380, -40, 60],
      [380, 40, 60],
      [220, 40, 60],
    ]);
    expect(entryPath(aircraft, 'pack', 'nowhere')).toBeNull();
  });
});

test('a pack under another goes in before it', () => {
  const parts = [
    partAt('lower', box(120, 70, 40), [300, 0, -36]),
    partAt('upper', box(150, 100, 30), [300, 0, 10]),
  ];
  const aircraft = benchOf([squareHull], parts, { hatches: [{ ...hatch, lengthMm: 200, widthMm: 110 }] });
  const { order, before, stuck } = fittingOrder(aircraft, { budget: 1000 });
  expect(stuck).toEqual([]);
  expect(order.map(({ id }) => id)).toEqual(['lower', 'upper']);
  expect(before).toEqual([{ firstId: 'lower', thenId: 'upper' }]);
});

test('without a hatch nothing goes in, and it is said so', () => {
  const { order, stuck } = fittingOrder(
    benchOf([squareHull], [partAt('pack', box(50, 40, 30), [120, 0, -30])]),
  );
  expect(order).toEqual([]);
  expect(stuck[0]?.sentence).toMatch(/no hatch/);
});

test('sandmartin’s camera and flight pack go in through the nose hatch past all that is mounted', () => {
  const sandmartin = demo('sandmartin');
  for (const id of ['camera', 'flight-pack']) verify(sandmartin, id, 'nose-hatch');
});

describe('a wing across the hatch', () => {
  const wing: Surface = {
    id: 'wing',
    kind: 'surface',
    name: 'Wing',
    role: 'wing',
    sides: 'both',
    rootMm: [180, 0, 56],
    cantDeg: 0,
    incidenceDeg: 0,
    rootChordMm: 240,
    rootThicknessPct: 10,
    panels: [{ spanMm: 400, tipChordMm: 240, sweepMm: 0, dihedralDeg: 0, twistDeg: 0, tipThicknessPct: 10 }],
    mass: { by: 'weighed', massG: 300 },
  };
  const pack = partAt('pack', box(80, 50, 40), [300, 0, -30]);
  const covered = benchOf([squareHull, wing], [pack], { hatches: [hatch] });

  test('bars the way, which is then told with the wing off', () => {
    const path = entryPath(covered, 'pack', 'hatch', { budget: 800 });
    expect(path).toMatchObject({ found: true, off: ['Wing'] });
    expect(path?.sentence).toBe('pack goes in through Hatch with Wing off.');
  });

  test('ahead of the hatch it is no matter', () => {
    const ahead = { ...covered, structure: [squareHull, { ...wing, rootMm: [-60, 0, 56] as const }] };
    expect(entryPath(ahead, 'pack', 'hatch', { budget: 800 })).toMatchObject({ found: true, off: [] });
  });
});
