import { describe, expect, test } from 'vitest';
import { hulls } from '../../../src/model/airframe/solids';
import { placeItem } from '../../../src/model/document/edit';
import type { Bay } from '../../../src/model/document/types';
import { bayFault, bayRoom, proposeBays } from '../../../src/model/fit/bays';
import { clearances } from '../../../src/model/fit/clearances';
import { defaultKeepApart, keepApartFaults, keepOutZones } from '../../../src/model/fit/keepApart';
import { defaultLoadFactors, itemRestraint, restraint } from '../../../src/model/fit/restraint';
import { wholeFit } from '../../../src/model/fit/wholeFit';
import { benchOf, blockAt, box, partAt, squareHull } from './fitAircraft';

const bay: Bay = {
  id: 'bay',
  name: 'Bay',
  lengthMm: 200,
  widthMm: 80,
  heightMm: 60,
  positionMm: [300, 0, 0],
  yawDeg: 0,
  pitchDeg: 20,
  rollDeg: 0,
};

describe('bays', () => {
  const inBay = (positionMm: readonly [number, number, number], pitchDeg = 20) => {
    const part = partAt('pack', box(100, 40, 30), positionMm, { bayId: 'bay', pitchDeg });
    const aircraft = benchOf([], [part], { bays: [bay] });
    return { aircraft, part, fault: bayFault(aircraft, part) };
  };

  test('a part that lies along its bay is inside up to the walls', () => {
    expect(inBay([300, 20, 0]).fault).toBeNull();
    expect(inBay([300, 20.1, 0]).fault?.overMm).toBeCloseTo(0.1, 9);
  });

  test('the move given brings it in', () => {
    const { aircraft, fault } = inBay([300 + 70, 35, -5]);
    const [x, y, z] = fault!.moveByMm!;
    const moved = placeItem(aircraft, 'pack', [370 + x, 35 + y, -5 + z]);
    expect(bayFault(moved, moved.parts[0]!)).toBeNull();
  });

  test('one that is turned against it reaches out by its corner; too big is said', () => {
    // Pitched 20° less than the bay: half height 50·sin 20° + 15·cos 20°.
    const t = (20 * Math.PI) / 180;
    const { fault } = inBay([300, 0, 0], 0);
    expect(fault?.overMm).toBeCloseTo(50 * Math.sin(t) + 15 * Math.cos(t) - 30, 9);
    expect(fault?.moveByMm).toBeNull();
    expect(fault?.sentence).toMatch(/too big/);
  });

  test('proposed in a hull that widens and rises: as wide and high as at its narrow end', () => {
    // Width 100 + x/4, height 80 + x/5, middle at waterline x/10. The greatest box between formers that end at 102
    // and begin at 298 starts at the front one, since (298 − x)(100 + x/4)² falls from x = 65.3 on.
    const section = (stationMm: number) => ({
      stationMm,
      widthMm: 100 + stationMm / 4,
      heightMm: 80 + stationMm / 5,
      waterlineMm: stationMm / 10,
      roundness: 0,
    });
    const cone = { ...squareHull, sections: [section(0), section(400)], skinMm: 0 };
    const formers = [100, 300].map((x, i) => blockAt(`former-${i}`, box(4, 120, 95), [x, 0, x / 10]));
    const [, middle] = proposeBays(benchOf([cone, ...formers], []));
    // From waterline x/10 − 40 − x/10 to x/10 + 40 + x/10 at x = 102.
    expect(middle?.widthMm).toBeCloseTo(125.5, 9);
    expect(middle?.heightMm).toBeCloseTo(100.4, 9);
    expect(middle?.lengthMm).toBeCloseTo(196, 9);
    expect(middle?.positionMm[0]).toBeCloseTo(200, 9);
    expect(middle?.positionMm[2]).toBeCloseTo((60.4 - 40) / 2, 9);
  });

  test('proposed between the formers of a square hull: the whole of each stretch, clear of the skin', () => {
    const formers = [200, 420].map((x, i) => blockAt(`former-${i}`, box(4, 110, 110), [x, 0, 0]));
    const shelf = blockAt('shelf', box(80, 100, 4), [300, 0, -20]);
    const proposed = proposeBays(benchOf([squareHull, ...formers, shelf], []));
    expect(proposed.map(({ lengthMm }) => lengthMm)).toEqual([198 - 2, 418 - 202, 598 - 422]);
    for (const { widthMm, heightMm } of proposed) expect([widthMm, heightMm]).toEqual([116, 116]);
    expect(proposed[1]!.positionMm[0]).toBeCloseTo(310, 9);
  });
});

