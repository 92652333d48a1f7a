import { describe, expect, test } from 'vitest';
import { addPart, placeItem, removeItem, updatePart } from '../../../src/model/document/edit';
import { differencesOf } from '../../../src/model/history/differences';
import { MANY_THINGS, thingsChanged } from '../../../src/model/history/largeStep';
import { changeWords, memberWords } from '../../../src/model/words/changeWords';
import { readings } from '../../../src/panels/readings';
import { demo as demoAircraft } from '../../demo/demoAircraft';

const before = demoAircraft('sandmartin');
const say = readings('metric', 0);
const words = (after: typeof before) =>
  differencesOf(before, after).things.map((each) => changeWords(each, say));
const camera = before.parts.find(({ id }) => id === 'camera')!;

describe('what changed between two states', () => {
  test('nothing of a copy that is written and read again', () => {
    expect(differencesOf(before, JSON.parse(JSON.stringify(before)))).toEqual({ things: [], members: [] });
  });

  test('each edit is told in its own figures', () => {
    const [x, y, z] = camera.positionMm;
    expect(words(placeItem(before, 'camera', [x + 12, y, z - 3]))).toEqual([
      `${camera.name}: ${say.length(12)} aft and ${say.length(3)} down.`,
    ]);
    expect(words(updatePart(before, 'camera', { massG: camera.massG + 20, name: 'Eye' }))).toEqual([
      `Eye: was called ${camera.name} and ${say.mass(20)} heavier.`,
    ]);
    expect(words(updatePart(before, 'camera', { yawDeg: 7 }))).toEqual([
      `${camera.name}: other entries changed.`,
    ]);
    expect(words(removeItem(before, 'camera'))).toContain(
      `${camera.name} came out, ${say.mass(camera.massG)} less.`,
    );
    const { id: _, ...like } = { ...camera, name: 'Second camera' };
    expect(words(addPart(before, like).aircraft)).toEqual([
      `Second camera came in, ${say.mass(camera.massG)}.`,
    ]);
  });

  test('it goes both ways: what was added one way was removed the other', () => {
    const after = removeItem(placeItem(before, before.parts[0]!.id, [1, 2, 3]), 'camera');
    const kinds = (from: typeof before, to: typeof before) =>
      differencesOf(from, to).things.map(({ id, kind, byG }) => ({ id, kind, byG }));
    const turned = { added: 'removed', removed: 'added', changed: 'changed' } as const;
    expect(
      kinds(after, before)
        .map(({ id, kind, byG }) => ({ id, kind: turned[kind], byG: kind === 'changed' ? 0 - byG : byG }))
        .sort((a, b) => (a.id < b.id ? -1 : 1)),
    ).toEqual(
      kinds(before, after)
        .map(({ id, kind, byG }) => ({ id, kind, byG: kind === 'changed' ? 0 + byG : byG }))
        .sort((a, b) => (a.id < b.id ? -1 : 1)),
    );
  });

  test('members beside the things are named, those without a name once', () => {
    const after = { ...before, notes: 'flown', lateralToleranceMm: 9, gridMm: 1 };
    expect(memberWords(differencesOf(before, after))).toBe(
      'The notes, the lateral tolerance and other entries changed.',
    );
    expect(memberWords(differencesOf(before, before))).toBeNull();
  });
});

test('a step counts the things that it touches', () => {
  expect(thingsChanged(before, placeItem(before, 'camera', [0, 0, 0]))).toBe(1);
  expect(thingsChanged(before, removeItem(before, 'camera'))).toBe(1);
  const moved = before.parts
    .slice(0, MANY_THINGS)
    .reduce((all, { id }) => placeItem(all, id, [1, 1, 1]), before);
  expect(thingsChanged(before, moved)).toBe(MANY_THINGS);
});
