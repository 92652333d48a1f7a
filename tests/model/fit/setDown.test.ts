import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { shelf } from '../../../src/model/airframe/shelf';
import { blankAircraft } from '../../../src/model/document/blank';
import { itemById } from '../../../src/model/document/edit';
import type { Aircraft } from '../../../src/model/document/types';
import { setDown } from '../../../src/model/fit/setDown';
import { readAircraft } from '../../../src/model/reading/read';
import { addFromShelf, addThing } from '../../../src/panels/manifest/newThings';

function demo(name: string): Aircraft {
  const read = readAircraft(JSON.parse(readFileSync(`demo-data/${name}.json`, 'utf8')));
  if (!read.ok) throw new Error(name);
  return read.aircraft;
}

type Box = { readonly min: readonly number[]; readonly max: readonly number[] };

/** The box of a part that is one, square to the axes; null for others. */
function boxOf(part: Aircraft['parts'][number]): Box | null {
  const { shape, positionMm, yawDeg, pitchDeg, rollDeg } = part;
  if (shape.kind !== 'box' || yawDeg !== 0 || pitchDeg !== 0 || rollDeg !== 0) return null;
  const half = [shape.lengthMm / 2, shape.widthMm / 2, shape.heightMm / 2];
  return {
    min: positionMm.map((at, axis) => at - half[axis]!),
    max: positionMm.map((at, axis) => at + half[axis]!),
  };
}

/** How deep two boxes square to the axes lie in each other, mm; 0 apart (elementary geometry). */
const sharedMm = (a: Box, b: Box) =>
  Math.max(
    0,
    Math.min(
      ...[0, 1, 2].map((axis) => Math.min(a.max[axis]!, b.max[axis]!) - Math.max(a.min[axis]!, b.min[axis]!)),
    ),
  );

const boxes = shelf.filter(({ shape }) => shape.kind === 'box').filter((_part, at) => at % 7 === 0);

describe.each(['sandmartin', 'fieldfare', 'whimbrel', 'corncrake'])('on the %s', (name) => {
  test('a new part that is given a free place lies in no other', () => {
    const aircraft = demo(name);
    const wantedMm = aircraft.targetBand?.by === 'station' ? aircraft.targetBand.forwardMm : 400;
    let placed = 0;
    for (const part of boxes) {
      const added = addFromShelf(aircraft, part, [wantedMm, 0, 0]);
      const set = setDown(added.aircraft, added.id, wantedMm);
      if (!set.free) continue;
      placed += 1;
      const own = set.aircraft.parts.find(({ id }) => id === added.id);
      const box = own && boxOf(own);
      if (!box) throw new Error(`${part.name} is no box`);
      for (const other of aircraft.parts) {
        const taken = boxOf(other);
        if (taken) expect(sharedMm(box, taken), `${part.name} in ${other.name}`).toBeLessThanOrEqual(0.01);
      }
    }
    expect(placed).toBeGreaterThan(0);
  });
});

test('on an empty bench it stands where it is wanted, and the next one beside it', () => {
  const pack = shelf.find(({ shape, role }) => shape.kind === 'box' && role === 'energy');
  if (!pack) throw new Error('no pack on the shelf');
  const first = addFromShelf(blankAircraft(), pack, [200, 0, 0]);
  const one = setDown(first.aircraft, first.id, 200);
  expect(one.free).toBe(true);
  expect(itemById(one.aircraft, first.id)?.positionMm[0]).toBe(200);
  const second = addFromShelf(one.aircraft, pack, [200, 0, 0]);
  const two = setDown(second.aircraft, second.id, 200);
  expect(two.free).toBe(true);
  const [a, b] = two.aircraft.parts.map(boxOf);
  expect(a && b && sharedMm(a, b)).toBe(0);
});

test('a tail goes to the body’s end, a fin on top of it', () => {
  const body = addThing(blankAircraft(), 'fuselage', 200).aircraft;
  const piece = body.structure[0];
  const last = piece?.kind === 'fuselage' ? piece.sections.at(-1) : undefined;
  if (!last) throw new Error('no fuselage');
  for (const kind of ['tailplane', 'fin'] as const) {
    const tail = addThing(body, kind, 200).aircraft.structure[1];
    if (tail?.kind !== 'surface') throw new Error('no surface');
    expect(tail.rootMm[0] + tail.rootChordMm).toBe(last.stationMm);
    expect(tail.rootMm[2]).toBe(kind === 'fin' ? last.waterlineMm + last.heightMm / 2 : last.waterlineMm);
  }
});
