import { describe, expect, test } from 'vitest';
import { massSum } from '../../../src/engine/mass/massProperties';
import { bodies } from '../../../src/model/airframe/bodies';
import { leadMass, leadState } from '../../../src/model/airframe/leads';
import { placeItem, removeItem } from '../../../src/model/document/edit';
import type { Lead } from '../../../src/model/document/types';
import { aircraftFaults } from '../../../src/model/reading/faults';
import { benchOf, box, partAt } from './fitAircraft';

const lead: Lead = {
  id: 'pack-lead',
  name: 'Pack lead',
  from: 'pack',
  to: 'controller',
  lengthMm: 400,
  massGPerM: 50,
  waypointsMm: [
    [100, 0, 0],
    [100, 120, 0],
  ],
};
const parts = [
  partAt('pack', box(100, 40, 30), [0, 0, 0]),
  partAt('controller', box(50, 30, 12), [190, 240, 0]),
];
const aircraft = benchOf([], parts, { leads: [lead] });

describe('a lead along three sides', () => {
  // 100 + 120 + √(90² + 120²) = 370.
  test('needed length, slack, mass', () => {
    const state = leadState(aircraft, lead)!;
    expect(state.neededMm).toBeCloseTo(370, 9);
    expect(state.slackMm).toBeCloseTo(30, 9);
    expect(state.massG).toBeCloseTo(20, 9);
  });

  test('dragging the pack away says how much is missing', () => {
    const state = leadState(placeItem(aircraft, 'pack', [-70, 0, 0]), lead)!;
    expect(state.slackMm).toBeCloseTo(-40, 9);
    expect(state.sentence).toBe('Pack lead is 40 mm short.');
  });

  test('it leaves where the pack’s own frame says, turned with the pack', () => {
    const turned = benchOf([], [{ ...parts[0]!, yawDeg: 90 }, parts[1]!]);
    const state = leadState(turned, { ...lead, fromAtMm: [50, 0, 0] })!;
    // Nose right by 90°: its tail, +50 along its own x, comes to the left.
    expect(state.pathMm[0]![1]).toBeCloseTo(-50, 9);
  });

  test('made to measure it has the length it needs; without its ends it is nothing', () => {
    const { lengthMm: _, ...measured } = lead;
    expect(leadState(aircraft, measured)).toMatchObject({ slackMm: 0, ownedMm: null });
    expect(leadState(aircraft, { ...lead, to: 'nobody' })).toBeNull();
  });

  test('its mass is in the sum at the centroid of the way', () => {
    const body = bodies(aircraft).find(({ id }) => id === 'pack-lead')!;
    const x = (100 * 50 + 120 * 100 + 150 * 145) / 370;
    const y = (120 * 60 + 150 * 180) / 370;
    expect(body.mass.massG).toBeCloseTo(20, 9);
    expect(body.mass.cgMm?.[0]).toBeCloseTo(x, 9);
    expect(body.mass.cgMm?.[1]).toBeCloseTo(y, 9);
    expect(massSum(bodies(aircraft).map(({ mass }) => mass)).massG).toBeCloseTo(220, 9);
    expect(bodies({ ...aircraft }).find(({ id }) => id === 'pack-lead')).toBe(body);
  });

  test('a straight one has the inertia of a thin rod, m l²/12', () => {
    const straight = leadState(aircraft, {
      ...lead,
      to: 'pack',
      waypointsMm: [[300, 0, 0]],
      toAtMm: [300, 0, 0],
    })!;
    const inertia = leadMass({ ...straight, massG: 12 }).inertiaAboutCgGmm2;
    expect(inertia.yy).toBeCloseTo((12 * 300 ** 2) / 12, 6);
    expect(inertia.xx).toBeCloseTo(0, 9);
  });
});

test('what is kept for fit leads somewhere: faults say where it does not', () => {
  const rule = { between: 'radio', and: 'nobody', atLeastMm: 10, why: 'it disturbs' };
  const broken = {
    ...aircraft,
    leads: [{ ...lead, id: 'pack', to: 'nobody' }],
    keepApart: [rule],
    hatches: [
      { id: 'h', name: 'H', centreMm: [0, 0, 0], lengthMm: 10, widthMm: 10, normal: [0, 0, 0] },
    ] as const,
    parts: [{ ...parts[0]!, bayId: 'nowhere' }, parts[1]!],
  };
  expect(aircraftFaults(aircraft)).toEqual([]);
  expect(
    aircraftFaults(broken)
      .map(({ path }) => path)
      .sort(),
  ).toEqual(
    [
      'hatches[0] "H" › normal',
      'keepApart[0] › and',
      'leads[0] "Pack lead" › id',
      'leads[0] "Pack lead" › to',
      'parts[0] "pack" › bayId',
    ].sort(),
  );
});

test('a part that is taken out takes its leads and its rules along', () => {
  const rule = { between: 'pack', and: 'radio', atLeastMm: 10, why: 'it disturbs' };
  const without = removeItem({ ...aircraft, keepApart: [rule] }, 'pack');
  expect(without.leads).toEqual([]);
  expect(without.keepApart).toEqual([]);
  expect(aircraftFaults(without)).toEqual([]);
});
