import { describe, expect, test } from 'vitest';
import { placeItem } from '../../../src/model/document/edit';
import type { Aircraft, Leg, Surface } from '../../../src/model/document/types';
import {
  fitRefusals,
  problemsIn,
  problemsInFlight,
  type WholeFit,
  wholeFit,
} from '../../../src/model/fit/wholeFit';
import { benchOf, blockAt, box, partAt, squareHull, slabWing as wing } from './fitAircraft';

/** Swings straight aft about its top at station 300: the wheel goes from waterline −120 to station 420. */
const leg: Leg = {
  id: 'nose-leg',
  kind: 'leg',
  name: 'Nose leg',
  sides: 'centre',
  topMm: [300, 0, -20],
  axleMm: [300, 0, -140],
  strutDiameterMm: 6,
  strutMassG: 50,
  wheelDiameterMm: 40,
  wheelWidthMm: 16,
  wheelMassG: 30,
  retract: { axis: [0, -1, 0], angleDeg: 90 },
};

const kinds = ({ problems }: WholeFit) =>
  problems.map(({ kind, parties }) => [kind, ...parties.map(({ id }) => id)].join(' ')).sort();

const pack = partAt('pack', box(60, 30, 20), [420, 0, -20]);
const carried = benchOf([squareHull, leg], [pack]);

describe('load states', () => {
  test('a pack where the wheel goes when it is up: told for wheels up, and for no other state', () => {
    const [problem, ...others] = wholeFit(carried).problems;
    expect(others).toEqual([]);
    expect(problem?.kind).toBe('overlap');
    expect(problem?.parties.map(({ pieceId }) => pieceId)).toEqual(['pack', 'nose-leg.wheel']);
    expect(
      problem?.states.map(({ switchId, positions }) => [switchId, positions.map(({ id }) => id)]),
    ).toEqual([['undercarriage', ['up']]]);
    // The wheel lies across: 20 of radius over 10 of half height, 8 and 15 of half width.
    expect(problem?.byMm).toBeCloseTo(8 + 15, 1);
    expect(problemsIn([problem!], carried, {})).toEqual([]);
    expect(problemsIn([problem!], carried, { undercarriage: 'up' })).toHaveLength(1);
  });

  const switched: Aircraft = {
    ...benchOf([squareHull], [pack, partAt('camera', box(60, 30, 20), [450, 0, -20])]),
    switches: [
      {
        id: 'payload',
        name: 'Payload',
        positions: [
          { id: 'on', name: 'on' },
          { id: 'off', name: 'off', without: ['camera'] },
        ],
      },
      {
        id: 'power',
        name: 'Power',
        positions: [
          { id: 'off', name: 'off', without: ['pack'], onStand: true },
          { id: 'on', name: 'on' },
        ],
      },
    ],
  };

  test('what is not aboard at the same time does not clash', () => {
    const [problem] = wholeFit(switched).problems;
    expect(
      problem?.states.map(({ switchId, positions }) => `${switchId} ${positions.map(({ id }) => id)}`),
    ).toEqual(['payload on', 'power on']);
    const either: Aircraft = {
      ...switched,
      switches: [
        {
          id: 'payload',
          name: 'Payload',
          positions: [
            { id: 'camera', name: 'camera', without: ['pack'] },
            { id: 'pack', name: 'pack', without: ['camera'] },
          ],
        },
      ],
    };
    expect(wholeFit(either).problems).toEqual([]);
  });

  test('a state of the stand is judged, and can be told from one that flies', () => {
    const standing: Aircraft = {
      ...switched,
      switches: [
        {
          id: 'cradle',
          name: 'Cradle',
          positions: [
            { id: 'off', name: 'off', without: ['camera'] },
            { id: 'on', name: 'on', onStand: true },
          ],
        },
      ],
    };
    const { problems } = wholeFit(standing);
    expect(problems).toHaveLength(1);
    expect(problemsInFlight(problems)).toEqual([]);
  });
});

