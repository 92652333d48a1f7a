import { describe, expect, test } from 'vitest';
import { checkPlaced } from '../../../src/engine/place/check';
import type { BallastPlaced, Lead, Placed, PlaceProblem } from '../../../src/engine/place/types';
import { option } from './cases';

/** A pack and a receiver in a bay each, a former between, lead at the tail; sums by hand throughout. */
const problem: PlaceProblem = {
  cases: [
    { id: 'full', name: 'Full', massG: 1000, momentGmm: [400_000, 0, 0] },
    { id: 'dry', name: 'Dry', massG: 700, momentGmm: [266_000, 0, 0] },
  ],
  band: { forwardMm: 310, aftMm: 380 },
  lateralMm: 5,
  parts: [
    {
      id: 'pack',
      name: 'Pack',
      massesG: [300, 300],
      options: [option('nose', [100, -20, 0], [200, 20, 40], [60, 30, 20], [10, 0, 0])],
      present: { centreMm: [150, 0, 20], optionId: 'nose' },
    },
    {
      id: 'receiver',
      name: 'Receiver',
      massesG: [50, 0],
      options: [option('mid', [220, -30, 0], [320, 30, 40], [40, 20, 10])],
      present: { centreMm: [260, 0, 20], optionId: 'mid' },
    },
  ],
  obstacles: [{ id: 'former', name: 'Former', minMm: [204, -40, 0], maxMm: [207, 40, 60] }],
  spots: [{ id: 'tail', name: 'Tail', positionMm: [900, 0, 0], stepG: 5, mostG: 40 }],
  clearanceMm: 3,
  apart: [],
  leads: [],
};
const at = (id: 'pack' | 'receiver', x: number, y = 0, z = 20): Placed => ({
  id,
  optionId: id === 'pack' ? 'nose' : 'mid',
  centreMm: [x, y, z],
  cgMm: [id === 'pack' ? x + 10 : x, y, z],
  moved: true,
});
const placed = [at('pack', 150), at('receiver', 260)];
const ballast: readonly BallastPlaced[] = [{ spotId: 'tail', massG: 10 }];
const faultsOf = (
  change: Partial<PlaceProblem>,
  places: readonly Placed[] = placed,
  grams: readonly BallastPlaced[] = ballast,
  leastMm = 0,
) => checkPlaced({ ...problem, ...change }, places, grams, leastMm).faults;

test('masses, CG and margins are those of the sums by hand, each part where it is aboard', () => {
  const { cases, marginMm, faults } = checkPlaced(problem, placed, ballast);
  expect(faults).toEqual([]);
  const [full, dry] = [
    (400_000 + 300 * 160 + 50 * 260 + 10 * 900) / 1360,
    (266_000 + 300 * 160 + 10 * 900) / 1010,
  ];
  expect(cases.map(({ caseId, massG }) => [caseId, massG])).toEqual([
    ['full', 1360],
    ['dry', 1010],
  ]);
  [full, dry].forEach((cg, k) => {
    expect(cases[k]!.cgMm[0]).toBeCloseTo(cg, 9);
    expect(cases[k]!.forwardMarginMm).toBeCloseTo(cg - 310, 9);
    expect(cases[k]!.aftMarginMm).toBeCloseTo(380 - cg, 9);
    expect(cases[k]!.lateralMarginMm).toBe(5);
  });
  expect(marginMm).toBeCloseTo(Math.min(dry - 310, full - 310, 380 - full), 9);
});

test('a load state outside the band, ahead or behind, is told by its name and by how much', () => {
  const dry = (266_000 + 48_000 + 9000) / 1010;
  const outside = (mm: number) => [`Dry: the CG is ${mm.toFixed(3)} mm outside.`];
  const full = 470_000 / 1360;
  expect(faultsOf({ band: { forwardMm: dry + 1, aftMm: 380 } })).toEqual(outside(1));
  expect(faultsOf({ band: { forwardMm: 310, aftMm: full - 2 } })).toEqual([
    'Full: the CG is 2.000 mm outside.',
  ]);
  // A ten-thousandth is forgiven, and a margin that was asked for counts as the limit.
  expect(faultsOf({ band: { forwardMm: dry + 0.9e-4, aftMm: 380 } })).toEqual([]);
  expect(faultsOf({ band: { forwardMm: dry - 3, aftMm: 380 } }, placed, ballast, 3)).toEqual([]);
  expect(faultsOf({ band: { forwardMm: dry - 3, aftMm: 380 } }, placed, ballast, 4)).toEqual(outside(1));
});

