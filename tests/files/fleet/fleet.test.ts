import 'fake-indexeddb/auto';
import { describe, expect, test } from 'vitest';
import { copyName } from '../../../src/files/fleet/actions';
import { cardOf } from '../../../src/files/fleet/cardOf';
import { databaseShelves } from '../../../src/files/fleet/databaseShelves';
import { createFleet } from '../../../src/files/fleet/fleet';
import { memoryShelves, type Shelves } from '../../../src/files/fleet/shelves';
import { fleetToFile, takeInFleet } from '../../../src/files/fleet/wholeFleet';
import { isName } from '../../../src/model/document/names';
import { writeAircraft } from '../../../src/model/document/write';
import { readFleetFile } from '../../../src/model/reading/fleetFile';
import { demo as demoAircraft } from '../../demo/demoAircraft';

const knot = demoAircraft('sandmartin');
const named = (name: string) => ({ ...knot, name });

const putOf = (id: string, name: string, seen: string | null) => {
  const text = writeAircraft(named(name));
  return { card: cardOf(id, named(name), text, { tone: null, changedAtMs: 1 }), text, history: null, seen };
};

let databases = 0;
const stores: readonly (readonly [string, () => Promise<Shelves>])[] = [
  ['in the browser’s database', () => databaseShelves(`test ${++databases}`, { gone: () => {} })],
  ['in the tab’s memory', async () => memoryShelves()],
];

describe.each(stores)('a fleet %s', (_where, open) => {
  test('gives back what was put, place by place', async () => {
    const fleet = createFleet(await open());
    await fleet.put(putOf('a', 'Knot', null));
    await fleet.put(putOf('b', 'Ruff', null));
    expect((await fleet.cards()).map(({ id, name }) => [id, name])).toEqual([
      ['a', 'Knot'],
      ['b', 'Ruff'],
    ]);
    expect((await fleet.read('a'))?.text).toBe(writeAircraft(named('Knot')));
    expect(await fleet.read('c')).toBeNull();
    await fleet.forget('a');
    expect([await fleet.read('a'), (await fleet.cards()).length]).toEqual([null, 1]);
  });

  test('a state that the writer had not seen becomes a revision, one that it had seen does not', async () => {
    const fleet = createFleet(await open());
    const first = await fleet.put(putOf('a', 'Knot', null));
    const second = await fleet.put(putOf('a', 'Red Knot', first));
    expect(await fleet.revisions('a')).toEqual([]);
    // Another tab that only saw the first.
    await fleet.put(putOf('a', 'Great Knot', first));
    expect((await fleet.revisions('a')).map(({ text }) => text)).toEqual([writeAircraft(named('Red Knot'))]);
    expect((await fleet.read('a'))?.stamp).not.toBe(second);
  });

  test('two writers in turn, neither of which sees the other, lose no state in 100 rounds', async () => {
    const fleet = createFleet(await open());
    const seen: (string | null)[] = [null, null];
    for (let round = 0; round < 100; round++)
      seen[round % 2] = await fleet.put(putOf('a', `round ${round}`, seen[round % 2] ?? null));
    const texts = (await fleet.revisions('a')).map(({ text }) => text);
    expect(new Set([...texts, (await fleet.read('a'))?.text]).size).toBe(100);
  });

  test('revisions are the aircraft’s own, latest first, and may be named', async () => {
    const fleet = createFleet(await open());
    await fleet.put(putOf('a', 'Knot', null));
    for (const [fleetId, why] of [
      ['a', 'one'],
      ['ab', 'other'],
      ['a', 'two'],
    ] as const)
      await fleet.keepRevision({ fleetId, atMs: Date.now(), name: null, why, text: why });
    const [two, one] = await fleet.revisions('a');
    expect([two?.why, one?.why]).toEqual(['two', 'one']);
    await fleet.renameRevision('a', one!.key, 'flown');
    await fleet.forgetRevision('a', two!.key);
    expect((await fleet.revisions('a')).map(({ name }) => name)).toEqual(['flown']);
  });
});

test('a revision from a file with a date to come is no later than it says, and pushes none out', async () => {
  const fleet = createFleet(memoryShelves());
  await fleet.put(putOf('a', 'Knot', null));
  const revision = (atMs: number, why: string) => ({ fleetId: 'a', atMs, name: null, why, text: why });
  await fleet.keepRevision(revision(8.64e15, 'to come'));
  await fleet.keepRevision(revision(Date.now(), 'now'));
  // Another tab, or the next visit.
  const again = createFleet(memoryShelves());
  for (const each of [...(await fleet.revisions('a'))].reverse()) await again.keepRevision(each);
  const keys = (await fleet.revisions('a')).map(({ key }) => key);
  expect(Math.max(...keys)).toBeLessThan(8.64e15);
  expect((await again.revisions('a')).map(({ why }) => why)).toEqual(['to come', 'now']);
});

