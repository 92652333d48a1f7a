import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { pointToAircraft, poseRotation } from '../../../src/engine/geometry/rotation';
import type { Vec3 } from '../../../src/engine/geometry/types';
import { elementPieces, pieces } from '../../../src/model/airframe/pieces';
import { poseBetween, surfacePose } from '../../../src/model/airframe/poses';
import type { Aircraft, Surface } from '../../../src/model/document/types';
import { readAircraft } from '../../../src/model/reading/read';
import { between } from '../../between';
import { dunlinJson } from '../aircraft';

const dunlin = (): Aircraft => {
  const read = readAircraft(dunlinJson());
  if (!read.ok) throw new Error(read.faults[0]?.sentence);
  return read.aircraft;
};

const closeTo = (got: readonly number[], wanted: readonly number[], digits = 9) => {
  got.forEach((value, i) => {
    expect(value).toBeCloseTo(wanted[i] ?? Number.NaN, digits);
  });
};

const coordinate = between(-2000, 2000);
const point = fc.tuple(coordinate, coordinate, coordinate);
const angle = between(-180, 180);

describe('pieces', () => {
  test('are named after their element, side and place', () => {
    expect(pieces(dunlin()).map(({ id }) => id)).toEqual([
      'fuselage',
      'wing.right.1',
      'wing.right.2',
      'wing.left.1',
      'wing.left.2',
      'tailplane.right.1',
      'tailplane.left.1',
      'fin.1',
      'tail-boom.right',
      'tail-boom.left',
      'main-gear.right.strut',
      'main-gear.right.wheel',
      'main-gear.left.strut',
      'main-gear.left.wheel',
      'firewall',
    ]);
  });

  test('the two of a pair share shape and pose, and only the left one is mirrored', () => {
    for (const element of dunlin().structure.filter(({ sides }) => sides === 'both')) {
      const all = elementPieces(element);
      const right = all.filter(({ side }) => side === 'right');
      const left = all.filter(({ side }) => side === 'left');
      expect(left).toHaveLength(right.length);
      right.forEach((piece, i) => {
        expect(left[i]?.shape).toBe(piece.shape);
        expect(left[i]?.pose).toBe(piece.pose);
        expect([piece.mirrored, left[i]?.mirrored]).toEqual([false, true]);
      });
    }
  });

  test('stay the very same objects while their element is unchanged', () => {
    const before = dunlin();
    const [fuselage, ...rest] = before.structure;
    const after = { ...before, structure: [{ ...fuselage!, name: 'Hull' }, ...rest] };
    const [old, now] = [pieces(before), pieces(after)];
    expect(now[0]).not.toBe(old[0]);
    expect(now.slice(1).every((piece, i) => piece === old[i + 1])).toBe(true);
    expect(pieces({ ...before, name: 'Other' })).toBe(old);
  });
});

describe('a surface', () => {
  test('each panel begins, in the aircraft frame, where the one before it ends', () => {
    const wing = dunlin().structure.find(({ id }) => id === 'wing') as Surface;
    const canted = { ...wing, cantDeg: 31, incidenceDeg: -7 };
    const [inner, outer] = elementPieces(canted);
    if (inner?.shape.kind !== 'panel' || outer?.shape.kind !== 'panel') throw new Error('expected panels');
    const { sweepMm, spanMm, riseMm, tipChordMm, tipTwistDeg, tipThickness } = inner.shape;
    closeTo(pointToAircraft(inner.pose, [sweepMm, spanMm, riseMm]), outer.pose.positionMm);
    expect(outer.shape.rootChordMm).toBe(tipChordMm);
    expect(outer.shape.rootTwistDeg).toBe(tipTwistDeg);
    expect(outer.shape.rootThickness).toBe(tipThickness);
    // Rise of a panel of 450 mm at 1° dihedral: span · tan.
    expect(riseMm).toBeCloseTo(450 * Math.tan(Math.PI / 180), 12);
  });

  test('is turned by its incidence about the span line, then canted: Rx(cant)·Ry(incidence)', () => {
    const wing = dunlin().structure.find(({ id }) => id === 'wing') as Surface;
    fc.assert(
      fc.property(between(-89, 89), angle, point, (incidenceDeg, cantDeg, at) => {
        const pose = surfacePose({ ...wing, incidenceDeg, cantDeg, rootMm: [0, 0, 0] });
        const [i, c] = [(incidenceDeg * Math.PI) / 180, (cantDeg * Math.PI) / 180];
        // The elementary turns, right-handed, one after the other.
        const [x, y, z] = at;
        const pitched: Vec3 = [x * Math.cos(i) + z * Math.sin(i), y, z * Math.cos(i) - x * Math.sin(i)];
        const [px, py, pz] = pitched;
        const canted = [px, py * Math.cos(c) - pz * Math.sin(c), py * Math.sin(c) + pz * Math.cos(c)];
        closeTo(pointToAircraft(pose, at), canted, 7);
      }),
    );
  });

  test('incidence puts the nose up, cant the tip up, and a fin stands', () => {
    const wing = dunlin().structure.find(({ id }) => id === 'wing') as Surface;
    const aftPoint = pointToAircraft(
      surfacePose({ ...wing, incidenceDeg: 5, rootMm: [0, 0, 0] }),
      [100, 0, 0],
    );
    expect(aftPoint[2]).toBeLessThan(0);
    const tip = pointToAircraft(
      surfacePose({ ...wing, cantDeg: 90, incidenceDeg: 0, rootMm: [0, 0, 0] }),
      [0, 100, 0],
    );
    closeTo(tip, [0, 0, 100]);
  });
});

describe('a boom or strut', () => {
  test('reaches from point to point, front end first', () => {
    fc.assert(
      fc.property(point, point, (front, rear) => {
        fc.pre(Math.hypot(...front.map((v, i) => v - rear[i]!)) > 1);
        const { pose, lengthMm } = poseBetween(front, rear);
        closeTo(pointToAircraft(pose, [-lengthMm / 2, 0, 0]), front, 8);
        closeTo(pointToAircraft(pose, [lengthMm / 2, 0, 0]), rear, 8);
      }),
    );
  });

  test('a wheel turns on an axle that lies across', () => {
    const wheel = pieces(dunlin()).find(({ id }) => id === 'main-gear.right.wheel')!;
    const [xx, , , yx, , , zx] = poseRotation(wheel.pose);
    closeTo([xx, Math.abs(yx), zx], [0, 1, 0]);
    expect(wheel.pose.positionMm).toEqual([450, 190, -240]);
  });
});
