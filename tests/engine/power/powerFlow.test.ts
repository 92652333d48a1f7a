import fc from 'fast-check';
import { Matrix, solve } from 'ml-matrix';
import { describe, expect, it } from 'vitest';
import { pairOhm } from '../../../src/engine/power/cells';
import { powerFlow } from '../../../src/engine/power/powerFlow';
import type { PackSource, PowerNet } from '../../../src/engine/power/types';
import { between } from '../../between';
import { seed } from '../../seed';
import { nominal, pack, wire } from './nets';

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
    // Kirchhoff's laws by hand, round either loop: 2 I2 − I1 = 2 − 1.5 and I1 + 5 (I1 + I2) = 1.5.
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

  it('that drops more than it is fed gives nothing, and never less than that', () => {
    const net = behind(null, 1);
    const volts = powerFlow(net, () => 0.4, draw(0)).unitV.get('receiver');
    expect(volts).toBeGreaterThanOrEqual(0);
    expect(volts).toBeCloseTo(0, 6);
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

describe('more than the packs can give', () => {
  const regulated: PowerNet = {
    packs: [pack('pack', 8, 1)],
    units: [
      { id: 'regulator', regulator: { outputV: 5, dropoutV: 0, efficiency: 1 } },
      { id: 'receiver', regulator: null },
    ],
    feeds: [wire('pack', 'regulator'), wire('regulator', 'receiver')],
  };
  const drawn = (amps: number) =>
    powerFlow(regulated, nominal(regulated), (id) => (id === 'receiver' ? amps : 0));

  it('of a regulator: at most 8²/4 = 16 W come out of it (maximum power transfer)', () => {
    // 5 V at 2 A are 10 W.
    expect(drawn(2).unitV.get('receiver')).toBeCloseTo(5, 3);
    expect(() => drawn(20)).toThrow(RangeError);
  });

  it('without one: a voltage below 0 is none', () => {
    const net: PowerNet = {
      packs: [pack('pack', 8, 1)],
      units: [{ id: 'motor', regulator: null }],
      feeds: [wire('pack', 'motor')],
    };
    // 8 V − 1 Ω · 7.9 A = 0.1 V; at 8.1 A there is nothing left.
    expect(powerFlow(net, nominal(net), () => 7.9).unitV.get('motor')).toBeCloseTo(0.1, 3);
    expect(() => powerFlow(net, nominal(net), () => 8.1)).toThrow(RangeError);
    expect(() => powerFlow(net, nominal(net), () => 1000)).toThrow(RangeError);
  });

  it('has an answer while there is one, out of regulation and sagging to less than half', () => {
    const net: PowerNet = {
      ...regulated,
      units: [
        { id: 'regulator', regulator: { outputV: 5, dropoutV: 0.5, efficiency: 0.9 } },
        { id: 'receiver', regulator: null },
      ],
    };
    const flow = powerFlow(net, nominal(net), (id) => (id === 'receiver' ? 5 : 0));
    // Out of regulation it gives x − 0.5 and draws 5 (x − 0.5)/(0.9 x) at an input of x = 8 − that: 0.9 x² − 2.2 x − 2.5 = 0.
    const inV = (2.2 + Math.sqrt(2.2 ** 2 + 4 * 0.9 * 2.5)) / 1.8;
    expect(inV).toBeLessThan(4);
    expect(flow.unitV.get('regulator')).toBeCloseTo(inV, 4);
    expect(flow.unitV.get('receiver')).toBeCloseTo(inV - 0.5, 4);
  });
});

it('a unit on a regulator and on a pack at once has the higher of them, and nothing flows back', () => {
  const net = (directV: number): PowerNet => ({
    packs: [pack('main', 12, 0.1), pack('direct', directV, 0.1)],
    units: [
      { id: 'regulator', regulator: { outputV: 6, dropoutV: 0.5, efficiency: null } },
      { id: 'servo', regulator: null },
    ],
    feeds: [wire('main', 'regulator'), wire('regulator', 'servo'), wire('direct', 'servo')],
  });
  const draw = (id: string) => (id === 'servo' ? 2 : 0);
  const high = powerFlow(net(8), nominal(net(8)), draw);
  expect(high.unitV.get('servo')).toBeCloseTo(8 - 0.1 * 2, 4);
  expect(high.packA.get('main')).toBe(0);
  const low = powerFlow(net(5), nominal(net(5)), draw);
  expect(low.unitV.get('servo')).toBeCloseTo(6, 4);
  expect(low.packA.get('direct')).toBe(0);
});

/** Packs of different voltage and resistance on one bus, and a chain of units behind it. */
const star = fc.record({
  packs: fc.array(
    fc.record({
      emf: between(10, 13),
      ohm: between(0.01, 0.3),
      wireOhm: between(0.002, 0.1),
    }),
    { minLength: 1, maxLength: 3 },
  ),
  units: fc.array(
    fc.record({
      amps: between(0, 3),
      ohm: between(0.002, 0.1),
    }),
    { minLength: 1, maxLength: 5 },
  ),
});

it('sags and shares as an independent nodal solve says, with every choice of packs that hold off tried', () => {
  fc.assert(
    fc.property(star, ({ packs, units }) => {
      const net: PowerNet = {
        packs: packs.map(({ emf, ohm }, at) => pack(`p${at}`, emf, ohm)),
        units: units.map((_unit, at) => ({ id: `u${at}`, regulator: null })),
        feeds: [
          ...packs.map(({ wireOhm }, at) => wire(`p${at}`, 'u0', wireOhm)),
          ...units.slice(1).map(({ ohm }, at) => wire(`u${at}`, `u${at + 1}`, ohm)),
        ],
      };
      const flow = powerFlow(net, nominal(net), (id) => units[Number(id.slice(1))]?.amps ?? 0);
      // Nodal analysis by a library, packs and their wires as one resistance; only the choice of open packs in which nothing
      // flows back and every pack held off stands below the bus is physical.
      const physical = Array.from({ length: 2 ** packs.length - 1 }, (_, at) => at + 1).flatMap((mask) => {
        const g = Matrix.zeros(units.length, units.length);
        const i = units.map(({ amps }) => [-amps]);
        const open = packs.filter((_pack, at) => mask & (1 << at));
        for (const { emf, ohm, wireOhm } of open) {
          g.set(0, 0, g.get(0, 0) + 1 / (ohm + wireOhm));
          i[0]![0]! += emf / (ohm + wireOhm);
        }
        units.slice(1).forEach(({ ohm }, at) => {
          for (const [row, column, sign] of [
            [at, at, 1],
            [at + 1, at + 1, 1],
            [at, at + 1, -1],
            [at + 1, at, -1],
          ] as const) {
            g.set(row, column, g.get(row, column) + sign / ohm);
          }
        });
        const volts = solve(g, new Matrix(i)).to1DArray();
        const busV = volts[0]!;
        const fits = packs.every(({ emf }, at) =>
          mask & (1 << at) ? emf >= busV - 1e-9 : emf <= busV + 1e-9,
        );
        return fits ? [volts] : [];
      });
      expect(physical.length).toBeGreaterThan(0);
      for (const [at, volt] of physical[0]!.entries()) {
        expect(flow.unitV.get(`u${at}`)).toBeCloseTo(volt, 3);
      }
      for (const [at, { emf, ohm, wireOhm }] of packs.entries()) {
        const amps = Math.max(0, (emf - physical[0]![0]!) / (ohm + wireOhm));
        expect(flow.packA.get(`p${at}`)).toBeCloseTo(amps, 3);
      }
    }),
    { seed, numRuns: 200 },
  );
});

/** Packs on a chain of units by random wires, some of them regulators. */
const anyNet = fc
  .record({
    packs: fc.array(
      fc.record({
        emf: between(9, 25),
        ohm: between(0.005, 0.2),
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
        ohm: between(0.001, 0.05),
        amps: between(0, 1.5),
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
