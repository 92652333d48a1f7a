import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Vec3 } from '../../../src/engine/geometry/types';
import type { Shape } from '../../../src/engine/mass/shapes';
import { moversOf } from '../../../src/model/advice/movers';
import { moveEdits } from '../../../src/model/advice/moveSearch';
import { applyRemedy } from '../../../src/model/advice/remedy';
import { balanceAt, LEVEL } from '../../../src/model/balance/balance';
import { blankAircraft } from '../../../src/model/document/blank';
import {
  breakPair,
  mirrorPart,
  mirrorTank,
  placeItem,
  removeItem,
  replacePart,
  updatePart,
  updateTank,
} from '../../../src/model/document/edit';
import { makePair, pairableWith, twinOf } from '../../../src/model/document/twins';
import type { Aircraft, Part, TankItem } from '../../../src/model/document/types';
import { writeAircraft } from '../../../src/model/document/write';
import { itemZone } from '../../../src/model/place/itemZone';
import { placeProblem } from '../../../src/model/place/placeProblem';
import { parseAircraft } from '../../../src/model/reading/read';
import { createDocumentStore } from '../../../src/store/documentStore';
import { seed } from '../../seed';

const wedge: Shape = {
  kind: 'prism',
  lengthMm: 40,
  outlineMm: [
    [0, 0],
    [60, 0],
    [0, 30],
  ],
};

const servo: Part = {
  id: 'servo',
  name: 'Servo, right',
  role: 'payload',
  shape: wedge,
  massG: 48,
  positionMm: [300, 200, 10],
  yawDeg: 20,
  pitchDeg: -10,
  rollDeg: 35,
  notes: 'with the long horn',
};

const tank: TankItem = {
  id: 'tank',
  name: 'Tank, right',
  shape: wedge,
  positionMm: [320, 150, 0],
  yawDeg: 10,
  pitchDeg: 5,
  rollDeg: 0,
  emptyMassG: 30,
  startMl: null,
  unusableMl: 1,
  feeds: 'outlet',
  rank: 1,
};

const withBoth: Aircraft = {
  ...blankAircraft(),
  targetBand: { by: 'station', forwardMm: 250, aftMm: 350 },
  parts: [servo, { ...servo, id: 'keel', name: 'Keel', positionMm: [310, 0, 0], massG: 300 }],
  tanks: [tank],
  fuel: {
    kind: 'petrol',
    name: 'Petrol',
    densityGPerMl: 0.74,
    use: 'burn',
    share: 'volume',
    flow: { idleMlPerMin: 4, fullMlPerMin: 24 },
    profile: { name: 'Circuits', phases: [{ name: 'Circuits', durationS: 600, throttlePct: 45 }] },
    reservePct: 20,
  },
};

const pairedServo = mirrorPart(withBoth, 'servo')!;
const paired = mirrorTank(pairedServo.aircraft, 'tank')!;
const [twinServo, twinTank] = [pairedServo.id, paired.id];

/** The mass properties of the pairs alone: the keel is weightless and stands on the plane. */
const ofPairs = (aircraft: Aircraft) =>
  balanceAt(updatePart(aircraft, 'keel', { massG: 0 }), { fuelFraction: 1, down: LEVEL });

/** Mirror images have their CG on the plane of symmetry, and no product of inertia across it: geometry, no source. */
function expectMirrored(aircraft: Aircraft) {
  const { cgMm, inertiaAboutCgGmm2: inertia } = ofPairs(aircraft);
  expect(Math.abs(cgMm![1])).toBeLessThan(1e-6);
  const size = inertia.xx + inertia.yy + inertia.zz;
  for (const product of [inertia.xy, inertia.yz]) expect(Math.abs(product)).toBeLessThan(1e-9 * size);
}

const place = fc.tuple(
  fc.integer({ min: 100, max: 600 }),
  fc.integer({ min: -400, max: 400 }),
  fc.integer({ min: -80, max: 80 }),
);
const turn = fc.integer({ min: -180, max: 180 });
const grams = fc.integer({ min: 1, max: 900 });

