import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { pairOhm } from '../../../src/engine/power/cells';
import { powerFlow } from '../../../src/engine/power/powerFlow';
import type { PackSource, PowerNet } from '../../../src/engine/power/types';
import { seed } from '../../seed';

const pack = (id: string, emfV: number, ohm: number): PackSource => ({
  id,
  fullV: emfV,
  nominalV: emfV,
  emptyV: emfV,
  ohm,
  capacityMah: 1000,
  usableShare: 1,
});

const wire = (from: string, to: string, ohm = 0, pastRegulator = false) => ({ from, to, ohm, pastRegulator });

const nominal = (net: PowerNet) => (id: string) =>
  net.packs.find((source) => source.id === id)?.nominalV ?? null;

/** Two packs side by side on one load. */
const sideBySide = (a: PackSource, b: PackSource): PowerNet => ({
  packs: [a, b],
  units: [{ id: 'load', regulator: null }],
  feeds: [wire(a.id, 'load'), wire(b.id, 'load')],
});

describe('two batteries side by side on a resistor', () => {
  it('100 V behind 5 Ω and 95 V behind 3 Ω on 80 Ω', () => {
    // Hughes, Electrical and Electronic Technology, exercises on Kirchhoff's laws (from memory), with its printed
    // answers: 1.069 A and 0.115 A, both discharging, 94.66 V.
    const net = sideBySide(pack('a', 100, 5), pack('b', 95, 3));
    const flow = powerFlow(net, nominal(net), () => 94.66 / 80);
    expect(flow.packA.get('a')).toBeCloseTo(1.069, 3);
    expect(flow.packA.get('b')).toBeCloseTo(0.115, 2);
    expect(flow.unitV.get('load')).toBeCloseTo(94.66, 2);
  });

  it('1.5 V behind 1 Ω and 2 V behind 2 Ω on 5 Ω', () => {
    // A school examination's worked equations: 2 I2 − I1 = 0.5 and 6 I1 + 5 I2 = 1.5.
    const [i1, i2] = [1 / 34, 9 / 34];
    const net = sideBySide(pack('a', 1.5, 1), pack('b', 2, 2));
    const flow = powerFlow(net, nominal(net), () => i1 + i2);
    expect(flow.packA.get('a')).toBeCloseTo(i1, 4);
    expect(flow.packA.get('b')).toBeCloseTo(i2, 4);
    expect(flow.unitV.get('load')).toBeCloseTo(5 * (i1 + i2), 4);
  });

  it('lets nothing flow back into the lower one', () => {
    const net = sideBySide(pack('low', 10, 0.5), pack('high', 12, 0.8));
    const flow = powerFlow(net, nominal(net), () => 1);
    expect(flow.packA.get('low')).toBe(0);
    // Ohm's law on the other alone.
    expect(flow.unitV.get('load')).toBeCloseTo(12 - 0.8, 4);
    // With 6 A drawn the lower one helps: 10 V < 12 V − 0.8 Ω · 6 A does not hold any more.
    const hard = powerFlow(net, nominal(net), () => 6);
    expect(hard.packA.get('low')).toBeGreaterThan(0);
    expect((hard.packA.get('low') ?? 0) + (hard.packA.get('high') ?? 0)).toBeCloseTo(6, 6);
  });
});

it('drops along copper what Ohm says', () => {
  // IEC 60028: annealed copper, 1/58 Ω·mm²/m. A pair of 1 m, 0.5 mm², 2 A: 2 · 1/58 / 0.5 · 2 = 0.1379 V.
  const net: PowerNet = {
    packs: [pack('pack', 6, 0)],
    units: [{ id: 'servo', regulator: null }],
    feeds: [wire('pack', 'servo', pairOhm(1000, 0.5))],
  };
  expect(powerFlow(net, nominal(net), () => 2).unitV.get('servo')).toBeCloseTo(6 - 0.1379, 3);
});

describe('a regulator', () => {
  const behind = (efficiency: number | null, dropoutV = 0): PowerNet => ({
    packs: [pack('pack', 8, 0.1)],
    units: [
      { id: 'regulator', regulator: { outputV: 5, dropoutV, efficiency } },
      { id: 'receiver', regulator: null },
      { id: 'motor', regulator: null },
    ],
    feeds: [wire('pack', 'regulator'), wire('regulator', 'receiver'), wire('regulator', 'motor', 0, true)],
  });
  const draw =
    (amps: number, motor = 0) =>
    (id: string) =>
      id === 'receiver' ? amps : id === 'motor' ? motor : 0;

  it('that is linear draws what it gives', () => {
    const net = behind(null);
    const flow = powerFlow(net, nominal(net), draw(2));
    expect(flow.packA.get('pack')).toBeCloseTo(2, 6);
    expect(flow.unitV.get('receiver')).toBeCloseTo(5, 4);
    expect(flow.regulatorA.get('regulator')).toBeCloseTo(2, 6);
  });

  it('that switches draws the power that it gives, by its efficiency', () => {
    const net = behind(0.8);
    const flow = powerFlow(net, nominal(net), draw(2));
    // 10 W out, 12.5 W in: (8 − 0.1 I) · I = 12.5, so I = 40 − √(1600 − 125).
    expect(flow.packA.get('pack')).toBeCloseTo(40 - Math.sqrt(1600 - 125), 4);
  });

  it('gives its input less the dropout when that is all there is', () => {
    const net = behind(null, 1);
    const flow = powerFlow(net, () => 5, draw(1));
    expect(flow.unitV.get('receiver')).toBeCloseTo(5 - 0.1 - 1, 4);
  });

  it('leaves what is taken before it at the pack’s voltage', () => {
    const net = behind(null);
    const flow = powerFlow(net, nominal(net), draw(0, 10));
    expect(flow.unitV.get('motor')).toBeCloseTo(8 - 0.1 * 10, 3);
    expect(flow.unitV.get('receiver')).toBeCloseTo(5, 4);
  });
});

