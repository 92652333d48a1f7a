import { describe, expect, test } from 'vitest';
import { meshProperties } from '../../../src/engine/mass/mesh';
import { soundMesh } from '../../../src/engine/mesh/soundMesh';
import { bodies } from '../../../src/model/airframe/bodies';
import { addOwnMesh, meshShift, withMeshHull } from '../../../src/model/airframe/ownMesh';
import { placeItem, removeItem } from '../../../src/model/document/edit';
import type { Aircraft, Fuel, Fuselage } from '../../../src/model/document/types';
import { writeAircraft } from '../../../src/model/document/write';
import { wholeFit } from '../../../src/model/fit/wholeFit';
import { editFault } from '../../../src/model/reading/editFault';
import { parseAircraft, readAircraft } from '../../../src/model/reading/read';
import { createBench } from '../../../src/store/bench';
import { brick, drum, loose, moved, torus } from '../../engine/mesh/solids';
import { aircraftOf } from '../aircraft';
import { box, partAt, squareHull } from '../fit/fitAircraft';

const petrol: Fuel = {
  kind: 'petrol',
  name: 'Petrol',
  densityGPerMl: 0.75,
  use: 'burn',
  share: 'volume',
  flow: { idleMlPerMin: 4, fullMlPerMin: 24 },
  profile: { name: 'One', phases: [{ name: 'One', durationS: 60, throttlePct: 50 }] },
  reservePct: 0,
};
const said = { name: 'Kestrel', volumeMm3: 1e6, stationMm: 300, fuel: petrol };

function closed(mesh: ReturnType<typeof brick>) {
  const verdict = soundMesh(loose(mesh), 40_000);
  if (!verdict.ok) throw new Error(verdict.sentence);
  return verdict.mesh;
}

/** The same square hull, 600 × 120 × 120, once through sections and once as a mesh from somewhere else in space. */
const asMesh = (aircraft: Aircraft) =>
  withMeshHull(aircraft, 'hull', closed(moved(brick([0, 0, 0], [600, 120, 120]), [-80, 33, 7])));
const reads = (aircraft: Aircraft) => {
  const read = readAircraft(aircraft);
  return read.ok ? 'reads' : read.faults[0]?.sentence;
};

describe('a hull with a mesh for its surface', () => {
  const plain = aircraftOf([squareHull]);
  const own = asMesh(plain);

  test('reads, weighs and stands as the same hull through sections', () => {
    expect(reads(own)).toBe('reads');
    const [a, b] = [bodies(plain)[0]!.mass, bodies(own)[0]!.mass];
    expect(b.massG).toBeCloseTo(a.massG, 9);
    for (const axis of [0, 1, 2] as const) expect(b.cgMm![axis]).toBeCloseTo(a.cgMm![axis], 9);
    expect(b.inertiaAboutCgGmm2.yy / a.inertiaAboutCgGmm2.yy).toBeCloseTo(1, 9);
  });

  test.each([
    ['in the middle', [300, 0, 0]],
    ['by the wall', [300, 46, 0]],
    ['through the side', [300, 55, 0]],
    ['out of the nose', [10, 0, 0]],
    ['quite outside', [300, 300, 0]],
  ] as const)('says the same of a box %s', (_where, at) => {
    const found = [plain, own].map((aircraft) => {
      const { problems } = wholeFit({ ...aircraft, parts: [partAt('box', box(60, 20, 20), at)] });
      return problems.map(({ kind }) => kind);
    });
    expect(found[1]).toEqual(found[0]);
  });

  test('moves with its sections, and comes off again', () => {
    const hull = own.structure[0] as Fuselage;
    expect(hull.sections[0]!.stationMm).toBe(0);
    expect(hull.sections.at(-1)!.stationMm).toBe(600);
    const { mesh: _mesh, ...sections } = hull;
    expect(reads({ ...own, structure: [sections] })).toBe('reads');
    const bent = { ...hull, sections: hull.sections.map((s) => ({ ...s, stationMm: s.stationMm + 50 })) };
    expect(editFault(own, { ...own, structure: [bent] })).toContain('run from its front to its rear');
  });

  test('is written compactly, reads back byte for byte, and undo brings the old file back', () => {
    const bench = createBench(plain);
    const before = writeAircraft(bench.document.current());
    bench.document.commit('Take a mesh', asMesh(bench.document.current()));
    const text = writeAircraft(bench.document.current());
    const again = parseAircraft(text);
    expect(again.ok && writeAircraft(again.aircraft)).toBe(text);
    bench.document.undo();
    expect(writeAircraft(bench.document.current())).toBe(before);
    const large = addOwnMesh(plain, 'part', closed(torus(60, 20, 60, 30)), said).aircraft;
    const { parts } = large;
    const figures = writeAircraft(large).length - writeAircraft({ ...large, parts: [] }).length;
    // 1800 corners and 3600 triangles, of some 20 characters each.
    expect(parts).toHaveLength(1);
    expect(figures).toBeLessThan(5400 * 24);
  });
});

describe('a mesh as a thing of its own', () => {
  test.each(['fuselage', 'part', 'tank'] as const)('%s: reads, and goes again', (use) => {
    const { aircraft, id } = addOwnMesh(aircraftOf([]), use, closed(drum(200, 40, 24)), said);
    expect(reads(aircraft)).toBe('reads');
    const without = removeItem(aircraft, id);
    expect([...without.structure, ...without.parts, ...without.tanks]).toEqual([]);
  });

  test('a tank in the shape of a drum holds what the drum holds', () => {
    const mesh = closed(drum(200, 40, 96));
    const { aircraft } = addOwnMesh(aircraftOf([]), 'tank', mesh, said);
    const half = { ...aircraft, tanks: aircraft.tanks.map((tank) => ({ ...tank, startMl: 500 })) };
    expect(reads(half)).toBe('reads');
    const litres = meshProperties(mesh).volumeMm3 / 1e6;
    // π · 4² · 20 cm³, its 96 sides within it by 1 − sin(2π/96)/(2π/96) = 0.07 %.
    expect(litres).toBeCloseTo((Math.PI * 16 * 20) / 1000, 2);
    const over = { ...aircraft, tanks: aircraft.tanks.map((tank) => ({ ...tank, startMl: 1100 })) };
    expect(reads(over)).not.toBe('reads');
  });

  test('a thing passes through a ring’s hole and not through the ring', () => {
    const ring = addOwnMesh(aircraftOf([]), 'part', closed(torus(60, 15, 40, 16)), said);
    const placed = placeItem(ring.aircraft, ring.id, [300, 0, 0]);
    const clashes = (y: number) =>
      wholeFit({ ...placed, parts: [...placed.parts, partAt('rod', box(200, 30, 30), [300, y, 0])] }).problems
        .length;
    expect(clashes(0)).toBe(0);
    expect(clashes(50)).toBeGreaterThan(0);
    expect(clashes(100)).toBe(0);
  });

  test('stands where it is shown beforehand', () => {
    const aircraft = aircraftOf([squareHull]);
    const shift = meshShift(
      aircraft,
      { use: 'fuselage', hullId: 'hull', stationMm: 0 },
      [-80, 33, 7],
      [520, 153, 127],
    );
    expect(shift).toEqual([80, -93, -67]);
    expect(
      meshShift(aircraft, { use: 'part', hullId: null, stationMm: 300 }, [0, 0, 0], [10, 20, 30]),
    ).toEqual([295, -10, -15]);
  });
});