/** An edit of one half as the card, a drag or a scale makes it. */
const edit: fc.Arbitrary<(aircraft: Aircraft) => Aircraft> = fc.oneof(
  fc.tuple(fc.constantFrom('servo', twinServo, 'tank', twinTank), place).map(
    ([id, at]) =>
      (aircraft: Aircraft) =>
        placeItem(aircraft, id, at),
  ),
  fc.tuple(fc.constantFrom('servo', twinServo), turn, turn, turn, grams).map(
    ([id, yawDeg, pitchDeg, rollDeg, massG]) =>
      (aircraft: Aircraft) =>
        updatePart(aircraft, id, { yawDeg, pitchDeg, rollDeg, massG, massFrom: 'weighed' }),
  ),
  fc.tuple(fc.constantFrom('tank', twinTank), turn, grams).map(
    ([id, rollDeg, emptyMassG]) =>
      (aircraft: Aircraft) =>
        updateTank(aircraft, id, { rollDeg, emptyMassG, startMl: 10, mirrored: rollDeg > 0 }),
  ),
  fc
    .constantFrom('servo', twinServo)
    .map(
      (id) => (aircraft: Aircraft) =>
        updatePart(aircraft, id, { inertiaGmm2: { xx: 9, yy: 8, zz: 7, xy: 1, xz: 2, yz: 3 } }),
    ),
);

describe('a mirrored pair', () => {
  test('stays one through any edits of either half, can be read again, and comes back byte for byte', () => {
    fc.assert(
      fc.property(fc.array(edit, { minLength: 1, maxLength: 12 }), (edits) => {
        const store = createDocumentStore(paired.aircraft);
        const before = writeAircraft(store.current());
        for (const change of edits) store.commit('Edit', change(store.current()));
        expectMirrored(store.current());
        const read = parseAircraft(writeAircraft(store.current()));
        expect(read.ok || read.faults[0]?.sentence).toBe(true);
        for (let left = edits.length; left > 0; left -= 1) store.undo();
        expect(writeAircraft(store.current())).toBe(before);
      }),
      { numRuns: 40, seed },
    );
  });

  test('keeps what is each one’s own: name, notes, plumbing', () => {
    const named = updatePart(paired.aircraft, twinServo, { name: 'The other', notes: 'short horn' });
    expect(named.parts.find(({ id }) => id === 'servo')).toMatchObject({
      name: 'Servo, right',
      notes: 'with the long horn',
    });
    const fed = updateTank(paired.aircraft, twinTank, { feeds: 'tank', rank: 3 });
    expect(fed.tanks.find(({ id }) => id === 'tank')).toMatchObject({ feeds: 'outlet', rank: 1 });
  });

  test('broken, each goes its own way; one taken out, the other stays alone', () => {
    const broken = breakPair(paired.aircraft, 'servo');
    const moved = placeItem(broken, 'servo', [1, 2, 3]);
    expect(moved.parts.find(({ id }) => id === twinServo)!.positionMm).toEqual([300, -200, 10]);
    expect(twinOf(broken, 'servo')).toBeUndefined();
    const left = removeItem(paired.aircraft, 'servo');
    expect(left.parts.find(({ id }) => id === twinServo)).not.toHaveProperty('twinId');
    for (const aircraft of [broken, left]) expect(parseAircraft(writeAircraft(aircraft)).ok).toBe(true);
  });

  test('two that stand mirrored can be made one: the second becomes the first’s image', () => {
    const broken = breakPair(paired.aircraft, 'servo');
    const uneven = updatePart(broken, twinServo, { massG: 50, yawDeg: 3, positionMm: [304, -196, 12] });
    expect(pairableWith(uneven, 'servo')?.id).toBe(twinServo);
    const again = makePair(uneven, 'servo', twinServo);
    expect(again.parts.find(({ id }) => id === twinServo)).toMatchObject({ massG: 48, yawDeg: -20 });
    expectMirrored(again);
    expect(pairableWith(again, 'servo')).toBeUndefined();
    expect(pairableWith(uneven, 'keel')).toBeUndefined();
  });
});