it('a dead pack feeds nothing, and what is behind it has no voltage', () => {
  const net = sideBySide(pack('a', 6, 0.1), pack('b', 6, 0.1));
  const oneLeft = powerFlow(
    net,
    (id) => (id === 'a' ? null : 6),
    () => 1,
  );
  expect(oneLeft.packA.get('a')).toBe(0);
  expect(oneLeft.packA.get('b')).toBeCloseTo(1, 6);
  const none = powerFlow(
    net,
    () => null,
    () => 1,
  );
  expect(none.unitV.get('load')).toBeNull();
});

it('says so when more is drawn than any voltage gives', () => {
  const net: PowerNet = {
    packs: [pack('pack', 8, 1)],
    units: [
      { id: 'regulator', regulator: { outputV: 5, dropoutV: 0, efficiency: 1 } },
      { id: 'receiver', regulator: null },
    ],
    feeds: [wire('pack', 'regulator'), wire('regulator', 'receiver')],
  };
  // At most 8²/4 = 16 W come out of it (maximum power transfer); 5 V at 2 A are 10 W.
  expect(powerFlow(net, nominal(net), (id) => (id === 'receiver' ? 2 : 0)).unitV.get('receiver')).toBeCloseTo(
    5,
    3,
  );
  // 100 W are not to be had: what the receiver gets is no longer what the regulator is set to.
  const starved = () =>
    powerFlow(net, nominal(net), (id) => (id === 'receiver' ? 20 : 0)).unitV.get('receiver');
  let volts: number | null | undefined;
  try {
    volts = starved();
  } catch (error) {
    expect(error).toBeInstanceOf(RangeError);
    return;
  }
  expect(volts).toBeLessThan(4.5);
});

/** Packs on a chain of units by random wires, some of them regulators. */
const anyNet = fc
  .record({
    packs: fc.array(
      fc.record({
        emf: fc.double({ min: 5, max: 25, noNaN: true }),
        ohm: fc.double({ min: 0.005, max: 0.2, noNaN: true }),
      }),
      {
        minLength: 1,
        maxLength: 3,
      },
    ),
    units: fc.array(
      fc.record({
        regulated: fc.boolean(),
        linear: fc.boolean(),
        from: fc.nat(9),
        ohm: fc.double({ min: 0.001, max: 0.05, noNaN: true }),
        amps: fc.double({ min: 0, max: 1.5, noNaN: true }),
        past: fc.boolean(),
      }),
      { minLength: 1, maxLength: 6 },
    ),
  })
  .map(({ packs, units }) => {
    const net: PowerNet = {
      packs: packs.map(({ emf, ohm }, at) => pack(`p${at}`, emf, ohm)),
      units: units.map(({ regulated, linear }, at) => ({
        id: `u${at}`,
        regulator: regulated ? { outputV: 5, dropoutV: 0.3, efficiency: linear ? null : 0.85 } : null,
      })),
      feeds: [
        ...packs.map((_pack, at) => wire(`p${at}`, 'u0', 0.002)),
        ...units
          .slice(1)
          .map(({ from, ohm, past }, at) => wire(`u${from % (at + 1)}`, `u${at + 1}`, ohm, past)),
      ],
    };
    return { net, draws: new Map(units.map(({ amps }, at) => [`u${at}`, amps])) };
  });

it('keeps the energy: what the packs give is what is used, lost in wires, in packs and in regulators', () => {
  fc.assert(
    fc.property(anyNet, ({ net, draws }) => {
      const flow = powerFlow(net, nominal(net), (id) => draws.get(id) ?? 0);
      let given = 0;
      for (const { id, nominalV, ohm } of net.packs) {
        const amps = flow.packA.get(id) ?? 0;
        expect(amps).toBeGreaterThanOrEqual(0);
        given += nominalV * amps - ohm * amps ** 2;
      }
      let taken = net.feeds.reduce((sum, { ohm }, at) => sum + ohm * (flow.feedA[at] ?? 0) ** 2, 0);
      for (const { id, regulator } of net.units) {
        const volts = flow.unitV.get(id) ?? 0;
        taken += volts * (draws.get(id) ?? 0);
        if (!regulator) continue;
        const out = (flow.regulatorV.get(id) ?? 0) * (flow.regulatorA.get(id) ?? 0);
        taken +=
          regulator.efficiency === null
            ? volts * (flow.regulatorA.get(id) ?? 0) - out
            : out / regulator.efficiency - out;
      }
      expect(Math.abs(given - taken)).toBeLessThan(1e-3 + 1e-4 * given);
      // Kirchhoff's first law at the root: what comes out of the packs arrives there.
      const arrives = net.feeds.reduce(
        (sum, { to }, at) => sum + (to === 'u0' ? (flow.feedA[at] ?? 0) : 0),
        0,
      );
      const leaves = [...flow.packA.values()].reduce((sum, amps) => sum + amps, 0);
      expect(arrives).toBeCloseTo(leaves, 4);
    }),
    { seed, numRuns: 300 },
  );
});
