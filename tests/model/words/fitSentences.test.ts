import { expect, test } from 'vitest';
import type { FitKind, FitParty, FitProblem } from '../../../src/model/fit/fitProblem';
import { fitCause, fitCount } from '../../../src/model/words/fitSummary';
import { inStatesWords, problemSentence, problemShort } from '../../../src/model/words/fitWords';

/** Every sentence of what does not fit, as it must read: from the thing's side, from the other's, and in the answer. */

const say = {
  units: 'metric' as const,
  fromMm: 0,
  length: (mm: number) => `${mm.toFixed(0)} mm`,
  lengthFine: (mm: number) => `${mm.toFixed(1)} mm`,
  station: (mm: number) => `${mm.toFixed(0)} mm`,
  mass: (g: number) => `${g.toFixed(0)} g`,
};

const party = (id: string, name: string, what: FitParty['what'] = 'part', pieceId = id): FitParty => ({
  ...{ id, name, what, pieceId },
});
const pack = party('pack', 'Pack');
const lead = party('lead', 'Pack lead', 'lead');

const problemOf = (
  kind: FitKind,
  parties: FitProblem['parties'],
  more: Partial<FitProblem> = {},
): FitProblem => ({
  ...{ key: kind, kind, severity: 'bad', parties, byMm: 5.72, states: [], atMm: null, clearByMm: null },
  rule: null,
  ...more,
});

const noise = { atLeastMm: 90, why: 'noise', commonPractice: true };

const ROWS: readonly [FitProblem, sentence: string, short: string, othersShort: string, answer: string][] = [
  [
    problemOf('overlap', [pack, party('tray', 'Tray')]),
    'Runs into Tray, 5.7 mm deep.',
    'in Tray',
    'hit by Pack',
    '“Pack” is 6 mm into “Tray”.',
  ],
  [
    problemOf('within', [pack, party('tray', 'Tray')]),
    'In one place with Tray, one inside the other.',
    'inside Tray',
    'has Pack inside it',
    'One of “Pack” and “Tray” lies inside the other.',
  ],
  [
    problemOf('through', [pack, party('pod', 'Pod', 'hull')]),
    'Reaches 5.7 mm out of Pod.',
    'out of Pod',
    'out of Pack',
    '“Pack” reaches 6 mm out of “Pod”.',
  ],
  [
    problemOf('outside', [pack, party('pod', 'Pod', 'hull')]),
    'Stands outside, up to 5.7 mm off Pod.',
    'outside Pod',
    'outside Pack',
    '“Pack” stands in no hull and no wing.',
  ],
  [
    problemOf('outOfBay', [pack, party('bay', 'Front bay', 'bay')]),
    'Reaches 5.7 mm out of Front bay.',
    'out of Front bay',
    'out of Pack',
    '“Pack” reaches 6 mm out of “Front bay”.',
  ],
  [
    problemOf('shortLead', [lead, pack, party('servo', 'Servo')]),
    'Pack lead is 5.7 mm short.',
    'too short',
    'pack lead too short',
    '“Pack lead” is 6 mm too short.',
  ],
  [
    problemOf('tooNear', [pack, party('aerial', 'Aerial')], { rule: noise, byMm: 12 }),
    '78.0 mm from Aerial, at least 90 mm wanted: noise.',
    'too near Aerial',
    'too near Pack',
    '“Pack” is 12 mm too close to “Aerial”.',
  ],
  [
    problemOf('thinWall', [pack, party('foam', 'Foam', 'structure')]),
    'Its cut-out leaves the wall of Foam 5.7 mm too thin.',
    'thin wall in Foam',
    'thin wall in Pack',
    '“Pack” leaves the wall of “Foam” 6 mm too thin.',
  ],
];

test.each(ROWS)('$kind', (problem, sentence, short, othersShort, answer) => {
  const [first, second] = problem.parties;
  expect(problemSentence(problem, first.id, say)).toBe(sentence);
  expect(problemShort(problem, first.id)).toBe(short);
  expect(problemShort(problem, second!.id)).toBe(othersShort);
  expect(fitCause(problem, say.length)).toBe(answer);
});

test('each says in which load states it holds, at the end of what is said of the place', () => {
  const off = { id: 'off', name: 'off', flies: true };
  const states = [{ switchId: 'canopy', switchName: 'Canopy', positions: [off] }];
  const seen = ROWS.map(([problem]) => {
    const held = { ...problem, states };
    return [problemSentence(held, problem.parties[0].id, say), problemShort(held, problem.parties[0].id)];
  });
  for (const [sentence, short] of seen) {
    expect(sentence).toMatch(/, canopy off(\.$|: noise\.$)/);
    expect(short).toMatch(/, canopy off$/);
  }
});

test('a switch that may stand in either of two positions names both; the undercarriage goes by its wheels', () => {
  const at = (name: string) => ({ id: name, name, flies: true });
  const camera = { switchId: 'camera', switchName: 'Camera', positions: [at('low'), at('high')] };
  const legs = { switchId: 'undercarriage', switchName: 'Undercarriage', positions: [at('up')] };
  expect(inStatesWords([camera])).toBe('camera low or high');
  expect(inStatesWords([legs])).toBe('wheels up');
});

test('a wheel that swings hits what stands still', () => {
  const wheel = party('leg', 'Nose leg', 'structure', 'leg.wheel');
  expect(problemShort(problemOf('overlap', [pack, wheel]), 'pack')).toBe('hit by Nose leg');
});

test('what a lead is too short for is the thing at its end, not the lead', () => {
  // Seen from the pack, the party that is not a lead and not the pack itself.
  const near = problemOf('overlap', [pack, lead, party('rib', 'Rib', 'structure')]);
  expect(problemSentence(near, 'pack', say)).toBe('Runs into Rib, 5.7 mm deep.');
});

test('what is nearer than nothing is 0 away; a misfit with no second party has its surroundings', () => {
  const deep = problemOf('tooNear', [pack, party('aerial', 'Aerial')], { rule: noise, byMm: 95 });
  expect(problemSentence(deep, 'pack', say)).toBe('0.0 mm from Aerial, at least 90 mm wanted: noise.');
  expect(fitCause(problemOf('overlap', [pack]), say.length)).toBe('“Pack” is 6 mm into what is around it.');
});

test('they are counted by kind, in one order, one and several', () => {
  const of = (kind: FitKind) => problemOf(kind, [pack]);
  const kinds: FitKind[] = ['overlap', 'through', 'outside', 'outOfBay', 'shortLead', 'tooNear', 'thinWall'];
  expect(fitCount(kinds.map(of))).toBe(
    '1 clash, 1 through the skin, 1 outside the hull, 1 out of its bay, 1 lead too short, 1 pair too close, 1 wall too thin',
  );
  expect(fitCount([...kinds, ...kinds].reverse().map(of))).toBe(
    '2 clashes, 2 through the skin, 2 outside the hull, 2 out of their bays, 2 leads too short, 2 pairs too close, 2 walls too thin',
  );
  // One inside the other is a clash like any other.
  expect(fitCount([of('within'), of('overlap')])).toBe('2 clashes');
  expect(fitCount([])).toBe('');
});
