import { describe, expect, test } from 'vitest';
import { isName, isNote, shownText } from '../../../src/model/document/names';
import { faultCount, MOST_FAULTS } from '../../../src/model/reading/fault';
import { LARGEST_FILE } from '../../../src/model/reading/fileSize';
import { readFileBytes } from '../../../src/model/reading/fileText';
import { parseAircraft, readAircraft, UNCHECKED } from '../../../src/model/reading/read';
import { dunlinJson, dunlinText } from '../aircraft';

const faultsIn = (text: string) => {
  const read = parseAircraft(text);
  return read.ok ? [] : read.faults;
};
const sentences = (json: unknown): string => {
  const read = readAircraft(json);
  return read.ok ? '' : read.faults.map(({ sentence }) => sentence).join('\n');
};

describe('nothing makes the reading throw', () => {
  const lists = ['parts', 'tanks', 'structure', 'referencePoints', 'switches', 'bays', 'hatches', 'leads'];
  const odd: readonly unknown[] = [null, 1, 'text', true, [], {}, [null], [1], [[]], [{}]];

  test('odd things in place of each list, beside switches and leads', () => {
    for (const key of [...lists, 'keepApart', 'ballastSpots', 'fuel', 'targetBand', 'stability']) {
      for (const thing of odd) {
        const json = dunlinJson();
        json.switches = [
          {
            id: 's',
            name: 'S',
            positions: [
              { id: 'a', name: 'a' },
              { id: 'b', name: 'b', without: ['engine'] },
            ],
          },
        ];
        json[key] = thing;
        expect(sentences(json), `${key} = ${JSON.stringify(thing)}`).not.toContain(UNCHECKED);
      }
    }
  });

  test('ids and keys that every object has already', () => {
    const json = dunlinJson();
    json.parts[0].id = 'constructor';
    expect(readAircraft(json).ok).toBe(true);
    for (const id of ['__proto__', 'toString', 'hasOwnProperty']) {
      json.parts[0].id = id;
      expect(sentences(json)).toMatch(/expected an id/);
    }
    const own = dunlinText.replace('"format"', '"toString": {"a": 1}, "constructor": 2, "format"');
    expect(parseAircraft(own).ok).toBe(true);
    // The one key that no program can be trusted to hand on, however it is written.
    for (const key of ['__proto__', '\\u005f_proto__'])
      expect(faultsIn(`{"a": {"${key}": {"massG": 5}}}`)[0]?.sentence).toBe(
        'At line 1, column 8: the key "__proto__" cannot be kept; expected another key.',
      );
  });

  test.each([
    ['deep lists', '['.repeat(200_000)],
    ['deep objects, closed', `${'{"a":'.repeat(200_000)}1${'}'.repeat(200_000)}`],
    [
      'deep in a key of one’s own',
      dunlinText.replace('"format"', `"x": ${'['.repeat(99_999)}${']'.repeat(99_999)}, "format"`),
    ],
  ])('%s are told as too deep', (_, text) => {
    expect(faultsIn(text)[0]?.sentence).toMatch(/nested too deep; expected at most 100 levels/);
  });

  test('one long text is read, and one that never ends is told', () => {
    const long = 'x'.repeat(LARGEST_FILE - 100_000);
    expect(parseAircraft(dunlinText.replace('"format"', `"own": "${long}", "format"`)).ok).toBe(true);
    expect(faultsIn(`{"name": "${long}`)[0]?.sentence).toMatch(/text closed by a double quote/);
  });

  test('a file that is too large is told without being read', () => {
    expect(faultsIn(`{"name":"${'x'.repeat(50e6)}"}`)[0]?.sentence).toBe(
      'The file is too large: expected at most 8 MB, got 48 MB.',
    );
  });

  test('too many entries, keys and faults', () => {
    const json = dunlinJson();
    json.parts = Array.from({ length: 5001 }, () => 1);
    expect(sentences(json)).toMatch(/parts: expected at most 5000 entries, got a list of 5001/);
    const keys = Array.from({ length: 2000 }, (_, i) => `"k${i}": 1`).join();
    expect(faultsIn(`{${keys}}`)[0]?.sentence).toMatch(/too many keys; expected at most 1000/);
    json.parts = Array.from({ length: 400 }, () => null);
    json.tanks = [];
    json.fuel = null;
    const read = readAircraft(json);
    const faults = read.ok ? [] : read.faults;
    expect(faults).toHaveLength(MOST_FAULTS + 1);
    expect(faults.at(-1)?.sentence).toBe('and 300 more.');
    expect(faultCount(faults)).toBe(400);
  });
});

