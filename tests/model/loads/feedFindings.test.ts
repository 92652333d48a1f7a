import { expect, test } from 'vitest';
import type { Aircraft, SwitchItem, TankItem } from '../../../src/model/document/types';
import { feedFindings } from '../../../src/model/loads/feedFindings';
import { aircraftOf, boxPart } from '../aircraft';

const tank = (id: string, feeds: string, rank = 0): TankItem => ({
  id,
  name: id,
  shape: { kind: 'box', lengthMm: 100, widthMm: 60, heightMm: 50 },
  positionMm: [100, 0, 0],
  ...{ yawDeg: 0, pitchDeg: 0, rollDeg: 0 },
  emptyMassG: 30,
  startMl: 200,
  unusableMl: 0,
  feeds,
  rank,
});
const switchOf = (name: string, [first, second]: readonly [string, string], without: string): SwitchItem => ({
  id: name.toLowerCase(),
  name,
  positions: [
    { id: first, name: first },
    { id: second, name: second, without: [without] },
  ],
});
const headerSwitch = switchOf('Header', ['on', 'off'], 'header');
const spareSwitch = switchOf('Spare', ['filled', 'left'], 'spare');
const cameraSwitch = switchOf('Camera', ['on', 'off'], 'camera');

/**
 * Liquid is shared by level. Left feeds the header tank; right and spare stand at the outlet, right fed by a tip tank.
 * Without the header left stands beside right, which as it is fed has no level of its own to share by.
 */
const aircraft = (switches: readonly SwitchItem[]): Aircraft => ({
  ...aircraftOf([], [boxPart('camera', 100, [0, 0, 0])]),
  tanks: [
    tank('left', 'header'),
    tank('right', 'outlet'),
    tank('tip', 'right'),
    tank('header', 'outlet', 1),
    tank('spare', 'outlet', 2),
  ],
  fuel: {
    ...{ kind: 'petrol', name: '', densityGPerMl: 0.8, use: 'burn', share: 'level' },
  } as unknown as NonNullable<Aircraft['fuel']>,
  switches,
});
const found = (...switches: readonly SwitchItem[]) => feedFindings(aircraft(switches));

test('with nothing to switch, or switches that change nothing of the feed, there is nothing to find', () => {
  expect(found()).toEqual([]);
  expect(found(cameraSwitch)).toEqual([]);
  expect(found(spareSwitch)).toEqual([]);
});

test('the switch that does it is named with how it stands, what comes of it, and why', () => {
  const [finding, ...more] = found(headerSwitch, cameraSwitch);
  expect(more).toEqual([]);
  expect(finding?.positions).toMatchObject({ header: 'off' });
  expect(finding?.sentence).toMatch(
    /^With “Header” off nothing can be drawn from the tanks, so their fuel is counted as staying where it is\. .*“right” shares by level but is fed by tank “tip”/,
  );
});

test('each reason is told once, by the first combination that brings it about', () => {
  const all = found(headerSwitch, spareSwitch);
  expect(all.map(({ positions }) => positions)).toEqual([{ header: 'off', spare: 'filled' }]);
  expect(all[0]?.sentence).toMatch(/^With “Header” off nothing/);
});

test('two switches that must both be moved are both named', () => {
  // It takes the header out, and the tip in: at the start it is out.
  const [filled, left] = switchOf('Tip', ['on', 'off'], 'tip').positions;
  const tipSwitch: SwitchItem = { id: 'tip', name: 'Tip', positions: [left!, filled!] };
  const [finding, ...more] = found(headerSwitch, tipSwitch);
  expect(more).toEqual([]);
  expect(finding?.sentence).toMatch(/^With “Header” off and “Tip” on nothing/);
});

test('where it is so from the start, every switch of the tanks is named as it stands', () => {
  const [on, off] = headerSwitch.positions;
  const [finding] = found({ ...headerSwitch, positions: [off!, on!] });
  expect(finding?.sentence).toMatch(/^With “Header” off nothing/);
});

test('too many combinations to go through are not told here', () => {
  // Thirteen switches about one tank: 2¹³.
  const many = Array.from({ length: 13 }, (_, i) => ({ ...headerSwitch, id: `s${i}` }));
  expect(found(...many)).toEqual([]);
});
