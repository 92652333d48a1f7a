import { expect, test } from 'vitest';
import { readLicences } from '../../src/commands/licenceList';
import {
  isLicenceFile,
  judgeLicence,
  licenceOfText,
  shippedPackages,
} from '../../src/commands/licenceTexts.mjs';

/** These state a permissive licence and ship no text of it; a new one is looked at by a person, and added here. */
const withoutText = [
  '@mediapipe/tasks-vision',
  '@react-three/fiber',
  'draco3d',
  'maath',
  'qrcode-generator',
  'stats-gl',
];

test('every package of the page has a permissive licence, and its text, but for those looked at', () => {
  const all = readLicences();
  expect(all.map(({ name }) => name)).toEqual(expect.arrayContaining(['react', 'three', 'highs', 'zustand']));
  expect(all.filter(({ fault }) => fault !== null)).toEqual([]);
  const textless = all.filter(({ where }) => !where.startsWith('node_modules/'));
  expect([...new Set(textless.map(({ name }) => name))]).toEqual(withoutText);
});

// Openings of the texts as published by the Open Source Initiative, from memory.
const mit = 'Permission is hereby granted, free of charge, to any person obtaining a copy of this software';
const apache = 'Apache License\n   Version 2.0, January 2004';
const copyleft =
  'GNU GENERAL PUBLIC LICENSE\n Version 3, 29 June 2007. Everyone is permitted to copy and distribute';

test('a text is known by what it says', () => {
  expect([mit, apache, copyleft, ''].map(licenceOfText)).toEqual(['MIT', 'Apache-2.0', null, null]);
});

test('what is not known to be permissive is refused', () => {
  const faultOf = (stated: string | undefined, text: string | null) => judgeLicence({ stated, text }).fault;
  expect(faultOf('MIT', mit)).toBeNull();
  expect(faultOf(undefined, mit)).toBeNull();
  expect(faultOf('MIT', null)).toBeNull();
  expect(faultOf('GPL-3.0', copyleft)).toMatch(/none of the permissive/);
  expect(faultOf('GPL-3.0', mit)).toMatch(/but its text is that of MIT/);
  expect(faultOf('GPL-3.0', null)).toMatch(/no licence text/);
  expect(faultOf(undefined, null)).toMatch(/no licence text/);
});

test('what is only for building is not shipped; a licence goes by several names', () => {
  const packages = {
    '': {},
    'node_modules/a': { version: '1.0.0' },
    'node_modules/a/node_modules/@s/b': { version: '2.0.0' },
    'node_modules/c': { version: '3.0.0', dev: true },
  };
  expect(shippedPackages({ packages }).map(({ name, version }) => `${name} ${version}`)).toEqual([
    'a 1.0.0',
    '@s/b 2.0.0',
  ]);
  expect(['LICENSE', 'LICENCE.md', 'license.txt', 'LICENSE-MIT', 'COPYING'].every(isLicenceFile)).toBe(true);
  expect(['licenses.js', 'README.md'].some(isLicenceFile)).toBe(false);
});