test('off centre to either side is told, and not asked where it does not matter', () => {
  for (const side of [1, -1]) {
    const cases = problem.cases.map((state) => ({
      ...state,
      momentGmm: [state.momentGmm[0], side * 8080, 0] as const,
    }));
    expect(faultsOf({ cases })).toEqual([
      `Full: the CG is ${(8080 / 1360 - 5).toFixed(3)} mm too far off centre.`,
      'Dry: the CG is 3.000 mm too far off centre.',
    ]);
    const { faults, cases: free } = checkPlaced({ ...problem, cases, lateralMm: null }, placed, ballast);
    expect(faults).toEqual([]);
    expect(free[0]!.lateralMarginMm).toBeNull();
  }
});

describe('places', () => {
  test('a part sticks out of its bay, along any axis, by so much', () => {
    const [pack, receiver] = [at('pack', 150), at('receiver', 260)];
    expect(faultsOf({}, [at('pack', 129.5), receiver])).toEqual(['Pack sticks out of nose by 0.500 mm.']);
    expect(faultsOf({}, [pack, at('receiver', 260, 20.5)])).toEqual([
      'Receiver sticks out of mid by 0.500 mm.',
    ]);
    expect(faultsOf({}, [pack, at('receiver', 260, 0, 4)])).toEqual([
      'Receiver sticks out of mid by 1.000 mm.',
    ]);
    expect(faultsOf({}, [at('pack', 130 - 0.9e-4), receiver])).toEqual([]);
  });

  test('a part without a place, or in one that it does not have', () => {
    expect(faultsOf({}, [at('pack', 150)])).toEqual(['Receiver has no place.']);
    expect(faultsOf({}, [at('pack', 150), { ...at('receiver', 260), optionId: 'wing' }])).toEqual([
      'Receiver has no place.',
    ]);
  });

  test('too near each other, or to an obstacle, by what is missing of the gap along the best axis', () => {
    // The pack ends at 203.5, half a millimetre before the former.
    const wider = problem.parts.map((part) => ({
      ...part,
      options: part.options.map((each) => ({
        ...each,
        region: { minMm: [0, -90, -90], maxMm: [400, 90, 90] } as const,
      })),
    }));
    expect(faultsOf({ parts: wider }, [at('pack', 173.5), at('receiver', 260)])).toEqual([
      'Pack and Former are 2.500 mm too close.',
    ]);
    // Overlapping along all three, least across: 15 and 10 of half widths, 22 apart, 3 wanted.
    expect(faultsOf({ parts: wider, obstacles: [] }, [at('pack', 150), at('receiver', 150, 22)])).toEqual([
      'Receiver and Pack are 6.000 mm too close.',
    ]);
    expect(faultsOf({ parts: wider, obstacles: [] }, [at('pack', 150), at('receiver', 150, 28)])).toEqual([]);
    // Two obstacles are as they are.
    const twice = [...problem.obstacles, { ...problem.obstacles[0]!, id: 'doubler', name: 'Doubler' }];
    expect(faultsOf({ obstacles: twice })).toEqual([]);
  });

  test('a straight distance is from box to box', () => {
    // The receiver lies 60 mm behind the pack, whose box ends at 180; its own begins at 240.
    const rule = { id: 'far', a: 'receiver', b: 'pack', by: 'straight' } as const;
    expect(faultsOf({ apart: [{ ...rule, gapMm: 60 }] })).toEqual([]);
    expect(faultsOf({ apart: [{ ...rule, gapMm: 61 }] })).toEqual([
      'Receiver and Pack are 1.000 mm too close.',
    ]);
  });

  test('a stack of ballast takes room', () => {
    // 10 g of 0.01 g/mm³, 10 by 10 mm: 10 mm long, 5 of it either way.
    const body = { lengthMm: 60, widthMm: 10, heightMm: 10, densityGPerMm3: 0.01 };
    const spot = (x: number) => [{ ...problem.spots[0]!, positionMm: [x, 0, 20] as const, body }];
    const far = { band: { forwardMm: 0, aftMm: 900 } };
    expect(faultsOf({ ...far, spots: spot(288) })).toEqual([]);
    expect(faultsOf({ ...far, spots: spot(287) })).toEqual([
      'Receiver and Ballast at Tail are 1.000 mm too close.',
    ]);
  });
});

