import { describe, expect, it } from 'vitest';
import { powerFlow } from '../../../src/engine/power/powerFlow';
import type { PowerNet } from '../../../src/engine/power/types';
import { pack, wire } from './nets';

describe('with one of two branches dead', () => {
  const regulator = { outputV: 5, dropoutV: 0, efficiency: null };
  const net: PowerNet = {
    packs: [pack('empty', 6, 0.1), pack('full', 8, 0.1)],
    units: [
      { id: 'dead regulator', regulator },
      { id: 'dead servo', regulator: null },
      { id: 'regulator', regulator },
      { id: 'servo', regulator: null },
    ],
    feeds: [
      wire('empty', 'dead regulator'),
      wire('dead regulator', 'dead servo'),
      wire('full', 'regulator'),
      wire('regulator', 'servo'),
    ],
  };
  const flow = powerFlow(
    net,
    (id) => (id === 'full' ? 8 : null),
    (id) => (id.endsWith('servo') ? 2 : 0),
  );

  it('nothing of it has a voltage or a current, its regulator neither', () => {
    expect(flow.unitV.get('dead regulator')).toBeNull();
    expect(flow.unitV.get('dead servo')).toBeNull();
    expect(flow.regulatorV.get('dead regulator')).toBeNull();
    expect(flow.regulatorA.get('dead regulator')).toBe(0);
    expect(flow.packA.get('empty')).toBe(0);
    expect(flow.feedA.slice(0, 2)).toEqual([0, 0]);
  });

  it('the other is as if it were alone', () => {
    // What is linear draws what it gives.
    expect(flow.packA.get('full')).toBeCloseTo(2, 6);
    expect(flow.feedA[2]).toBeCloseTo(2, 6);
    expect(flow.feedA[3]).toBeCloseTo(2, 6);
    expect(flow.unitV.get('regulator')).toBeCloseTo(8 - 0.1 * 2, 3);
    expect(flow.unitV.get('servo')).toBeCloseTo(5, 3);
  });
});

it('a dead pack beside a live one stays dead in every round that a regulator takes', () => {
  const net: PowerNet = {
    packs: [pack('dead', 8, 0.1), pack('live', 8, 0.1)],
    units: [
      { id: 'regulator', regulator: { outputV: 5, dropoutV: 0, efficiency: 0.5 } },
      { id: 'servo', regulator: null },
    ],
    feeds: [wire('dead', 'regulator'), wire('live', 'regulator'), wire('regulator', 'servo')],
  };
  const flow = powerFlow(
    net,
    (id) => (id === 'live' ? 8 : null),
    (id) => (id === 'servo' ? 1 : 0),
  );
  expect(flow.packA.get('dead')).toBe(0);
  // 5 W out, 10 W in: (8 − 0.1 I) · I = 10, so I = 40 − √(1600 − 100).
  expect(flow.packA.get('live')).toBeCloseTo(40 - Math.sqrt(1600 - 100), 3);
});
