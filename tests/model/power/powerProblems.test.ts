import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { cellFigures, chemistries, typicalPackMass } from '../../../src/engine/power/cells';
import { removeItem } from '../../../src/model/document/edit';
import { feed, setPower, unfeed } from '../../../src/model/document/powerEdits';
import type { Aircraft, Part, PartPower, PowerPack, PowerUse } from '../../../src/model/document/types';
import { chooseVariant } from '../../../src/model/document/variants';
import { judgeFully } from '../../../src/model/judgement/judgeFully';
import { withPower } from '../../../src/model/judgement/withPower';
import { isControl, lostWithout, powerProblems } from '../../../src/model/power/powerProblems';
import { wiringOf } from '../../../src/model/power/wiring';
import { aircraftFaults } from '../../../src/model/reading/faults';
import { powerCount, powerSentence, powerWorking } from '../../../src/model/words/powerWords';
import { demo } from '../../demo/demoAircraft';
import { seed } from '../../seed';
import { aircraftOf, boxPart } from '../aircraft';

const part = (id: string, power: PartPower, x = 0): Part => ({ ...boxPart(id, 100, [x, 0, 0]), power });
const lipo = (cells: number, capacityMah = 2000, more: Partial<PowerPack> = {}): PartPower => ({
  pack: { chemistry: 'lipo', cells, capacityMah, ...more },
});
const servo = (minV: number, maxV: number, meanA = 0.2, peakA = 1): PowerUse => ({
  kind: 'servo',
  minV,
  maxV,
  meanA,
  peakA,
});
const uses = (use: PowerUse, ...from: readonly string[]): PartPower => ({
  use,
  fedBy: from.map((id) => ({ from: id })),
});
const regulator = (outputV: number, maxA: number, ...from: readonly string[]): PartPower => ({
  regulator: { way: 'linear', outputV, maxA, dropoutV: 0.5 },
  fedBy: from.map((id) => ({ from: id })),
});
const tenMinutes = { phases: [{ name: 'Flight', durationS: 600, throttlePct: 100 }], reservePct: 20 };

const wired = (...parts: readonly Part[]): Aircraft => ({
  ...aircraftOf([], parts),
  kind: 'petrol',
  powerFlight: tenMinutes,
});
const kinds = (aircraft: Aircraft) =>
  (powerProblems(aircraft) ?? []).map(({ kind, severity }) => `${kind} ${severity}`);
const sentences = (aircraft: Aircraft) => (powerProblems(aircraft) ?? []).map(powerSentence);

describe('voltages', () => {
  it('6.0 V servos on a full 2S LiPo', () => {
    // IEC 61960-3 cells of 3.7 V are charged to 4.20 V: two in series give 8.4 V.
    const aircraft = wired(part('pack', lipo(2)), part('servo', uses(servo(4.8, 6), 'pack')));
    expect(kinds(aircraft)).toEqual(['too-high bad']);
    expect(sentences(aircraft)).toEqual(['“servo” gets up to 8.4 V and takes at most 6.0 V.']);
    expect(powerWorking(aircraft, powerProblems(aircraft)![0]!)).toEqual([
      'pack: 2 cells × 4.20 V = 8.4 V freshly charged',
      'pack → servo: 8.4 V',
    ]);
  });

  it('a regulator between brings it down, and says nothing more', () => {
    const aircraft = wired(
      part('pack', lipo(2)),
      part('switch', regulator(6, 10, 'pack')),
      part('servo', uses(servo(4.8, 6), 'switch')),
    );
    expect(powerProblems(aircraft)).toEqual([]);
    // What is taken before the regulator has the pack's voltage after all.
    const past = feed(aircraft, 'servo', { from: 'switch', pastRegulator: true });
    expect(kinds(past)).toEqual(['too-high bad']);
  });

  it('a servo for 6 to 8.4 V behind a regulator of 5 V gets too little, always', () => {
    const aircraft = wired(
      part('pack', lipo(2)),
      part('switch', regulator(5, 10, 'pack')),
      part('servo', uses(servo(6, 8.4), 'switch')),
    );
    expect(kinds(aircraft)).toEqual(['too-low bad']);
    expect(sentences(aircraft)[0]).toContain(
      'gets only 5.0 V once the packs are nearly used up, and needs 6.0 V.',
    );
  });

  it('thin wires sag while it draws its most, and only then', () => {
    const sagging = (wireMm2: number) =>
      wired(part('pack', lipo(2, 5000)), {
        ...part('servo', { use: servo(6, 8.4, 0.2, 6), fedBy: [{ from: 'pack', wireMm2 }] }, 1000),
      });
    // By Ohm, packs empty at 6.6 V: 1 m there and back of 0.14 mm², 6 A: 2/58/0.14 · 6 = 1.48 V lost; of 2.5 mm² 0.08 V.
    expect(kinds(sagging(0.14))).toEqual(['too-low caution']);
    expect(kinds(sagging(2.5))).toEqual([]);
  });

  it('never reports what is fed within its range, and always what is above it', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...chemistries),
        fc.integer({ min: 1, max: 6 }),
        fc.double({ min: -3, max: 3, noNaN: true }),
        (chemistry, cells, aboveV) => {
          const { fullV, emptyV } = cellFigures[chemistry];
          const maxV = cells * fullV + aboveV;
          if (maxV <= 0.5 || Math.abs(aboveV) < 0.01) return;
          const use = servo(Math.min(maxV, cells * emptyV) * 0.5, maxV, 0, 0);
          const aircraft = wired(
            part('pack', { pack: { chemistry, cells, capacityMah: 3000 } }),
            part('servo', uses(use, 'pack')),
          );
          expect(kinds(aircraft)).toEqual(aboveV < 0 ? ['too-high bad'] : []);
        },
      ),
      { seed, numRuns: 200 },
    );
  });
});

