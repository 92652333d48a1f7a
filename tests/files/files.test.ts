import { describe, expect, test } from 'vitest';
import type { FileHandle, FilePickers } from '../../src/files/filePickers';
import { openDropped, openFile } from '../../src/files/openFile';
import { fileName, saveFile } from '../../src/files/saveFile';
import { blankAircraft } from '../../src/model/document/blank';
import { writeAircraft } from '../../src/model/document/write';

const aircraft = { ...blankAircraft(), name: 'Sand Martin' };
const text = writeAircraft(aircraft);

function handleOf(name: string, start: string): FileHandle & { written(): string } {
  let held = start;
  return {
    name,
    getFile: async () => new File([held], name),
    createWritable: async () => {
      let next = '';
      return {
        write: async (more) => {
          next += more;
        },
        close: async () => {
          held = next;
        },
      };
    },
    written: () => held,
  };
}

const cancel = async () => {
  throw new DOMException('The user aborted a request.', 'AbortError');
};

function plainPickers(chosen: File | null = null) {
  const downloads: [string, string][] = [];
  const pickers: FilePickers = {
    chooseFile: async () => chosen,
    download: (name, body) => {
      downloads.push([name, String(body)]);
    },
  };
  return { pickers, downloads };
}

describe('openFile', () => {
  test('reads the chosen file, with a handle where the browser gives one', async () => {
    const handle = handleOf('martin.json', text);
    const opened = await openFile({ ...plainPickers().pickers, showOpenFilePicker: async () => [handle] });
    expect(opened).toMatchObject({ name: 'martin.json', read: { ok: true, aircraft } });
    expect(opened?.handle).toBe(handle);
  });

  test('reads it through an input elsewhere', async () => {
    const opened = await openFile(plainPickers(new File([text], 'martin.json')).pickers);
    expect(opened).toMatchObject({ name: 'martin.json', handle: null, read: { ok: true } });
  });

  test('a bad file comes back as its faults', async () => {
    const opened = await openDropped(new File(['{"format": 1'], 'bad.json'));
    expect(opened.read).toMatchObject({ ok: false, faults: [{ path: 'line 1, column 13' }] });
  });

  test('a closed picker is nothing', async () => {
    expect(await openFile(plainPickers().pickers)).toBeNull();
    expect(await openFile({ ...plainPickers().pickers, showOpenFilePicker: cancel })).toBeNull();
  });
});

describe('saveFile', () => {
  test('writes over the file it came from', async () => {
    const handle = handleOf('martin.json', 'old');
    expect(await saveFile(plainPickers().pickers, aircraft, handle)).toEqual({ name: 'martin.json', handle });
    expect(handle.written()).toBe(text);
  });

  test('asks where, suggesting a name', async () => {
    const handle = handleOf('elsewhere.json', '');
    let suggested: string | undefined;
    const pickers = {
      ...plainPickers().pickers,
      showSaveFilePicker: async (options: { suggestedName?: string }) => {
        suggested = options.suggestedName;
        return handle;
      },
    };
    await saveFile(pickers, aircraft);
    expect(suggested).toBe('sand-martin.json');
    expect(handle.written()).toBe(text);
  });

  test('downloads where there is nothing better', async () => {
    const { pickers, downloads } = plainPickers();
    await saveFile(pickers, aircraft);
    expect(downloads).toEqual([['sand-martin.json', text]]);
  });

  test('a closed picker saves nothing; a disk that refuses is heard', async () => {
    const { pickers, downloads } = plainPickers();
    expect(await saveFile({ ...pickers, showSaveFilePicker: cancel }, aircraft)).toBeNull();
    expect(downloads).toEqual([]);
    const full = { ...handleOf('x.json', ''), createWritable: () => Promise.reject(new Error('disk full')) };
    await expect(saveFile(pickers, aircraft, full)).rejects.toThrow('disk full');
  });
});

test.each([
  ['Sand Martin', 'sand-martin.json'],
  ['Élan n° 2 / prototype', 'elan-n-2-prototype.json'],
  ['***', 'aircraft.json'],
])('%s is kept as %s', (name, file) => {
  expect(fileName({ ...aircraft, name })).toBe(file);
});
