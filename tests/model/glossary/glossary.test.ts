import { describe, expect, test } from 'vitest';
import { glossary, wordOf, wordsWith } from '../../../src/model/glossary/glossary';
import { wordOfLabel } from '../../../src/model/glossary/labels';
import { isExplained, stretchesOf } from '../../../src/model/glossary/spellings';
import type { FactKey } from '../../../src/model/words/verdict';
import { readProjectFiles } from '../../house/projectFiles';

/**
 * Words of the trade that a beginner does not have: each must be explained wherever it is used. The list is ours, after
 * the indexes of textbooks on flight mechanics and balance (from memory).
 */
const TRADE: readonly (readonly [RegExp, string])[] = [
  [/\bCG\b|centre of gravity/i, 'cg'],
  [/\bMAC\b|aerodynamic chord/i, 'mac'],
  [/\bchord/i, 'chord'],
  [/neutral point/i, 'neutral-point'],
  [/static margin/i, 'margin'],
  [/\bdatum\b/i, 'datum'],
  [/\bstations?\b/i, 'station'],
  [/\bbuttline\b/i, 'buttline'],
  [/\bwaterline\b/i, 'waterline'],
  [/\barms?\b/i, 'arm'],
  [/\bmoments?\b(?! of inertia)/i, 'moment'],
  [/moment of inertia|\binertia\b/i, 'inertia'],
  [/\bband\b|\b(forward|aft) limit\b/i, 'band'],
  [/tail-heavy|nose-heavy/i, 'tail-heavy'],
  [/\bballast\b/i, 'ballast'],
  [/\bdecalage\b|\bincidence\b/i, 'decalage'],
  [/\bsweep\b/i, 'sweep'],
  [/thrust line/i, 'thrust-line'],
  [/header tank/i, 'header-tank'],
  [/\bunusable\b|\busable\b/i, 'usable'],
  [/\bload states?\b/i, 'load-state'],
  [/\bclunk\b|\bvent\b/i, 'clunk'],
  [/\bburn\b/i, 'burn'],
  [/\bgyro\b/i, 'gyro'],
  [/\bhatch\b|\bbay\b/i, 'bay'],
  [/\breserve\b/i, 'reserve'],
];

/** Words that nothing here explains, and that therefore may not be used. */
const UNEXPLAINED =
  /\b(dihedral|washout|twist|camber|polar|drag|stall|moment arm|trim|aerofoil|lattice|downwash|aspect ratio|planform|centroid|tensor|ampere|ohm|voltage|impedance|static stability|derivative|phugoid|vortex)\b/i;

const sentences = (says: readonly string[]) =>
  says.flatMap((text) => text.match(/[^.?!]+[.?!](?:\s|$)/g) ?? [text]).map((sentence) => sentence.trim());