describe('currents', () => {
  const motor = (meanA: number, peakA: number): PowerUse => ({
    kind: 'motor',
    minV: 5,
    maxV: 20,
    meanA,
    peakA,
    followsThrottle: true,
  });
  const carried = (packMaxA: number, plugMaxA: number, use: PowerUse) =>
    wired(
      part('pack', lipo(3, 20_000, { maxA: packMaxA })),
      part('motor', { use, fedBy: [{ from: 'pack', maxA: plugMaxA }] }),
    );

  it('the pack, and the connector, each by its own rating', () => {
    expect(kinds(carried(60, 60, motor(40, 50)))).toEqual([]);
    expect(sentences(carried(30, 60, motor(40, 50)))).toEqual([
      '“pack” gives 40.0 A at full throttle, and is good for 30.0 A.',
    ]);
    expect(sentences(carried(60, 45, motor(40, 50)))).toEqual([
      'The connector from “pack” to “motor” carries 50.0 A if everything draws its most at once, and is good for 45.0 A.',
    ]);
    expect(kinds(carried(60, 45, motor(40, 50)))).toEqual(['over-current caution']);
    expect(kinds(carried(60, 35, motor(40, 50)))).toEqual(['over-current bad']);
  });

  it('a regulator by what it gives', () => {
    const aircraft = wired(
      part('pack', lipo(2)),
      part('switch', regulator(6, 3, 'pack')),
      ...[1, 2, 3].map((n) => part(`servo-${n}`, uses(servo(4.8, 6, 0.5, 2), 'switch'))),
    );
    expect(sentences(aircraft)).toEqual([
      'The regulator of “switch” gives 6.0 A if everything draws its most at once, and is good for 3.0 A.',
    ]);
  });
});

describe('what fails together', () => {
  const ignition: PowerUse = { kind: 'ignition', minV: 4.8, maxV: 8.4, meanA: 0.5, peakA: 1 };
  const oneForBoth = wired(
    part('pack', lipo(2)),
    part('servo', uses(servo(4.8, 8.4), 'pack')),
    part('ignition', uses(ignition, 'pack')),
  );

  it('control must not fall with the engine’s pack', () => {
    expect(kinds(oneForBoth)).toEqual(['falls-together bad']);
    expect(sentences(oneForBoth)).toEqual(['If “pack” fails, control is lost together with the engine.']);
  });

  it('a pack of its own for either, or a second one that carries on, and it is well', () => {
    const apart = wired(...oneForBoth.parts, part('other', lipo(2)));
    const moved = unfeed(feed(apart, 'ignition', { from: 'other' }), 'ignition', 'pack');
    expect(powerProblems(moved)).toEqual([]);
    expect(powerProblems(feed(apart, 'servo', { from: 'other' }))).toEqual([]);
  });

  it('one pack for motor and receiver is usual where it is electric: worth a look, no more', () => {
    expect(kinds({ ...oneForBoth, kind: 'electric' })).toEqual(['falls-together caution']);
  });
});

describe('how long they last', () => {
  // 2000 mAh of which 80 % are used: 1600 mAh. At 6 A, 16 min; at 8.5 A, 11.3 min; at 10 A, 9.6 min.
  const at = (amps: number) =>
    wired(part('pack', lipo(2)), part('servo', uses(servo(1, 9, amps, amps), 'pack')));

  it('the flight with its reserve, the flight alone, or not even that', () => {
    expect(kinds(at(6))).toEqual([]);
    expect(sentences(at(8.5))).toEqual([
      '“pack” lasts 11 min: the flight, but not the reserve, 12 min in all.',
    ]);
    expect(kinds(at(8.5))).toEqual(['too-short caution']);
    expect(sentences(at(10))).toEqual(['“pack” lasts 9 min, and the flight takes 10 min.']);
    expect(kinds(at(10))).toEqual(['too-short bad']);
  });

  it('is not known while nobody says how long it flies, which is no fault', () => {
    const { powerFlight: _, ...unstated } = at(6);
    expect(kinds(unstated)).toEqual(['no-flight unknown']);
    expect(powerCount(powerProblems(unstated)!)).toBe('flight not stated');
  });
});

