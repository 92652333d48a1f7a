import { describe, expect, test } from 'vitest';
import { createFileMenu, type Demo } from '../../src/files/fileMenu';
import type { FilePickers } from '../../src/files/filePickers';
import { createKeptShelf } from '../../src/files/keptShelf';
import { blankAircraft } from '../../src/model/document/blank';
import { writeAircraft } from '../../src/model/document/write';
import { createBench } from '../../src/store/bench';
import { mapStorage } from './mapStorage';

const named = (name: string) => ({ ...blankAircraft(), name });

function table(pickers: Partial<FilePickers> = {}, demos: readonly Demo[] = []) {
  const bench = createBench(named('Knot'));
  const files = createFileMenu(
    bench,
    { chooseFile: async () => null, download: () => {}, ...pickers },
    demos,
    createKeptShelf(mapStorage()),
  );
  const said = () => bench.notice.api.getState().notices.map(({ tone, text }) => `${tone}: ${text}`);
  const name = () => bench.document.current().name;
  return { bench, files, said, name };
}

const fileOf = (text: string, name = 'ruff.json') => new File([text], name);

describe('what comes onto the bench can be undone, with the history before it', () => {
  test('New, Open and Choose are steps, one on the other', async () => {
    const ruff = fileOf(writeAircraft(named('Ruff')));
    const snipe: Demo = { id: 'snipe', name: 'Snipe', lesson: '', load: async () => named('Snipe') };
    const { bench, files, name } = table({ chooseFile: async () => ruff }, [snipe]);
    const { document, view } = bench;
    document.commit('Rename', named('Red Knot'));
    files.newAircraft();
    await files.openFile();
    view.setState({ selectedId: 'nose', fuelFraction: 0.5 });
    await files.openDemo('snipe');
    // Another aircraft is looked at afresh.
    expect(view.getState()).toMatchObject({ selectedId: null, fuelFraction: 1 });
    const back = [name()];
    const labels = document.api.getState().past.map(({ label }) => label);
    while (document.api.getState().past.length > 0) {
      document.undo();
      back.push(name());
    }
    expect(back).toEqual(['Snipe', 'Ruff', 'New aircraft', 'Red Knot', 'Knot']);
    expect(labels).toEqual(['Rename', 'New, an empty bench', 'Open ruff.json', 'Choose Snipe']);
    for (let step = 0; step < 4; step++) document.redo();
    expect(name()).toBe('Snipe');
  });
});

describe('each saving and opening says how it ended', () => {
  const handle = (write: () => Promise<void>) => ({
    name: 'knot.json',
    getFile: async () => fileOf(''),
    createWritable: async () => ({ write, close: async () => {} }),
  });
  const abort = async () => {
    throw new DOMException('The user aborted a request.', 'AbortError');
  };
  test.each<[string, Partial<FilePickers>, RegExp]>([
    [
      'by a handle',
      { showSaveFilePicker: async () => handle(async () => {}) },
      /^done: Saved as knot\.json\.$/,
    ],
    ['by a download', {}, /^done: Saved as knot\.json, in the browser’s downloads\.$/],
    ['thought better of', { showSaveFilePicker: abort }, /^bad: Not saved: no file was chosen\.$/],
    [
      'refused by the picker',
      {
        showSaveFilePicker: async () => {
          throw new DOMException('Must be handling a user gesture.', 'SecurityError');
        },
      },
      /^bad: Not saved: Must be handling a user gesture\./,
    ],
    [
      'refused by the disk',
      {
        showSaveFilePicker: async () =>
          handle(async () => {
            throw new Error('The disk is full.');
          }),
      },
      /^bad: Not saved: The disk is full\. /,
    ],
  ])('saving %s', async (_how, pickers, expected) => {
    const { files, said } = table(pickers);
    await files.saveFile();
    expect(said()).toEqual([expect.stringMatching(expected)]);
  });

  test('an opening that fails tells it and changes nothing; one with faults gives them all', async () => {
    const { files, said, name, bench } = table({
      showOpenFilePicker: async () => {
        throw new Error('The disk is gone');
      },
    });
    expect(await files.openFile()).toEqual({ ok: false, cancelled: true });
    expect(said()).toEqual([expect.stringMatching(/^bad: Not opened: The disk is gone\./)]);
    const dropped = (files_: readonly File[]) => files_ as unknown as FileList;
    expect(await files.openDropped(dropped([fileOf('{}')]))).toMatchObject({
      ok: false,
      fileName: 'ruff.json',
    });
    await files.openDropped(dropped([fileOf('{}'), fileOf('{}')]));
    expect(said().at(-1)).toMatch(/2 files were dropped/);
    expect([name(), bench.document.api.getState().past]).toEqual(['Knot', []]);
    expect(await files.openDropped(dropped([fileOf(writeAircraft(named('Ruff')))]))).toEqual({ ok: true });
    expect(name()).toBe('Ruff');
  });

  test('a demo that does not come offers to be fetched again', async () => {
    let there = false;
    const snipe: Demo = {
      id: 'snipe',
      name: 'Snipe',
      lesson: '',
      load: async () => {
        if (!there) throw new Error('Failed to fetch');
        return named('Snipe');
      },
    };
    const { bench, files, said, name } = table({}, [snipe]);
    await files.openDemo('snipe');
    expect(said()).toEqual([expect.stringMatching(/^bad: Snipe could not be fetched/)]);
    there = true;
    bench.notice.api.getState().notices[0]?.actions?.[0]?.run();
    await expect.poll(name).toBe('Snipe');
    expect(said()).toEqual([]);
  });
});