describe('a pair that is none is a fault with a sentence', () => {
  const spoilt = (change: Partial<Part>): string => {
    const json = JSON.parse(writeAircraft(paired.aircraft));
    const at = json.parts.findIndex(({ id }: Part) => id === twinServo);
    Object.assign(json.parts[at], change);
    const read = parseAircraft(JSON.stringify(json));
    return read.ok ? 'read' : read.faults.map(({ sentence }) => sentence).join('\n');
  };

  test.each([
    [{ twinId: 'nobody' }, /there is no part or tank "nobody" to be a mirrored pair with/],
    [{ twinId: twinServo }, /cannot be a mirrored pair with itself/],
    [{ twinId: 'keel' }, /a mirrored pair names each other: "Keel" names nothing/],
    [
      { massG: 47 },
      /mirrored pair with "Servo, right" but differs from the mirror image of the other one in massG/,
    ],
    [{ positionMm: [300, 200, 10] as Vec3 }, /in positionMm/],
    [{ yawDeg: 20 }, /in yawDeg/],
    [{ shape: wedge as Part['shape'] }, /in shape/],
  ])('%j', (change, sentence) => {
    expect(spoilt(change)).toMatch(sentence);
  });
});

describe('what is offered moves both or neither', () => {
  test('a remedy moves the pair as one, and each half by exactly what is spoken', () => {
    const mover = moversOf(paired.aircraft).find(({ items }) => items.some(({ id }) => id === 'servo'))!;
    expect(mover.items.map(({ id }) => id).sort()).toEqual(['servo', twinServo].sort());
    const after = applyRemedy(paired.aircraft, { edits: moveEdits(mover, 0, 17) });
    for (const id of ['servo', twinServo])
      expect(after.parts.find((part) => part.id === id)!.positionMm[0]).toBe(317);
    expectMirrored(after);
    const alone = moversOf(paired.aircraft).filter(({ items }) => items.length === 1);
    expect(alone.flatMap(({ items }) => items.map(({ id }) => id))).toEqual(['keel']);
  });

  test('the search for an arrangement leaves it where it is, and says so', () => {
    const answer = placeProblem(paired.aircraft, {
      down: LEVEL,
      rules: { servo: { by: 'rail', stations: { fromMm: 0, toMm: 900 } } },
    });
    if ('fault' in answer) throw new Error(answer.fault);
    expect(answer.problem.parts.map(({ id }) => id)).not.toContain('servo');
    expect(answer.problem.parts.map(({ id }) => id)).not.toContain(twinServo);
    expect(answer.notes.join(' ')).toMatch(/Servo, right.*part a mirrored pair/);
  });

  test('the zone of one is that of both moved together: its ends hold, a step beyond does not', () => {
    const narrow: Aircraft = {
      ...paired.aircraft,
      targetBand: { by: 'station', forwardMm: 300, aftMm: 316 },
    };
    const allowed = itemZone(narrow, 'servo', LEVEL)!.station.allowed!;
    const inBand = (stationMm: number) => {
      const moved = placeItem(narrow, 'servo', [stationMm, 200, 10]);
      return balanceAt(moved, { fuelFraction: 1, down: LEVEL }).travel.every(
        ({ cgMm }) => cgMm[0] >= 300 - 1e-6 && cgMm[0] <= 316 + 1e-6,
      );
    };
    expect([inBand(allowed.fromMm), inBand(allowed.toMm)]).toEqual([true, true]);
    expect([inBand(allowed.fromMm - 1), inBand(allowed.toMm + 1)]).toEqual([false, false]);
  });
});