describe('what is left open', () => {
  it('nothing wired is nothing said; a part that nothing feeds, a pack that feeds nothing', () => {
    expect(powerProblems(wired(boxPart('plain', 10, [0, 0, 0])))).toBeNull();
    const open = wired(part('pack', lipo(2)), part('servo', uses(servo(4.8, 8.4))));
    expect(kinds(open)).toEqual(['unfed bad', 'idle-pack caution']);
  });

  it('packs of different cells on one input', () => {
    const aircraft = wired(
      part('a', lipo(2)),
      part('b', { pack: { chemistry: 'life', cells: 2, capacityMah: 2000 } }),
      part('servo', uses(servo(4.8, 8.4), 'a', 'b')),
    );
    expect(kinds(aircraft)).toEqual(['unlike-packs caution']);
  });

  it('more than the packs can give at any voltage is said, not thrown', () => {
    const aircraft = wired(
      part('pack', lipo(2, 100)),
      part('switch', { regulator: { way: 'switching', outputV: 6 }, fedBy: [{ from: 'pack' }] }),
      part('servo', uses({ ...servo(4.8, 6, 400, 400) }, 'switch')),
    );
    expect(kinds(aircraft).some((kind) => kind.endsWith('bad'))).toBe(true);
  });
});

describe('edits', () => {
  const two = wired(part('pack', lipo(2)), part('servo', uses(servo(4.8, 8.4), 'pack')));

  it('a part that goes leaves nobody fed by it', () => {
    const without = removeItem(two, 'pack');
    expect(without.parts[0]?.power?.fedBy).toEqual([]);
    expect(aircraftFaults(without)).toEqual([]);
    expect(setPower(two, 'pack', null).parts[1]?.power?.fedBy).toEqual([]);
  });

  it('what cannot be is refused where it stands', () => {
    const faultsOf = (aircraft: Aircraft) => aircraftFaults(aircraft).map(({ sentence }) => sentence);
    const join = (list: readonly string[]) => list.join(' ');
    expect(join(faultsOf(feed(two, 'servo', { from: 'nobody' })))).toMatch(
      /nothing called "nobody" is in the wiring/,
    );
    expect(join(faultsOf(feed(two, 'pack', { from: 'servo' })))).toMatch(
      /is a pack, and a pack is neither fed/,
    );
    const ring = wired(part('a', uses(servo(4, 9), 'b')), part('b', uses(servo(4, 9), 'a')));
    expect(join(faultsOf(ring))).toMatch(/"a" feeds itself/);
    expect(join(faultsOf(feed(two, 'servo', { from: 'pack', pastRegulator: true })))).toMatch(
      /has no regulator/,
    );
    expect(join(faultsOf(wired(part('pack', lipo(2)), part('servo', uses(servo(9, 6), 'pack')))))).toMatch(
      /least voltage of "servo" is above the most/,
    );
  });
});

describe('demo aircraft', () => {
  it('the long-range variant of Whimbrel has a cell too many on purpose, all else holds', () => {
    for (const name of ['sandmartin', 'fieldfare', 'whimbrel', 'corncrake'] as const)
      expect(powerProblems(demo(name))).toEqual([]);
    // Five cells of 4.20 V on what is made for four.
    expect(sentences(chooseVariant(demo('whimbrel'), 'long-range'))).toEqual(
      ['Speed controller', 'Video sender', 'Motor'].map(
        (name) => `“${name}” gets up to 21.0 V and takes at most 17.4 V.`,
      ),
    );
  });

  it('the verdict names it beside the balance, which no wiring changes', () => {
    const aircraft = chooseVariant(demo('whimbrel'), 'long-range');
    const balanced = judgeFully(aircraft, { down: [0, 0, -1], estimate: null });
    const judged = withPower(aircraft, balanced);
    expect(balanced.findings.some(({ kind }) => kind === 'power')).toBe(false);
    expect(judged.findings.filter(({ kind }) => kind === 'power')).toHaveLength(1);
    expect(['bad', 'bad-aft']).toContain(judged.severity);
    expect(judged.aftmost).toBe(balanced.aftmost);
  });

  it('two packs beat one: whichever of Fieldfare’s receiver packs fails, control stays', () => {
    const aircraft = demo('fieldfare');
    const wiring = wiringOf(aircraft)!;
    for (const id of ['receiver-pack-1', 'receiver-pack-2']) expect(lostWithout(wiring, id)).toEqual([]);
    const alone = removeItem(aircraft, 'receiver-pack-2');
    expect(lostWithout(wiringOf(alone)!, 'receiver-pack-1').some(isControl)).toBe(true);
  });
});

it('what packs weigh by their kind lies in the published range of whole packs', () => {
  // Specific energy of lithium-ion cells 100 to 265 Wh/kg, NiMH 60 to 120 Wh/kg (Linden's Handbook of Batteries, from
  // memory); a pack with its wires and wrap stores less, never more.
  for (const chemistry of chemistries) {
    const { massG, plusMinusG } = typicalPackMass(chemistry, 3, 5000);
    const wh = (3 * cellFigures[chemistry].nominalV * 5000) / 1000;
    const lightest = massG - plusMinusG;
    expect((1000 * wh) / lightest).toBeLessThan(chemistry === 'nimh' ? 120 : 265);
    expect((1000 * wh) / massG).toBeGreaterThan(50);
  }
});