describe('a bay as it is', () => {
  const bay = (lengthMm: number, widthMm: number, positionMm: readonly [number, number, number]) => ({
    id: 'bay',
    name: 'Bay',
    lengthMm,
    widthMm,
    heightMm: 80,
    positionMm,
    yawDeg: 0,
    pitchDeg: 0,
    rollDeg: 0,
  });
  const square = benchOf([squareHull], []);

  test('within the hull it keeps its size; in no hull too', () => {
    expect(bayRoom(square, bay(200, 100, [300, 0, 0]))).toMatchObject({
      overMm: 0,
      sentence: null,
      room: { minMm: [200, -50, -40], maxMm: [400, 50, 40] },
    });
    expect(bayRoom(square, bay(200, 100, [300, 500, 0]))).toMatchObject({ overMm: 0, sentence: null });
  });

  test('through the wall it is cut by it, and what is over is told', () => {
    // Inner faces at ±58; the bay’s side at 30 + 50.
    const { room, overMm, sentence } = bayRoom(square, bay(200, 100, [300, 30, 0]));
    expect(overMm).toBeCloseTo(80 - 58, 6);
    expect(room).toEqual({ minMm: [200, -20, -40], maxMm: [400, 58, 40] });
    expect(sentence).toBe('Bay reaches 22.0 mm out of Hull.');
  });

  test('a waist of the hull narrows it, wherever along the bay it is', () => {
    const waist = (stationMm: number, widthMm: number) => ({
      stationMm,
      widthMm,
      heightMm: 120,
      waterlineMm: 0,
      roundness: 0,
    });
    const waisted = {
      ...squareHull,
      sections: [waist(0, 120), waist(295, 120), waist(300, 64), waist(305, 120), waist(600, 120)],
    };
    const { room } = bayRoom(benchOf([waisted], []), bay(40, 100, [300, 0, 0]));
    // Either a narrow room through the waist, 64 − 2 · 2 wide, or a wide one on one side of it; here the narrow one is greater.
    expect(room?.maxMm[1]).toBeLessThanOrEqual(30);
    expect(room!.maxMm[0] - room!.minMm[0]).toBeCloseTo(40, 6);
  });
});

test('a section typed in metres makes neither clearances nor bays endless', () => {
  const section = (stationMm: number, sizeMm: number, roundness: number) => ({
    stationMm,
    widthMm: sizeMm,
    heightMm: sizeMm,
    waterlineMm: 0,
    roundness,
  });
  const huge = {
    ...squareHull,
    sections: [section(0, 120, 0.2), section(300, 120_000, 1), section(600, 120, 0)],
  };
  const bench = benchOf([huge], [partAt('pack', box(60, 40, 30), [300, 0, 0])]);
  expect(hulls(bench)[0]!.facets.length).toBeLessThan(100_000);
  expect(clearances(bench, 'pack')[0]?.distanceMm).toBeGreaterThan(50);
  expect(proposeBays(bench).length).toBeLessThan(3);
  expect(wholeFit(bench).problems).toEqual([]);
});