describe('leads', () => {
  const lead = (change: Partial<Lead>): Lead => ({
    id: 'l',
    name: 'Lead',
    from: 'pack',
    to: 'receiver',
    lengthMm: 200,
    ...change,
  });
  const moved = [at('pack', 150, -5, 10), at('receiver', 260, 15, 30)];

  test('along the axes, or straight by way of its points', () => {
    const wide = { lateralMm: null };
    expect(faultsOf({ ...wide, leads: [lead({ lengthMm: 150 })] }, moved)).toEqual([]);
    expect(faultsOf({ ...wide, leads: [lead({ lengthMm: 148 })] }, moved)).toEqual(['Lead is 2.0 mm short.']);
    const straight = Math.hypot(110, 20, 20);
    const by = 'straight' as const;
    expect(faultsOf({ ...wide, leads: [lead({ by, lengthMm: straight })] }, moved)).toEqual([]);
    expect(faultsOf({ ...wide, leads: [lead({ by, lengthMm: straight - 1 })] }, moved)).toEqual([
      'Lead is 1.0 mm short.',
    ]);
    const roundabout = Math.hypot(0, 35, 0) + Math.hypot(110, 15, 20);
    const waypointsMm = [[150, 30, 10] as const];
    expect(faultsOf({ ...wide, leads: [lead({ by, waypointsMm, lengthMm: roundabout })] }, moved)).toEqual(
      [],
    );
    expect(
      faultsOf({ ...wide, leads: [lead({ by, waypointsMm, lengthMm: roundabout - 3 })] }, moved),
    ).toEqual(['Lead is 3.0 mm short.']);
    // To a fixed point, and to the middle of an obstacle.
    expect(faultsOf({ leads: [lead({ to: [300, 0, 20], lengthMm: 149 })] })).toEqual([
      'Lead is 1.0 mm short.',
    ]);
    expect(faultsOf({ leads: [lead({ to: 'former', lengthMm: 65 })] })).toEqual(['Lead is 0.5 mm short.']);
  });

  test('one whose end has no place is not measured; that the end has none is told', () => {
    expect(faultsOf({ leads: [lead({})] }, [at('pack', 150)])).toEqual(['Receiver has no place.']);
  });

  test('what it weighs pulls at its middle, in the load states in which it is aboard', () => {
    const mass = { massG: 20, gPerMm: 0.1, aboard: [true, false] };
    const { cases } = checkPlaced({ ...problem, leads: [lead({ mass })] }, placed, []);
    // 20 g and a tenth for each of its 110 mm, at 205.
    expect(cases.map(({ massG }) => massG)).toEqual([1350 + 31, 1000]);
    expect(cases[0]!.cgMm[0]).toBeCloseTo((400_000 + 48_000 + 13_000 + 31 * 205) / 1381, 9);
    expect(cases[1]!.cgMm[0]).toBeCloseTo((266_000 + 48_000) / 1000, 9);
  });
});

test('ballast in whole steps, no more than the spot takes, at a spot that there is', () => {
  const faults = (massG: number, spotId = 'tail') =>
    faultsOf({ band: { forwardMm: 0, aftMm: 900 } }, placed, [{ spotId, massG }]);
  expect([faults(0), faults(40)]).toEqual([[], []]);
  expect(faults(12)).toEqual(['Tail cannot take 12 g in steps of 5 g.']);
  expect(faults(45)).toEqual(['Tail cannot take 45 g in steps of 5 g.']);
  expect(faults(-5)).toEqual(['Tail cannot take -5 g in steps of 5 g.']);
  expect(faults(10, 'nose')).toEqual(['There is no ballast spot nose.']);
});