describe('inside and outside', () => {
  const bench = benchOf([squareHull, wing], []);
  const at = (positionMm: readonly [number, number, number], over = {}) =>
    wholeFit({ ...bench, parts: [partAt('servo', box(30, 20, 20), positionMm, over)] });

  test('in the hull, through its wall with the middle in or out, and clear of everything', () => {
    expect(kinds(at([50, 0, 0]))).toEqual([]);
    // Inner face at 58, half the servo is 10.
    expect(at([50, 0, 50]).problems.map(({ kind, byMm }) => [kind, byMm.toFixed(1)])).toEqual([
      ['through', '2.0'],
    ]);
    // The middle outside by 5: 15 out of the surface and 2 of skin.
    expect(at([50, 0, 65]).problems.map(({ kind, byMm }) => [kind, byMm.toFixed(1)])).toEqual([
      ['through', '17.0'],
    ]);
    expect(at([50, 0, 150]).problems.map(({ kind, byMm }) => [kind, byMm.toFixed(0)])).toEqual([
      ['outside', '100'],
    ]);
  });

  test('touching the hull from outside is outside', () => {
    expect(kinds(at([50, 0, 70]))).toEqual(['outside servo hull']);
  });

  test('what is meant to stand in the open may', () => {
    expect(kinds(at([50, 0, 65], { inTheOpen: true }))).toEqual([]);
    expect(kinds(at([50, 0, 150], { inTheOpen: true }))).toEqual([]);
  });

  test('in the wing it is the section’s thickness that counts', () => {
    // Thickest at 30 % of 400 from the leading edge: 48 mm; a servo of 20 fits there, and not at the trailing edge.
    expect(kinds(at([220, 300, 0]))).toEqual([]);
    expect(kinds(at([470, 300, 0]))).toEqual(['through servo wing']);
    expect(kinds(at([220, 300, 20]))).toEqual(['through servo wing']);
    expect(kinds(at([220, -300, 0]))).toEqual([]);
  });

  test('a wing that passes through the hull is in the way there, unless it is cut away', () => {
    const through: Surface = { ...wing, rootMm: [100, 0, 0] };
    const parts = [partAt('pack', box(60, 30, 60), [220, 0, 10])];
    expect(kinds(wholeFit({ ...bench, structure: [squareHull, through], parts }))).toEqual([
      'overlap pack wing',
    ]);
    const open = { ...through, openToHull: true };
    expect(kinds(wholeFit({ ...bench, structure: [squareHull, open], parts }))).toEqual([]);
  });

  test('an aircraft without hull or wing holds nothing, and nothing is said', () => {
    expect(kinds(wholeFit(benchOf([], [pack])))).toEqual([]);
  });
});

describe('pairs', () => {
  test('a part within a tank is no small overlap but told as within', () => {
    const tank = {
      id: 'tank',
      name: 'Tank',
      shape: box(100, 60, 60),
      positionMm: [200, 0, 0] as const,
      yawDeg: 0,
      pitchDeg: 0,
      rollDeg: 0,
      emptyMassG: 20,
      startMl: null,
      unusableMl: 0,
      feeds: 'outlet',
      rank: 1,
    };
    const bench = benchOf([squareHull], [partAt('pump', box(20, 20, 20), [200, 0, 0])], { tanks: [tank] });
    expect(kinds(wholeFit(bench))).toEqual(['within pump tank']);
  });

  test('rules, leads by their waypoints, and a clearance asked for', () => {
    const bench = benchOf(
      [squareHull],
      [partAt('a', box(20, 20, 20), [100, 0, 0]), partAt('b', box(20, 20, 20), [160, 0, 0])],
      {
        keepApart: [{ between: 'a', and: 'b', atLeastMm: 50, why: 'heat' }],
        leads: [
          {
            id: 'lead',
            name: 'Lead',
            from: 'a',
            to: 'b',
            lengthMm: 70,
            massGPerM: 10,
            waypointsMm: [[130, 40, 0]],
          },
        ],
      },
    );
    const { problems } = wholeFit(bench, { clearanceMm: 45 });
    const by = (kind: string) => problems.filter((one) => one.kind === kind).map(({ byMm }) => byMm);
    // 40 between the faces; two stretches of hypot(30, 40).
    expect(by('tooNear').sort((x, y) => x - y)).toEqual([5, 10].map((mm) => expect.closeTo(mm, 6)));
    expect(by('shortLead')).toEqual([expect.closeTo(30, 9)]);
  });

  test('a wheel that swings into a former; a strut in its mount is no clash', () => {
    const former = blockAt('former', box(4, 100, 100), [420, 0, -30]);
    const mount = blockAt('mount', box(30, 40, 20), [300, 0, -15]);
    expect(kinds(wholeFit(benchOf([squareHull, leg, former, mount], [])))).toEqual([
      'overlap nose-leg former',
    ]);
  });
});

describe('what a change makes worse', () => {
  test('only what is new, deeper, or holds in more states', () => {
    const clear = placeItem(carried, 'pack', [520, 0, -20]);
    expect(fitRefusals(carried, clear)).toEqual([]);
    expect(fitRefusals(clear, carried)).toHaveLength(1);
    expect(fitRefusals(carried, placeItem(carried, 'pack', [420, 5, -20]))).toEqual([]);
    expect(fitRefusals(carried, placeItem(carried, 'pack', [540, 0, -30]))).toEqual([]);
    expect(fitRefusals(carried, placeItem(carried, 'pack', [580, 0, -30])).map(({ kind }) => kind)).toEqual([
      'through',
    ]);
  });
});

test('a move leaves every judgement about others as it was, and comes out as if judged afresh', () => {
  const many = benchOf(
    [squareHull, leg, wing],
    Array.from({ length: 30 }, (_, i) =>
      partAt(`part-${i}`, box(30, 30, 30), [30 + 19 * i, (i % 5) * 13, -30]),
    ),
  );
  wholeFit(many);
  const moved = placeItem(many, 'part-7', [300, 0, 10]);
  const fresh = structuredClone(moved);
  expect(kinds(wholeFit(moved))).toEqual(kinds(wholeFit(fresh)));
  expect(kinds(wholeFit(moved)).length).toBeGreaterThan(10);
});
