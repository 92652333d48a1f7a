import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { cellFigures, chemistries } from '../../../src/engine/power/cells';
import { removeItem } from '../../../src/model/document/edit';
import { feed, setPower, unfeed } from '../../../src/model/document/powerEdits';
import type { Aircraft, Part, PartPower, PowerPack, PowerUse } from '../../../src/model/document/types';
import { chooseVariant } from '../../../src/model/document/variants';
import { judgeFully } from '../../../src/model/judgement/judgeFully';
import { withPower } from '../../../src/model/judgement/withPower';
import { lostWithout } from '../../../src/model/power/flows';
import { isControl, powerProblems } from '../../../src/model/power/powerProblems';
import { wiringOf } from '../../../src/model/power/wiring';
import { aircraftFaults } from '../../../src/model/reading/faults';
import {
  lastsWords,
  powerCount,
  powerSentence,
  powerWorking,
  takesWords,
} from '../../../src/model/words/powerWords';
import { between } from '../../between';
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
        between(-3, 3),
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

  it('what nothing fed before, or had too little anyway, is not lost with a pack that never fed it', () => {
    const { id: _id, ...bare } = part('x', uses(ignition));
    const aircraft = wired(
      part('pack', lipo(2)),
      part('servo', uses(servo(4.8, 8.4), 'pack')),
      { ...bare, id: 'ignition', name: 'ignition' },
      part('spare', lipo(2)),
      part('thirsty', uses(servo(9, 12), 'pack')),
    );
    expect(kinds(aircraft)).toEqual(['unfed bad', 'too-low bad', 'idle-pack caution']);
    expect(lostWithout(wiringOf(aircraft)!, 'spare')).toEqual([]);
    expect(lostWithout(wiringOf(aircraft)!, 'pack').map(({ id }) => id)).toEqual(['servo', 'thirsty']);
  });

  it('where the pack that is left cannot give it, all that hangs on both is lost, and nothing else is said', () => {
    // 2000 mΩ: 7.4 V ÷ 2 Ω = 3.7 A at the most; 5 A are drawn.
    const aircraft = wired(
      part('main', lipo(2, 20_000)),
      part('weak', lipo(2, 2000, { milliohm: 2000 })),
      part('servo', uses(servo(4, 8.4, 5, 5), 'main', 'weak')),
    );
    expect(kinds(aircraft)).toEqual([]);
    expect(lostWithout(wiringOf(aircraft)!, 'main').map(({ id }) => id)).toEqual(['servo']);
    expect(lostWithout(wiringOf(aircraft)!, 'weak')).toEqual([]);
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

  it('what one piece of the wiring cannot give hides nothing of another, and no voltage is below 0', () => {
    // 100 mAh of two cells: 0.3 Ω. At 400 A nothing is left of 6.6 V.
    const hungry = (meanA: number) =>
      wired(
        part('small', lipo(2, 100)),
        part('motor', uses({ ...servo(4.8, 9, meanA, 400), kind: 'motor' }, 'small')),
        part('other', lipo(2)),
        part('servo', uses(servo(4.8, 6), 'other')),
      );
    expect(sentences(hungry(400))).toEqual([
      'Nearly used up, “small” cannot give what is drawn at full throttle, at any voltage.',
      '“servo” gets up to 8.4 V and takes at most 6.0 V.',
    ]);
    // 0.1 A for 12 min are 20 mAh of 80: only the peak is too much, and that is no fault yet.
    expect(kinds(hungry(0.1))).toEqual(['too-high bad', 'starved caution']);
  });
});

describe('words', () => {
  it('the sum follows the way that gives the voltage, past a regulator and among several feeders', () => {
    const aircraft = wired(
      part('low', { pack: { chemistry: 'life', cells: 2, capacityMah: 2000 } }),
      part('high', lipo(3)),
      part('switch', regulator(6, 10, 'high')),
      part('servo', {
        use: servo(4.8, 6),
        fedBy: [{ from: 'low' }, { from: 'switch', pastRegulator: true }],
      }),
    );
    const problem = powerProblems(aircraft)!.find(({ kind }) => kind === 'too-high')!;
    // Iron phosphate gives 2 · 3.65 = 7.3 V; three cells past the regulator 3 · 4.2 = 12.6 V.
    expect(powerWorking(aircraft, problem)).toEqual([
      'high: 3 cells × 4.20 V = 12.6 V freshly charged',
      'high → switch → servo: 12.6 V',
    ]);
  });

  it('a pack is never said to last longer than it does, nor a flight to be shorter', () => {
    expect([59.9, 60, 119, 3600, 5100].map(lastsWords)).toEqual([
      '59 s',
      '1 min',
      '1 min',
      '1 h',
      '1 h 25 min',
    ]);
    expect([58.1, 60, 61, 720.0000001, 3601].map(takesWords)).toEqual([
      '59 s',
      '1 min',
      '2 min',
      '12 min',
      '1 h 1 min',
    ]);
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
    const idling = { ...servo(4.8, 9, 2, 9), followsThrottle: true, idleA: 3 };
    expect(join(faultsOf(wired(part('pack', lipo(2)), part('motor', uses(idling, 'pack')))))).toMatch(
      /current of "motor" at idle is more than at full throttle/,
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
