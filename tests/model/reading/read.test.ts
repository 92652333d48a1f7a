import { describe, expect, test } from 'vitest';
import { parseAircraft, readAircraft } from '../../../src/model/reading/read';
import { dunlinJson, dunlinText } from '../aircraft';

// biome-ignore lint/suspicious/noExplicitAny: tests put wrong things in wrong places.
type Json = any;

function faultsOf(spoil: (json: Json) => void): readonly { path: string; sentence: string }[] {
  const json = dunlinJson();
  spoil(json);
  const before = JSON.stringify(json);
  const read = readAircraft(json);
  expect(JSON.stringify(json)).toBe(before);
  return read.ok ? [] : read.faults.map(({ path, sentence }) => ({ path, sentence }));
}

describe('readAircraft', () => {
  test('gives a sound document back as it is, unknown keys included', () => {
    const json = dunlinJson();
    const read = readAircraft(json);
    expect(read).toEqual({ ok: true, aircraft: json });
    expect(JSON.stringify(read.ok && read.aircraft)).toBe(JSON.stringify(dunlinJson()));
  });

  test('names the place in words and as keys, what was expected and what came', () => {
    const json = dunlinJson();
    json.parts[1].massG = -4;
    const read = readAircraft(json);
    expect(read).toEqual({
      ok: false,
      faults: [
        {
          path: 'parts[1] "Receiver" › massG',
          at: ['parts', 1, 'massG'],
          expected: '0 g or more',
          received: '-4',
          sentence: 'parts[1] "Receiver" › massG: expected 0 g or more, got -4.',
        },
      ],
    });
  });

  test('lists every fault, of the schema and across the document, in one go', () => {
    const faults = faultsOf((json) => {
      json.kind = 'boat';
      json.parts[1].massG = '21';
      delete json.parts[1].role;
      json.structure[1].panels[0].spanMm = 0;
      json.fuel.densityGPerMl = 0;
      json.parts[0].id = 'header';
      json.targetBand.forwardPct = 40;
      json.tanks[0].startMl = 5000;
    });
    expect(faults.map(({ path }) => path).sort()).toEqual(
      [
        'kind',
        'parts[1] "Receiver" › massG',
        'parts[1] "Receiver" › role',
        'structure[1] "Wing" › panels[0] › spanMm',
        'fuel › densityGPerMl',
        'parts[0] "Engine" › id',
        'targetBand › forwardPct',
        'tanks[0] "Main tank" › startMl',
      ].sort(),
    );
  });

  test.each([
    [
      'a missing key',
      (j: Json) => delete j.parts[0].massG,
      /parts\[0\] "Engine" › massG: expected 0 g or more, got nothing/,
    ],
    ['a point too short', (j: Json) => j.parts[0].positionMm.pop(), /positionMm\[2\].*got nothing/],
    ['a point too long', (j: Json) => j.parts[0].positionMm.push(1), /positionMm\[3\]/],
    ['an unknown shape', (j: Json) => (j.parts[0].shape.kind = 'blob'), /shape › kind: expected "box" or/],
    ['a bad id', (j: Json) => (j.parts[0].id = 'No Spaces'), /id: expected an id: lower-case/],
    [
      'not a number',
      (j: Json) => (j.parts[0].massG = Number.POSITIVE_INFINITY),
      /massG: expected at most 1 000 000 g, got Infinity/,
    ],
    ['an id used twice', (j: Json) => (j.parts[0].id = 'wing'), /the id "wing" already stands for "Wing"/],
    ['a reserved id', (j: Json) => (j.parts[0].id = 'outlet'), /already stands for the engine or dump valve/],
    [
      'sections out of order',
      (j: Json) => (j.structure[0].sections[2].stationMm = 100),
      /sections\[2\] › stationMm: .*more than 300 mm, got 100/,
    ],
    [
      'a boom without length',
      (j: Json) => (j.structure[4].rearMm = j.structure[4].frontMm),
      /"Tail boom": frontMm and rearMm are the same/,
    ],
    [
      'a strut without length',
      (j: Json) => (j.structure[5].axleMm = j.structure[5].topMm),
      /topMm and axleMm are the same/,
    ],
    [
      'a section without thickness',
      (j: Json) => {
        j.structure[3].rootThicknessPct = 0;
        j.structure[3].panels[0].tipThicknessPct = 0;
      },
      /structure\[3\] "Fin": .*no volume/,
    ],
    [
      'a capsule shorter than wide',
      (j: Json) => (j.tanks[0].shape.lengthMm = 50),
      /tanks\[0\] "Main tank" › shape: .*at least its diameter/,
    ],
    [
      'a part of no shape',
      (j: Json) => (j.parts[0].shape = { kind: 'tube', lengthMm: 9, outerDiameterMm: 5, innerDiameterMm: 5 }),
      /parts\[0\] "Engine" › shape: .*bore/,
    ],
    [
      'a band the wrong way round',
      (j: Json) => (j.targetBand = { by: 'station', forwardMm: 600, aftMm: 580 }),
      /targetBand › forwardMm: .*ahead of the aft one/,
    ],
    [
      'a band on no surface',
      (j: Json) => (j.targetBand.surfaceId = 'fuselage'),
      /"fuselage" is not a surface/,
    ],
    [
      'a band from no point',
      (j: Json) => (j.targetBand = { by: 'station', forwardMm: 1, aftMm: 2, statedFrom: 'moon' }),
      /no reference point "moon"/,
    ],
    [
      'more fuel than volume',
      (j: Json) => (j.tanks[1].startMl = 100),
      /tanks\[1\] "Header tank" › startMl: the tank holds at most 87\.9646 ml, got 100/,
    ],
    ['more unusable than volume', (j: Json) => (j.tanks[1].unusableMl = 100), /unusableMl: the tank holds/],
    [
      'a tank that feeds nobody',
      (j: Json) => (j.tanks[0].feeds = 'moon'),
      /tanks\[0\] "Main tank" › feeds: there is no tank "moon"/,
    ],
    ['tanks in a circle', (j: Json) => (j.tanks[1].feeds = 'main-tank'), /tanks: .*circle/],
    ['tanks without a liquid', (j: Json) => (j.fuel = null), /fuel: expected what the tanks hold, got null/],
    [
      'a panel on end',
      (j: Json) => (j.structure[1].panels[0].dihedralDeg = 90),
      /dihedralDeg: expected −89° to 89°, got 90/,
    ],
  ])('%s is one fault', (_, spoil, sentence) => {
    const faults = faultsOf(spoil);
    expect(faults.map((fault) => fault.sentence).join('\n')).toMatch(sentence);
    expect(faults.filter((fault) => !sentence.test(fault.sentence)).map((fault) => fault.sentence)).toEqual(
      faults.length > 1 ? [expect.stringMatching(/outlet/)] : [],
    );
  });

  test.each([null, 3, 'text', [], undefined])('%j is no aircraft', (json) => {
    const read = readAircraft(json);
    expect(read.ok ? '' : read.faults[0]?.sentence).toMatch(/the file: expected an aircraft/);
  });

  test('a file of another format says so', () => {
    const faults = faultsOf((json) => {
      json.format = 'shopping list';
    });
    expect(faults[0]?.sentence).toBe('format: expected "counterpoise aircraft", got "shopping list".');
  });
});

