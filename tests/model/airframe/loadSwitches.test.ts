import { describe, expect, test } from 'vitest';
import { flyingStart, flyingStates, isFlying, standStates } from '../../../src/model/airframe/flyingStates';
import { inLoadState, positionOf, switchesOf } from '../../../src/model/airframe/loadSwitches';
import type { Aircraft, StructurePiece, TankItem } from '../../../src/model/document/types';
import { aircraftOf, boxBlock, boxPart } from '../aircraft';

const tank = (id: string, feeds: string): TankItem => ({
  id,
  name: id,
  shape: { kind: 'box', lengthMm: 100, widthMm: 60, heightMm: 40 },
  positionMm: [0, 0, 0],
  yawDeg: 0,
  pitchDeg: 0,
  rollDeg: 0,
  emptyMassG: 40,
  startMl: null,
  unusableMl: 0,
  feeds,
  rank: 0,
});
const position = (id: string, more = {}) => ({ id, name: id, ...more });
const aircraft: Aircraft = {
  ...aircraftOf([], [boxPart('camera', 100, [0, 0, 0]), boxPart('pack', 100, [0, 0, 0])]),
  tanks: [tank('tip', 'main'), tank('main', 'header'), tank('header', 'outlet')],
  switches: [
    { id: 'camera', name: 'Camera', positions: [position('on'), position('off', { without: ['camera'] })] },
    {
      id: 'cover',
      name: 'Cover',
      positions: [position('off', { onStand: true, without: ['pack'] }), position('on')],
    },
    {
      id: 'tanks',
      name: 'Tanks',
      positions: [
        position('all'),
        position('without main', { without: ['main'] }),
        position('tip alone', { without: ['main', 'header'] }),
        position('main empty', { empty: ['main'] }),
      ],
    },
  ],
};
const feeds = (chosen: string) =>
  inLoadState(aircraft, { cover: 'on', tanks: chosen }).tanks.map(({ id, feeds: to }) => `${id}→${to}`);

describe('what a switch changes', () => {
  test('a tank whose next is not aboard feeds what that one fed, along the line to the outlet', () => {
    expect(feeds('all')).toEqual(['tip→main', 'main→header', 'header→outlet']);
    expect(feeds('without main')).toEqual(['tip→header', 'header→outlet']);
    expect(feeds('tip alone')).toEqual(['tip→outlet']);
  });

  test('an emptied tank stays aboard and starts with nothing, and no other does', () => {
    const { tanks } = inLoadState(aircraft, { cover: 'on', tanks: 'main empty' });
    expect(tanks.map(({ startMl }) => startMl)).toEqual([null, 0, null]);
  });

  test('what is left out is not aboard, and all else is', () => {
    const ids = inLoadState(aircraft, { camera: 'off', cover: 'on' }).parts.map(({ id }) => id);
    expect(ids).toEqual(['pack']);
  });

  test('a position that a switch does not have counts as its first', () => {
    const [camera] = switchesOf(aircraft);
    expect(positionOf(camera!, { camera: 'no such' }).id).toBe('on');
  });
});

describe('which states fly', () => {
  test('a flight starts with every switch in the first of its positions that fly', () => {
    expect(flyingStart(aircraft)).toEqual({ camera: 'on', cover: 'on', tanks: 'all' });
  });

  test('all combinations of positions that fly, 2 × 1 × 4, and none with the stand’s', () => {
    const states = flyingStates(aircraft);
    expect(states).toHaveLength(8);
    expect(states.every((chosen) => chosen.cover === 'on' && isFlying(aircraft, chosen))).toBe(true);
    expect(isFlying(aircraft, { cover: 'off' })).toBe(false);
  });

  test('of states about one thing only the switches that bear on it are gone through', () => {
    expect(flyingStates(aircraft, new Set(['camera'])).map(({ camera }) => camera)).toEqual(['on', 'off']);
  });

  test('a position of the stand is looked at with the others as a flight starts', () => {
    expect(standStates(aircraft)).toEqual([{ camera: 'on', cover: 'off', tanks: 'all' }]);
  });
});

test('a switch none of whose positions fly holds nothing on the ground', () => {
  const onStand = { onStand: true };
  const stuck = [{ id: 'jig', name: 'Jig', positions: [position('a', onStand), position('b', onStand)] }];
  const jigged = { ...aircraft, switches: stuck };
  expect(isFlying(jigged, { jig: 'a' })).toBe(true);
  expect(standStates(jigged)).toEqual([]);
});

test('with the wheels up only the legs move, and one leg makes two states', () => {
  const leg: StructurePiece = {
    id: 'leg',
    kind: 'leg',
    name: 'Leg',
    sides: 'both',
    topMm: [500, 60, -70],
    axleMm: [500, 200, -230],
    strutDiameterMm: 8,
    strutMassG: 90,
    wheelDiameterMm: 80,
    wheelWidthMm: 25,
    wheelMassG: 60,
    retract: { axis: [0, -1, 0], angleDeg: 90 },
  };
  const keel = boxBlock('keel', [450, 0, 0], { by: 'weighed', massG: 1200 });
  const wheeled = aircraftOf([keel, leg]);
  expect(flyingStates(wheeled)).toHaveLength(2);
  const { structure } = inLoadState(wheeled, { undercarriage: 'up' });
  expect(structure[0]).toBe(keel);
  expect(structure[1]).not.toEqual(leg);
});