describe('the glossary', () => {
  test('no two words or other names are alike', () => {
    const ids = glossary.map(({ id }) => id);
    expect(new Set(ids).size).toBe(ids.length);
    const names = glossary.map(({ word }) => word.toLowerCase());
    expect(new Set(names).size).toBe(names.length);
    expect(glossary.length).toBeGreaterThanOrEqual(30);
  });

  test.each(glossary.map((word) => [word.word, word] as const))(
    '%s is said shortly and plainly',
    (_, entry) => {
      const said = sentences(entry.says);
      expect(said.length).toBeGreaterThanOrEqual(2);
      expect(said.length).toBeLessThanOrEqual(4);
      for (const sentence of said) {
        expect(sentence).toMatch(/^[A-ZI0-9].*\.$/);
        expect(sentence.split(/\s+/).length, sentence).toBeLessThanOrEqual(20);
        expect(sentence).not.toMatch(UNEXPLAINED);
      }
      expect(entry.related).not.toContain(entry.id);
      expect(entry.related.length).toBeGreaterThan(0);
      for (const id of entry.related) expect(wordOf(id).id).toBe(id);
    },
  );

  test('a word of the trade in a sentence has a place of its own', () => {
    for (const { says } of glossary)
      for (const [pattern, id] of TRADE)
        if (pattern.test(says.join(' ')))
          expect(
            glossary.some((word) => word.id === id),
            id,
          ).toBe(true);
    // The patterns themselves are no dead letters.
    const all = glossary.flatMap(({ says }) => says).join(' ');
    expect(TRADE.filter(([pattern]) => pattern.test(all)).length).toBeGreaterThan(12);
  });

  /** Table of words of the conventions: what stands beside a word there and means another thing. */
  test.each([
    ['mac', 'LEMAC'],
    ['mac', '% MAC'],
    ['inertia', 'radius of gyration'],
    ['band', 'aft limit'],
    ['dry-full', 'dry'],
    ['burn', 'fuel profile'],
    ['clunk', 'vent'],
  ] as const)('under %s, %s is found and is not called the same', (id, name) => {
    expect(wordsWith(name)[0]?.id).toBe(id);
    expect(wordOf(id).also).not.toContain(name);
    // It is explained there.
    expect(wordOf(id).says.join(' ').toLowerCase()).toContain(name.toLowerCase());
  });

  test('what a beginner asks for is found first, in any spelling', () => {
    const asked: readonly (readonly [string, string])[] = [
      ['centre of gravity', 'cg'],
      ['lemac', 'mac'],
      ['NP', 'neutral-point'],
      ['trapped', 'usable'],
      ['air trap', 'header-tank'],
      ['longitudinal dihedral', 'decalage'],
      ['roll-off', 'sideways'],
      ['margin', 'margin'],
      ['moment', 'moment'],
    ];
    for (const [typed, id] of asked) expect(wordsWith(typed)[0]?.id, typed).toBe(id);
    expect(wordsWith(' ')).toHaveLength(glossary.length);
    expect(wordsWith('xyzzy')).toEqual([]);
  });

  test('every word that the screen asks for is there, and many places ask', () => {
    const sources = readProjectFiles((path) => path.startsWith('src/panels/') && path.endsWith('.tsx'));
    const asked = [...sources.values()].flatMap((text) =>
      [...text.matchAll(/(?:<Term of|\sterm)="([a-z-]+)"/g)].map((match) => match[1] ?? ''),
    );
    expect(new Set(asked).size).toBeGreaterThan(10);
    for (const id of asked) expect(glossary.map((word) => `${word.id}`)).toContain(id);
  });

  test('a head of a table is a word with its unit or without', () => {
    expect(wordOfLabel('Arm, mm')).toBe('arm');
    expect(wordOfLabel('Moment, oz·in')).toBe('moment');
    expect(wordOfLabel('Neutral point, estimated')).toBe('neutral-point');
    expect(wordOfLabel('Mass, g')).toBeNull();
  });

  test.each([
    ['CG along, mm', 'cg'],
    ['CG across', 'sideways'],
    ['CG height', 'waterline'],
    ['CG', 'cg'],
    ['Station, in', 'station'],
    ['Buttline', 'buttline'],
    ['Waterline', 'waterline'],
    ['Mean aerodynamic chord', 'mac'],
  ])('“%s” is %s', (label, id) => {
    expect(wordOfLabel(label)).toBe(id);
  });

  test('each figure of the answer asks for the word that it is about', () => {
    const asked = {
      'cg-full': 'cg',
      'cg-dry': 'cg',
      band: 'band',
      travel: 'travel',
      margin: 'margin',
      sideways: 'sideways',
      worst: 'load-state',
      fit: 'fit',
      power: 'wiring',
      mass: 'ready-to-fly',
      sure: 'plus-minus',
    } as const satisfies Record<FactKey, string>;
    for (const [fact, id] of Object.entries(asked)) expect(wordOf(fact as FactKey).id).toBe(id);
    expect(() => wordOf('xyzzy' as FactKey)).toThrow(/no word "xyzzy"/);
  });
});

test('a text is cut at the words that it holds, the longer first, each once, in any letters, and nothing is lost', () => {
  const ids = new Set(['neutral-point', 'cg', 'moment'] as const);
  const cut = (text: string) => stretchesOf(text, ids).map((stretch) => [stretch.text, stretch.word]);
  expect(cut('The CG lies ahead of the neutral point; the cg moves.')).toEqual([
    ['The ', null],
    ['CG', 'cg'],
    [' lies ahead of the ', null],
    ['neutral point', 'neutral-point'],
    ['; the cg moves.', null],
  ]);
  expect(cut('CG')).toEqual([['CG', 'cg']]);
  expect(cut('Moments')).toEqual([['Moments', null]]);
  expect(cut('nothing of it')).toEqual([['nothing of it', null]]);
  expect(stretchesOf('The CG', new Set())).toEqual([{ text: 'The CG', word: null }]);
  expect([isExplained('NEUTRAL POINT'), isExplained('xyzzy')]).toEqual([true, false]);
  // Of two that begin alike, the longer.
  const spelt = glossary.flatMap(({ id, word, also }) =>
    [word, ...also].map((spelling) => ({ id, spelling })),
  );
  const alike = spelt.flatMap((long) =>
    spelt
      .filter((short) => short.id !== long.id && long.spelling.startsWith(`${short.spelling} `))
      .map((short) => ({ long, short })),
  );
  expect(alike.length).toBeGreaterThan(0);
  for (const { long, short } of alike)
    expect(stretchesOf(long.spelling, new Set([short.id, long.id]))).toEqual([
      { text: long.spelling, word: long.id },
    ]);
});