describe('of each field it is said once whether the pair shares it', () => {
  const partChanges: Partial<Part> = {
    role: 'radio',
    shape: { kind: 'box', lengthMm: 9, widthMm: 8, heightMm: 7 },
    massG: 50,
    plusMinusG: 3,
    plusMinusMm: 2,
    inertiaGmm2: { xx: 5, yy: 6, zz: 7, xy: 1, xz: 2, yz: 3 },
    positionMm: [1, 2, 3],
    yawDeg: 4,
    pitchDeg: 5,
    rollDeg: 6,
    locked: true,
    inTheOpen: true,
    gyro: true,
    massFrom: 'weighed',
    sizeFrom: 'measured',
    weighedOn: '2031-05-06',
  };
  const tankChanges: Partial<TankItem> = {
    shape: { kind: 'box', lengthMm: 9, widthMm: 8, heightMm: 7 },
    positionMm: [1, 2, 3],
    yawDeg: 4,
    pitchDeg: 5,
    rollDeg: 6,
    mirrored: true,
    emptyMassG: 44,
    plusMinusG: 3,
    plusMinusMm: 2,
    startMl: 9,
    unusableMl: 2,
    locked: true,
    inTheOpen: true,
    massFrom: 'weighed',
    sizeFrom: 'measured',
    weighedOn: '2031-05-06',
  };
  const ownOfParts: Partial<Part> = {
    name: 'Mine',
    bayId: 'nose',
    mayTurn: 'flat',
    notes: 'mine',
    power: {},
  };
  const ownOfTanks: Partial<TankItem> = { name: 'Mine', feeds: 'tank', rank: 3 };

  /** What the image of a change is in the plane of symmetry, by hand: left for right, and turns about x and z the other way. */
  const image: Readonly<Record<string, unknown>> = {
    positionMm: [1, -2, 3],
    yawDeg: -4,
    rollDeg: -6,
    mirrored: false,
    inertiaGmm2: { xx: 5, yy: 6, zz: 7, xy: -1, xz: 2, yz: -3 },
  };
  const change = (id: string, key: string, value: unknown): Aircraft =>
    id === 'servo'
      ? updatePart(paired.aircraft, id, { [key]: value })
      : updateTank(paired.aircraft, id, { [key]: value });
  const otherOf = (aircraft: Aircraft, id: string) =>
    (id === 'servo'
      ? aircraft.parts.find((part) => part.id === twinServo)!
      : aircraft.tanks.find((item) => item.id === twinTank)!) as unknown as Record<string, unknown>;

  const rows = (id: string, changes: object) =>
    Object.entries(changes).map(([key, value]) => [id, key, value as unknown] as const);
  test.each([...rows('servo', partChanges), ...rows('tank', tankChanges)])(
    '%s: %s is shared',
    (id, key, value) => {
      expect(otherOf(change(id, key, value), id)[key]).toEqual(key in image ? image[key] : value);
    },
  );
  test.each([...rows('servo', ownOfParts), ...rows('tank', ownOfTanks)])(
    '%s: %s is each one’s own',
    (id, key, value) => {
      expect(otherOf(change(id, key, value), id)).toBe(otherOf(paired.aircraft, id));
    },
  );
});

test('a part put in the place of another takes its twin along, fields that are gone and all, and nobody else', () => {
  const marked = updatePart(paired.aircraft, 'servo', { plusMinusG: 3, locked: true });
  const before = marked.parts.find(({ id }) => id === 'servo')!;
  const { plusMinusG: _, ...rest } = before;
  const replaced = replacePart(marked, before, { ...rest, massG: 77 });
  const byId = (id: string) => replaced.parts.find((part) => part.id === id)!;
  expect(byId('servo')).toEqual({ ...rest, massG: 77 });
  expect(byId(twinServo)).toMatchObject({ massG: 77, locked: true, positionMm: [300, -200, 10] });
  expect(byId(twinServo)).not.toHaveProperty('plusMinusG');
  expect(byId(twinServo).name).toBe(marked.parts.find(({ id }) => id === twinServo)!.name);
  expect(byId('keel')).toBe(marked.parts.find(({ id }) => id === 'keel'));
  expectMirrored(replaced);
});

test('one pair taken apart leaves the others pairs', () => {
  const more = mirrorPart(
    {
      ...paired.aircraft,
      parts: [...paired.aircraft.parts, { ...servo, id: 'lamp', positionMm: [500, 300, 0] }],
    },
    'lamp',
  )!;
  const apart = breakPair(more.aircraft, 'servo');
  expect([twinOf(apart, 'servo'), twinOf(apart, twinServo)]).toEqual([undefined, undefined]);
  expect([twinOf(apart, 'lamp')?.id, twinOf(apart, more.id)?.id]).toEqual([more.id, 'lamp']);
  expect(twinOf(apart, 'tank')?.id).toBe(twinTank);
});