describe('what JSON lets pass and a person did not mean', () => {
  test.each([
    ['parts', 'locked', 'loked'],
    ['parts', 'plusMinusMm', 'plusMinusMM'],
    ['parts', 'bayId', 'bayID'],
    ['tanks', 'mirrored', 'mirorred'],
    ['structure', 'spindle', 'spindel'],
  ])('in %s, %s spelt %s', (list, meant, typed) => {
    const json = dunlinJson();
    const at = list === 'structure' ? 5 : 0;
    delete json[list][at][meant];
    json[list][at][typed] = true;
    expect(sentences(json)).toContain(`unknown key "${typed}", did you mean "${meant}"?`);
  });

  test('a key that is missing because it is misspelt is told by both names', () => {
    const json = dunlinJson();
    json.parts[0].posistionMm = json.parts[0].positionMm;
    delete json.parts[0].positionMm;
    expect(sentences(json)).toContain('unknown key "posistionMm", did you mean "positionMm"?');
  });

  test('a key that stands beside its like but for capitals is told', () => {
    const json = dunlinJson();
    json.parts[0].mass_g = 12;
    expect(sentences(json)).toContain('unknown key "mass_g" beside "massG"');
  });

  test('a key of a person’s own is kept', () => {
    const json = dunlinJson();
    json.parts[0].shop = 'round the corner';
    json.parts[0].boughtOn = 'Monday';
    expect(readAircraft(json)).toEqual({ ok: true, aircraft: json });
  });

  test('a key that stands twice, with both its places', () => {
    expect(faultsIn('{"a": 1,\n "b": {"a": 2},\n "\\u0061": 3}').map(({ sentence }) => sentence)).toEqual([
      'At line 3, column 2: the key "a" stands at line 1, column 2 already.',
    ]);
  });

  test.each([
    // Beyond what a double holds (IEEE 754): below 2^-1075 all is 0, above 2^53 not every whole number is there.
    ['1e-400', /is too small a number to be kept/],
    ['-0.5e-330', /is too small a number to be kept/],
    ['9007199254740993', /is too long a number to be kept in all its digits; as text/],
    ['12345678901234567890', /is too long a number/],
  ])('a number that would be kept as another, %s', (number, sentence) => {
    expect(faultsIn(`{"serial": ${number}}`)[0]?.sentence).toMatch(sentence);
  });

  test.each([
    '-0',
    '0e-400',
    '0.000',
    '5e-324',
    '9007199254740992',
    '12345678901234567168',
    `1.${'3'.repeat(99)}`,
  ])('%s is kept', (number) => {
    expect(parseAircraft(dunlinText.replace('"format"', `"serial": ${number}, "format"`)).ok).toBe(true);
  });

  test('a blank that JSON does not know is shown by its code', () => {
    expect(faultsIn('{\u00a0"format": 1}')[0]?.sentence).toContain('got "\\u00a0"');
  });

  test('a number that would be kept as infinity', () => {
    expect(faultsIn('{"own": [1e308, -1e999]}')[0]?.sentence).toBe(
      'At line 1, column 17: -1e999 is too large a number to be kept.',
    );
  });
});