describe('keep apart', () => {
  const parts = [
    partAt('receiver', box(40, 30, 12), [100, 0, 0], { role: 'radio' }),
    partAt('controller', box(60, 30, 12), [180, 0, 0], { role: 'powerplant' }),
    partAt('gyro', box(40, 30, 12), [400, 0, 0], { role: 'radio' }),
  ];

  test('a rule between roles meets every pair of them, by the gap between their surfaces', () => {
    const rule = { between: 'radio', and: 'powerplant', atLeastMm: 50, why: 'it disturbs' };
    const [fault, ...more] = keepApartFaults(benchOf([], parts, { keepApart: [rule] }));
    expect(more).toEqual([]);
    expect(fault).toMatchObject({ aId: 'receiver', bId: 'controller' });
    expect(fault!.distanceMm).toBeCloseTo(80 - 50, 9);
    expect(fault!.shortByMm).toBeCloseTo(20, 9);
  });

  test('a rule between two ids means those two', () => {
    const rule = { between: 'gyro', and: 'receiver', atLeastMm: 270, why: 'it disturbs' };
    expect(keepApartFaults(benchOf([], parts, { keepApart: [rule] })).map(({ aId }) => aId)).toEqual([
      'gyro',
    ]);
  });

  test('without rules of its own the usual ones hold, each marked common practice', () => {
    expect(defaultKeepApart.every(({ commonPractice }) => commonPractice)).toBe(true);
    expect(keepApartFaults(benchOf([], parts))).toHaveLength(1);
    expect(keepApartFaults(benchOf([], parts, { keepApart: [] }))).toEqual([]);
  });

  test('the zones that a dragged part must keep out of', () => {
    const zones = keepOutZones(benchOf([], parts), 'controller');
    expect(zones.map(({ itemId }) => itemId).sort()).toEqual(['gyro', 'receiver']);
  });
});

describe('restraint', () => {
  test('240 g at 10 g is 2.4 kgf or 23.536 N, by F = m·n·g with 9.80665 m/s²', () => {
    expect(restraint(240, 10).kgf).toBeCloseTo(2.4, 12);
    expect(restraint(240, 10).newtons).toBeCloseTo(23.53596, 10);
  });

  test('the first thing ahead within its cross-section, and how far', () => {
    const aircraft = benchOf(
      [blockAt('former', box(4, 110, 110), [100, 0, 0])],
      [
        partAt('pack', box(100, 40, 30), [300, 0, 0]),
        partAt('receiver', box(40, 30, 12), [180, 30, 0]),
        partAt('aside', box(40, 30, 12), [200, 60, 0]),
      ],
    );
    const held = itemRestraint(aircraft, 'pack')!;
    expect(held.strikes).toMatchObject({ id: 'receiver' });
    expect(held.strikes!.afterMm).toBeCloseTo(50, 5);
    expect(itemRestraint(aircraft, 'aside')!.strikes).toMatchObject({ id: 'former' });
    expect(held).toMatchObject({ commonPractice: true, loadFactors: defaultLoadFactors });
    expect(
      itemRestraint({ ...aircraft, loadFactors: { ahead: 9, up: 3, side: 2 } }, 'pack')!.side.kgf,
    ).toBeCloseTo(0.2, 12);
  });

  test('a tank is held with what it starts with', () => {
    const aircraft = benchOf([], [], {
      fuel: { densityGPerMl: 0.8 } as never,
      tanks: [{ ...partAt('tank', box(100, 50, 40), [0, 0, 0]), emptyMassG: 60, startMl: null } as never],
    });
    expect(itemRestraint(aircraft, 'tank')?.massG).toBeCloseTo(60 + 200 * 0.8, 9);
  });

  /** Kerosene of 0.800 g/ml at 15 °C swells when warm: ASTM D1250 Table 54B, α = 594.5418/800² for each degree. */
  test('a tank of warm kerosene is held with what it weighs at that temperature', () => {
    const fuel = { kind: 'kerosene', densityGPerMl: 0.8, temperatureC: 35 };
    const aircraft = benchOf([], [], {
      fuel: fuel as never,
      tanks: [{ ...partAt('tank', box(100, 50, 40), [0, 0, 0]), emptyMassG: 60, startMl: null } as never],
    });
    const change = (594.5418 / 800 ** 2) * 20;
    const densityGPerMl = 0.8 * Math.exp(-change * (1 + 0.8 * change));
    expect(densityGPerMl).toBeLessThan(0.79);
    expect(itemRestraint(aircraft, 'tank')?.massG).toBeCloseTo(60 + 200 * densityGPerMl, 9);
  });
});
