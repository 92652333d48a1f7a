import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { blankAircraft } from '../../src/model/document/blank';
import { addPart, mirrorPart, placeItem, removeItem } from '../../src/model/document/edit';
import type { Aircraft, Part } from '../../src/model/document/types';
import { createDocumentStore } from '../../src/store/documentStore';
import { createDrag } from '../../src/store/drag';

const pack: Omit<Part, 'id'> = {
  name: 'Pack',
  role: 'energy',
  shape: { kind: 'box', lengthMm: 100, widthMm: 40, heightMm: 30 },
  massG: 250,
  positionMm: [200, 0, 0],
  yawDeg: 0,
  pitchDeg: 0,
  rollDeg: 0,
};
const withPack = (): Aircraft => addPart(blankAircraft(), pack).aircraft;
const position = (aircraft: Aircraft) => aircraft.parts[0]?.positionMm;

describe('document', () => {
  test('undo and redo walk the same steps back and forth, however many', () => {
    fc.assert(
      fc.property(
        fc.array(fc.integer({ min: 0, max: 500 }), { minLength: 1, maxLength: 200 }),
        (stations) => {
          const store = createDocumentStore(withPack());
          const states = [store.current()];
          for (const x of stations) {
            store.commit('Move', placeItem(store.current(), 'pack', [x, 0, 0]));
            states.push(store.current());
          }
          for (let i = states.length - 2; i >= 0; i--) {
            store.undo();
            expect(store.current()).toBe(states[i]);
          }
          store.undo();
          expect(store.current()).toBe(states[0]);
          for (let i = 1; i < states.length; i++) {
            store.redo();
            expect(store.current()).toBe(states[i]);
          }
        },
      ),
      { numRuns: 30 },
    );
  });

  test('a new step drops what could be redone; an edit that changed nothing is no step', () => {
    const store = createDocumentStore(withPack());
    store.commit('Move', placeItem(store.current(), 'pack', [10, 0, 0]));
    store.undo();
    store.commit('Delete', removeItem(store.current(), 'pack'));
    store.redo();
    expect(store.current().parts).toHaveLength(0);
    const before = store.api.getState().past.length;
    store.commit('Nothing', store.current());
    expect(store.api.getState().past).toHaveLength(before);
  });
});

describe('drag', () => {
  test('previews live, and setting down is one step', () => {
    const store = createDocumentStore(withPack());
    const drag = createDrag(store);
    expect(drag.pickUp('pack')).toBe(true);
    for (let x = 201; x <= 260; x++) drag.moveTo([x, 0, 0]);
    expect(position(store.current())).toEqual([260, 0, 0]);
    expect(position(store.api.getState().committed)).toEqual([200, 0, 0]);
    drag.setDown();
    expect(store.api.getState().past).toHaveLength(1);
    store.undo();
    expect(position(store.current())).toEqual([200, 0, 0]);
  });

  test('cancel restores, and a drag that ends where it began is no step', () => {
    const store = createDocumentStore(withPack());
    const drag = createDrag(store);
    const before = store.current();
    drag.pickUp('pack');
    drag.moveTo([999, 5, 5]);
    drag.cancel();
    expect(store.current()).toBe(before);
    drag.pickUp('pack');
    drag.moveTo([300, 0, 0]);
    drag.moveTo([200, 0, 0]);
    drag.setDown();
    expect(store.api.getState().past).toHaveLength(0);
    expect(store.current()).toBe(before);
  });

  test('a locked item, a missing item and a second hand are refused', () => {
    const aircraft = withPack();
    const locked = { ...aircraft, parts: aircraft.parts.map((part) => ({ ...part, locked: true })) };
    expect(createDrag(createDocumentStore(locked)).pickUp('pack')).toBe(false);
    const drag = createDrag(createDocumentStore(aircraft));
    expect(drag.pickUp('no-such-thing')).toBe(false);
    expect(drag.pickUp('pack')).toBe(true);
    expect(drag.pickUp('pack')).toBe(false);
  });

  test('an item deleted while in hand leaves nothing in hand', () => {
    const store = createDocumentStore(withPack());
    const drag = createDrag(store);
    drag.pickUp('pack');
    store.commit('Delete', removeItem(store.api.getState().committed, 'pack'));
    drag.setDown();
    expect(drag.api.getState().itemId).toBeNull();
    expect(store.current().parts).toHaveLength(0);
  });

  const named = (name: string, change: Partial<Part> = {}) => ({ ...pack, name, ...change });
  /** Pack, Receiver, Camera (locked) and Servo, along a line. */
  const four = (): Aircraft =>
    [
      named('Receiver', { positionMm: [300, 10, 0] }),
      named('Camera', { positionMm: [400, 0, 5], locked: true }),
      named('Servo', { positionMm: [500, 0, 0] }),
    ].reduce((now, part) => addPart(now, part).aircraft, withPack());
  const places = (aircraft: Aircraft) => aircraft.parts.map(({ positionMm }) => positionMm);

  test('what is chosen together goes along by as much, what is locked stays, and it is one step', () => {
    const aircraft = four();
    const [packId, receiverId, cameraId] = aircraft.parts.map(({ id }) => id);
    const store = createDocumentStore(aircraft);
    const drag = createDrag(store, () => [packId!, cameraId!, receiverId!, 'gone']);
    const before = places(aircraft);
    expect(drag.pickUp(receiverId!)).toBe(true);
    drag.moveTo([310, 10, 0]);
    drag.moveTo([325, 4, -3]);
    const moved = [[225, -6, -3], [325, 4, -3], before[2], before[3]];
    expect(places(store.current())).toEqual(moved);
    drag.setDown();
    expect(store.api.getState().past).toHaveLength(1);
    expect(places(store.current())).toEqual(moved);
    store.undo();
    expect(places(store.current())).toEqual(before);
    drag.pickUp(packId!);
    drag.moveTo([0, 0, 0]);
    drag.cancel();
    expect(places(store.current())).toEqual(before);
    // What is not among them is dragged alone.
    drag.pickUp(aircraft.parts[3]!.id);
    drag.moveTo([501, 0, 0]);
    expect(places(store.current())).toEqual([...before.slice(0, 3), [501, 0, 0]]);
  });

  test('both of a mirrored pair, chosen together, go as far as the hand and no further', () => {
    const off = addPart(withPack(), named('Servo', { positionMm: [500, 80, 10] }));
    const { aircraft, id: twin } = mirrorPart(off.aircraft, off.id)!;
    const packId = aircraft.parts[0]!.id;
    const [[x, y, z]] = places(aircraft) as [Part['positionMm']];
    for (const inHand of [off.id, packId]) {
      const store = createDocumentStore(aircraft);
      const drag = createDrag(store, () => [packId, off.id, twin]);
      drag.pickUp(inHand);
      const [fromX, fromY, fromZ] = aircraft.parts.find(({ id }) => id === inHand)!.positionMm;
      drag.moveTo([fromX + 12, fromY + 5, fromZ - 2]);
      drag.setDown();
      expect(places(store.current())).toEqual([
        [x + 12, y + 5, z - 2],
        [512, 85, 8],
        [512, -85, 8],
      ]);
    }
  });
});
