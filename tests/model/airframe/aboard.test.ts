import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  aboardIn,
  bothStates,
  eitherStates,
  holdsIn,
  holdsInFlight,
  type InStates,
  legsIn,
  withinStates,
} from '../../../src/model/airframe/aboard';
import { combinations } from '../../../src/model/airframe/flyingStates';
import { switchesOf } from '../../../src/model/airframe/loadSwitches';
import type { Aircraft, SwitchItem } from '../../../src/model/document/types';
import { aircraftOf, boxPart } from '../aircraft';

const position = (id: string, more = {}) => ({ id, name: id, ...more });
const switches: readonly SwitchItem[] = [
  { id: 'camera', name: 'Camera', positions: [position('on'), position('off', { without: ['camera'] })] },
  { id: 'canopy', name: 'Canopy', positions: [position('on'), position('off', { onStand: true })] },
  {
    id: 'load',
    name: 'Load',
    positions: [
      position('both'),
      position('one', { without: ['left'] }),
      position('none', { without: ['left', 'right'] }),
    ],
  },
];
const aircraft: Aircraft = {
  ...aircraftOf(
    [],
    ['camera', 'left', 'right', 'pack'].map((id) => boxPart(id, 100, [0, 0, 0])),
  ),
  switches,
};
const all = combinations(switchesOf(aircraft));

/** Of every single state whether it is in a set: gone through one by one. */
const among = (states: InStates): readonly boolean[] =>
  all.map((chosen) => holdsIn(states, aircraft, chosen));
const size = (states: InStates) => among(states).filter(Boolean).length;
const same = (a: readonly boolean[], b: readonly boolean[]) => a.every((is, k) => is === b[k]);

const someStates: fc.Arbitrary<InStates> = fc
  .tuple(
    ...switchesOf(aircraft).map(({ id, name, positions }) =>
      fc
        .subarray([...positions], { minLength: 1 })
        .map((chosen) =>
          chosen.length === positions.length ? [] : [{ switchId: id, switchName: name, positions: chosen }],
        ),
    ),
  )
  .map((settings) => settings.flat());

/** Against sets of single states: intersection, subset and union. */
describe('sets of load states', () => {
  test('there are 2 × 2 × 3 states, and no switch named means all of them', () => {
    expect(all).toHaveLength(12);
    expect(size([])).toBe(12);
  });

  test('both at once is what the two share, or nothing', () => {
    fc.assert(
      fc.property(someStates, someStates, (a, b) => {
        const inB = among(b);
        const shared = among(a).map((is, k) => is && inB[k] === true);
        const both = bothStates(a, b);
        return both === null ? !shared.includes(true) : same(among(both), shared);
      }),
      { numRuns: 300 },
    );
  });

  test('within is a subset', () => {
    fc.assert(
      fc.property(someStates, someStates, (a, b) => {
        const inB = among(b);
        return withinStates(a, b) === among(a).every((is, k) => !is || inB[k]);
      }),
      { numRuns: 300 },
    );
  });

  test('either is the union wherever the union is such a set at all', () => {
    fc.assert(
      fc.property(someStates, someStates, (a, b) => {
        const inB = among(b);
        const union = among(a).map((is, k) => is || inB[k] === true);
        const either = eitherStates(a, b, aircraft);
        if (either) return same(among(either), union);
        // Every set there is, one by one: none may be the union.
        return !everySet().some((states) => same(among(states), union));
      }),
      { numRuns: 150 },
    );
  });
});

/** All 3 × 3 × 7 sets of positions, each switch in some of its positions. */
const everySet = (): readonly InStates[] =>
  switchesOf(aircraft).reduce<readonly InStates[]>(
    (sets, { id, name, positions }) =>
      sets.flatMap((set) =>
        Array.from({ length: 2 ** positions.length - 1 }, (_, k) => [
          ...set,
          {
            switchId: id,
            switchName: name,
            positions: positions.filter((__, bit) => Math.floor((k + 1) / 2 ** bit) % 2 === 1),
          },
        ]),
      ),
    [[]],
  );

describe('where things are aboard', () => {
  const where = (id: string) => size(aboardIn(aircraft, id));
  test('what no switch names is aboard in every state; what one leaves out, in the others', () => {
    expect(where('pack')).toBe(12);
    expect(where('camera')).toBe(6);
    expect(where('left')).toBe(4);
    expect(where('right')).toBe(8);
  });

  test('a position of the stand does not fly', () => {
    const { id: switchId, name: switchName, positions } = switchesOf(aircraft)[1]!;
    const at = (wanted: string): InStates => [
      { switchId, switchName, positions: positions.filter(({ id }) => id === wanted) },
    ];
    expect([at('on'), at('off'), []].map(holdsInFlight)).toEqual([true, false, true]);
  });

  test('without a leg that retracts, legs are as they are in every state', () => {
    expect(legsIn(aircraft, true)).toEqual([]);
  });
});