describe('a fleet as one file', () => {
  const full = async () => {
    const fleet = createFleet(memoryShelves());
    for (const [id, name] of [
      ['a', 'Knot'],
      ['b', 'Ruff'],
    ] as const)
      await fleet.put(putOf(id, name, null));
    await fleet.keepRevision({
      fleetId: 'a',
      atMs: 5,
      name: 'maiden flight',
      why: '',
      text: writeAircraft(named('Young Knot')),
    });
    return fleet;
  };
  const asFile = (text: string) => new File([text], 'fleet.json');

  test('comes in elsewhere as it went out, revisions too; once more it changes nothing', async () => {
    const { text, count } = await fleetToFile(await full());
    expect(count).toBe(2);
    const other = createFleet(memoryShelves());
    expect(await takeInFleet(other, asFile(text))).toMatchObject({ ok: true, left: 0 });
    expect(readFleetFile((await fleetToFile(other)).text)).toEqual(readFleetFile(text));
    expect((await takeInFleet(other, asFile(text))).sentence).toMatch(/0 taken in, 2 were there already/);
    expect(await other.cards()).toHaveLength(2);
  });

  test('what is at the same place in another state stays, and the file’s comes beside it', async () => {
    const { text } = await fleetToFile(await full());
    const other = createFleet(memoryShelves());
    await other.put(putOf('a', 'Dunlin', null));
    expect((await takeInFleet(other, asFile(text))).sentence).toMatch(/1 taken in, 1 came as a copy beside/);
    expect((await other.cards()).map(({ name }) => name).sort()).toEqual(['Dunlin', 'Knot', 'Ruff']);
    expect((await other.read('a'))?.text).toBe(writeAircraft(named('Dunlin')));
  });

  test('what is there already gets the revisions of the file that it has not', async () => {
    const { text } = await fleetToFile(await full());
    const other = createFleet(memoryShelves());
    await other.put(putOf('z', 'Knot', null));
    for (let time = 0; time < 2; time++) await takeInFleet(other, asFile(text));
    expect((await other.cards()).map(({ name }) => name).sort()).toEqual(['Knot', 'Ruff']);
    expect((await other.revisions('z')).map(({ name, atMs }) => [name, atMs])).toEqual([
      ['maiden flight', 5],
    ]);
  });

  test('where the room ends in the middle, what came is there, the rest is told, and comes the next time', async () => {
    const { text } = await fleetToFile(await full());
    const shelves = memoryShelves();
    let room = 1;
    const other = createFleet({
      ...shelves,
      update: async (table, key, follows) => {
        if (room-- <= 0) throw new DOMException('The quota has been exceeded.', 'QuotaExceededError');
        await shelves.update(table, key, follows);
      },
    });
    const told = await takeInFleet(other, asFile(text));
    expect(told.sentence).toMatch(/0 taken in\. 2 are not taken in whole: the browser has no room/);
    expect((await other.cards()).map(({ name }) => name)).toEqual(['Knot']);
    room = 99;
    await takeInFleet(other, asFile(text));
    expect(readFleetFile((await fleetToFile(other)).text)).toEqual(readFleetFile(text));
  });

  test('a revision’s name that cannot be shown comes as text', async () => {
    const { text } = await fleetToFile(await full());
    const json = JSON.parse(text);
    json.aircraft[0].revisions[0].name = `\u202e${'x'.repeat(10_000)}`;
    const [entry] = readFleetFile(JSON.stringify(json)).entries;
    expect(isName(entry?.revisions[0]?.name ?? '')).toBe(true);
  });

  test('a damaged aircraft in it is told with its place and left out, the others come', async () => {
    const { text } = await fleetToFile(await full());
    const json = JSON.parse(text);
    json.aircraft[0].aircraft.parts[0].massG = 'heavy';
    const other = createFleet(memoryShelves());
    const told = await takeInFleet(other, asFile(JSON.stringify(json)));
    expect(told.sentence).toMatch(/1 could not be read.*aircraft\[0\].*massG/);
    expect((await other.cards()).map(({ name }) => name)).toEqual(['Ruff']);
  });

  test.each([
    ['', /empty/],
    ['{"format":', /line 1/],
    ['[]', /format: expected "counterpoise fleet", got nothing/],
    ['{"format":"counterpoise fleet","version":2,"aircraft":[]}', /version: expected 1, got 2/],
    ['{"format":"counterpoise fleet","version":1,"aircraft":{}}', /aircraft: expected a list/],
    ['{"format":"counterpoise fleet","version":1,"aircraft":[]}', /no aircraft is in it/],
    ['{"format":"counterpoise fleet","version":1,"aircraft":[null,1]}', /aircraft\[0\]/],
  ])('%j is refused in a sentence', async (text, words) => {
    const fleet = createFleet(memoryShelves());
    const told = await takeInFleet(fleet, asFile(text));
    expect(told.ok).toBe(false);
    expect(told.sentence).toMatch(words);
    expect(await fleet.cards()).toEqual([]);
  });
});

test('a copy has a name that is not taken', () => {
  expect(copyName('Knot', new Set(['Knot']))).toBe('Knot copy');
  expect(copyName('Knot copy', new Set(['Knot', 'Knot copy']))).toBe('Knot copy 2');
  expect(copyName('K'.repeat(200), new Set())).toHaveLength(200);
});