describe('parseAircraft', () => {
  test('reads text, with or without a byte order mark', () => {
    expect(parseAircraft(dunlinText).ok).toBe(true);
    expect(parseAircraft(`\ufeff${dunlinText}`).ok).toBe(true);
  });

  test.each([
    ['{"a": 1,}', 'line 1, column 9', 'a key in double quotes'],
    ['{\n  "a" 1\n}', 'line 2, column 7', 'a colon'],
    ['[1, 2\n 3]', 'line 2, column 2', 'a comma or ]'],
    ['{"a": 01}', 'line 1, column 7', 'a value'],
    ["{'a': 1}", 'line 1, column 2', 'a key in double quotes'],
    ['{"a": "x\n"}', 'line 1, column 7', 'text closed by a double quote'],
    ['[1] 2', 'line 1, column 5', 'the end of the file'],
    ['{"a": [1, 2', 'line 1, column 12', 'a comma or ]'],
    ['{"a": NaN}', 'line 1, column 7', 'a value'],
  ])('%j breaks at %s', (text, path, expected) => {
    const read = parseAircraft(text);
    if (read.ok) throw new Error('expected a fault');
    expect(read.faults).toHaveLength(1);
    expect(read.faults[0]?.path).toBe(path);
    expect(read.faults[0]?.expected).toContain(expected);
  });

  test('an empty file, and one nested without end', () => {
    const sentence = (text: string) => {
      const read = parseAircraft(text);
      return read.ok ? '' : read.faults[0]?.sentence;
    };
    expect(sentence(' \n')).toBe('The file is empty.');
    expect(sentence('['.repeat(100_000))).toMatch(/at most 100 levels/);
  });
});