describe('figures that nobody measures', () => {
  // biome-ignore lint/suspicious/noExplicitAny: tests put wrong things in wrong places.
  test.each<[string, (json: any) => void, RegExp]>([
    [
      'sections on top of each other',
      (j) => (j.structure[0].sections[1].stationMm = j.structure[0].sections[0].stationMm + 1e-9),
      /sections\[1\] › stationMm: sections run from nose to tail.*at least 0\.001 mm/,
    ],
    ['a mass', (j) => (j.parts[0].massG = 1e308), /massG: expected at most 1 000 000 g/],
    ['a place', (j) => (j.parts[0].positionMm[0] = -1e9), /positionMm\[0\]: expected at least −100 000 mm/],
    ['a size', (j) => (j.tanks[0].shape.lengthMm = 1e7), /lengthMm: expected at most 100 000 mm/],
    [
      'a size of nearly nothing',
      (j) => (j.tanks[0].shape.diameterMm = 1e-300),
      /expected more than 0 mm, 0\.001/,
    ],
    ['a volume', (j) => (j.tanks[0].startMl = 1e30), /startMl: expected at most 1 000 000 ml/],
    ['a flow', (j) => (j.fuel.flow.fullMlPerMin = 1e30), /fullMlPerMin: expected at most/],
  ])('%s is told', (_, spoil, sentence) => {
    const json = dunlinJson();
    spoil(json);
    expect(sentences(json)).toMatch(sentence);
  });
});

describe('names', () => {
  test('with characters that cannot be seen or turn the text round are told, escaped', () => {
    // RIGHT-TO-LEFT OVERRIDE makes "g 874" read "478 g" (Unicode Standard Annex 9).
    const json = dunlinJson();
    json.parts[0].name = 'x \u202eg 874';
    expect(sentences(json)).toContain('"x \\u202eg 874" › name: expected a name of 1 to 200 characters');
    for (const bad of [
      '',
      ' ',
      '\u200b',
      'a\nb',
      'a\u0000',
      'a\u001b[2J',
      '\u2066a',
      'a\ud800',
      'x'.repeat(201),
    ])
      expect(isName(bad), JSON.stringify(bad)).toBe(false);
    for (const good of ['478 g', 'Größe', 'مستقبل', 'מקלט', '受信機', '👩\u200d🚀'])
      expect(isName(good)).toBe(true);
    expect([isNote('a\n\tb\r\n'), isNote(''), isNote('\u202e'), isNote('\u0007')]).toEqual([
      true,
      true,
      false,
      false,
    ]);
  });

  test('from right to left are closed off from what follows', () => {
    expect(shownText('מקלט')).toBe('\u2068מקלט\u2069');
    expect(shownText('Receiver')).toBe('Receiver');
    expect(shownText('a\u202e\u001b')).toBe('a\\u202e\\u001b');
  });
});

describe('the bytes of a file', () => {
  const bytes = (text: string) => new TextEncoder().encode(text);
  const sentence = (given: Uint8Array) => {
    const read = readFileBytes(given);
    return read.ok ? 'read' : read.faults[0]?.sentence;
  };
  const utf16 = (text: string, mark: boolean) =>
    new Uint8Array(Uint16Array.from([...(mark ? '\ufeff' : ''), ...text].map((c) => c.charCodeAt(0))).buffer);

  test('UTF-8 is read, with or without its mark', () => {
    expect([sentence(bytes(dunlinText)), sentence(bytes(`\ufeff${dunlinText}`))]).toEqual(['read', 'read']);
  });

  test('Latin-1 is told with its place', () => {
    const latin = bytes(dunlinText.replace('"format"', '"own":\n  "caf?", "format"'));
    latin[latin.indexOf('?'.charCodeAt(0))] = 0xe9;
    expect(sentence(latin)).toMatch(
      /^The file is not UTF-8 at line 3, column 7 \(byte E9\); it looks like Latin-1 .*Save it as UTF-8/,
    );
  });

  test('a picture and an archive are told as no text', () => {
    // The first bytes of a PNG (its specification, 5.2) and of a gzip file (RFC 1952, 2.3.1).
    for (const start of [
      [0x89, 0x50, 0x4e, 0x47, 13, 10, 26, 10, 0, 0, 0, 13],
      [0x1f, 0x8b, 8, 0, 0, 0, 0, 0],
    ])
      expect(sentence(Uint8Array.from(start))).toMatch(/^This is no text file/);
  });

  test('UTF-16 is told, with or without its mark', () => {
    for (const mark of [true, false]) expect(sentence(utf16(dunlinText, mark))).toMatch(/looks like UTF-16/);
  });
});
