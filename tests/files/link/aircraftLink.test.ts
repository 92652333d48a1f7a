import { inflateRawSync } from 'node:zlib';
import { deflateSync } from 'fflate';
import { describe, expect, test } from 'vitest';
import { LONGEST_LINK, linkTo, readLink } from '../../../src/files/link/aircraftLink';
import { bytesOfDigits, bytesOfLetters, digitsOf, lettersOf } from '../../../src/files/link/letters';
import { carriesAircraft } from '../../../src/files/link/linkMark';
import { LINK_WORDS } from '../../../src/files/link/linkWords';
import { writeAircraft } from '../../../src/model/document/write';
import { LARGEST_FILE } from '../../../src/model/reading/fileSize';
import { parseAircraft, UNCHECKED } from '../../../src/model/reading/read';
import { chanceOf } from '../../fuzz/chance';
import { mutant, sources } from '../../fuzz/mutants';
import { seed } from '../../seed';

const PAGE = 'https://example.org/bench/';
const fragmentOf = (address: string) => new URL(address).hash;
const sentenceOf = (fragment: string) => {
  const read = readLink(fragment);
  return read.ok ? 'read' : (read.faults[0]?.sentence ?? '');
};
const packedBy = (bytes: Uint8Array) =>
  `#aircraft=A${Buffer.from(
    deflateSync(bytes, { dictionary: new TextEncoder().encode(LINK_WORDS) }),
  ).toString('base64url')}`;

describe('a link carries the whole aircraft', () => {
  test('every sound aircraft comes back to the byte, from letters and from digits', () => {
    const chance = chanceOf(seed);
    const spoilt = Array.from({ length: 60 }, () => new TextDecoder().decode(mutant(chance)));
    let sound = 0;
    for (const text of [...sources, ...spoilt]) {
      const read = parseAircraft(text);
      if (!read.ok) continue;
      sound += 1;
      const link = linkTo(read.aircraft, `${PAGE}?a=b#old`);
      expect(link.address.startsWith(`${PAGE}?a=b#aircraft=A`)).toBe(true);
      for (const address of [link.address, link.codeFront + link.codeDigits]) {
        const back = readLink(fragmentOf(address));
        expect(back.ok && writeAircraft(back.aircraft)).toBe(writeAircraft(read.aircraft));
      }
    }
    expect(sound).toBeGreaterThan(5);
  });

  test('what is packed is plain DEFLATE, as another library unpacks it', () => {
    const read = parseAircraft(sources[0] ?? '');
    if (!read.ok) throw new Error('the demo aircraft does not read');
    const letters = fragmentOf(linkTo(read.aircraft, PAGE).address).slice('#aircraft=A'.length);
    const text = inflateRawSync(Buffer.from(letters, 'base64url'), { dictionary: Buffer.from(LINK_WORDS) });
    expect(text.toString()).toBe(JSON.stringify(read.aircraft));
  });

  test('only fragments with the mark are taken for an aircraft', () => {
    expect(carriesAircraft('#aircraft=A')).toBe(true);
    for (const other of ['', '#', '#place', '#Aaircraft=']) expect(carriesAircraft(other)).toBe(false);
  });
});

test('letters are those of Node, digits lose no zero', () => {
  const chance = chanceOf(seed);
  for (let length = 0; length < 40; length += 1) {
    const bytes = Uint8Array.from({ length }, () => (chance.next() < 0.3 ? 0 : chance.below(256)));
    expect(lettersOf(bytes)).toBe(Buffer.from(bytes).toString('base64url'));
    expect(bytesOfLetters(lettersOf(bytes))).toEqual(bytes);
    expect(bytesOfDigits(digitsOf(bytes))).toEqual(bytes);
  }
});

describe('a hostile link is refused with a sentence', () => {
  test.each([
    ['#aircraft=', /expected A or N .* got nothing/],
    ['#aircraft=B12', /later version/],
    ['#aircraft=A', /cut off or changed/],
    ['#aircraft=A!!!!', /cut off or changed/],
    ['#aircraft=A%41', /cut off or changed/],
    ['#aircraft=AAAAAA', /cut off or changed/],
    ['#aircraft=N0001', /cut off or changed/],
    ['#aircraft=N12e4', /cut off or changed/],
    ['#something', /does not know/],
    [`#aircraft=A${'A'.repeat(LONGEST_LINK)}`, /too long: expected at most 32000 characters, got 32010/],
    [`#aircraft=N${'9'.repeat(LONGEST_LINK - 20)}`, /cut off or changed/],
  ])('%.40s', (fragment, sentence) => expect(sentenceOf(fragment)).toMatch(sentence));

  test('a bomb is left packed once it is larger than any file', () => {
    // A thousandfold is the most that DEFLATE does; two such links unpack to 8 MB and to just under it.
    const zeros = (length: number) => packedBy(new Uint8Array(length).fill(32));
    expect(sentenceOf(zeros(LARGEST_FILE + 1))).toMatch(/unpacks to too much: expected at most 8 MB/);
    expect(sentenceOf(zeros(LARGEST_FILE))).not.toMatch(/too much/);
  });

  test('what is inside is held to the checks of a file', () => {
    const text = (inside: string) => sentenceOf(packedBy(new TextEncoder().encode(inside)));
    expect(text('{"version":1,"format":"something else"}')).toMatch(/^format/);
    expect(text('{')).toMatch(/line 1/);
    expect(text('['.repeat(200_000))).not.toMatch(/read|stops a check/);
    expect(sentenceOf(packedBy(Uint8Array.of(0xff, 0xfe, 0x7b, 0)))).toMatch(/UTF-16/);
  });

  test('spoilt links and spoilt aircraft in whole links never throw, and are read only when sound', () => {
    const chance = chanceOf(seed);
    const whole = sources.flatMap((text) => {
      const read = parseAircraft(text);
      return read.ok ? [fragmentOf(linkTo(read.aircraft, PAGE).address)] : [];
    });
    let refused = 0;
    for (let run = 0; run < 400; run += 1) {
      const fragment =
        run % 4 === 0 ? packedBy(mutant(chance)) : spoilt(chance.pick(whole), chance.below(4), chance);
      const read = readLink(fragment);
      if (read.ok) expect(parseAircraft(writeAircraft(read.aircraft)).ok).toBe(true);
      else {
        refused += 1;
        expect(read.faults[0]?.sentence ?? '').toMatch(/\w/);
        expect(read.faults[0]?.sentence ?? '').not.toContain(UNCHECKED);
      }
    }
    expect(refused).toBeGreaterThan(200);
  });
});

const ALPHABET = 'ABCXYZabcxyz0189-_=+/%#!é';

function spoilt(fragment: string, kind: number, { below, pick }: ReturnType<typeof chanceOf>): string {
  const at = below(fragment.length);
  if (kind === 0) return fragment.slice(0, at);
  if (kind === 1) return fragment.slice(0, at) + pick([...ALPHABET]) + fragment.slice(at + 1);
  if (kind === 2) return fragment.slice(0, at) + fragment.slice(at + 1 + below(20));
  return fragment.slice(0, at) + fragment.slice(below(fragment.length));
}
