import { describe, expect, test } from 'vitest';
import { smallestPack } from '../../src/model/advice/packChoice';
import { packWays } from '../../src/model/advice/packWays';
import { balanceAt, LEVEL } from '../../src/model/balance/balance';
import { updatePart, updateTank } from '../../src/model/document/edit';
import { makePair, pairableWith } from '../../src/model/document/twins';
import type { Aircraft } from '../../src/model/document/types';
import { asShared, putBack } from '../../src/model/document/variantEdits';
import { eachVariant, sharedAircraft, variantFrom } from '../../src/model/document/variants';
import { newProblems, wholeFit } from '../../src/model/fit/wholeFit';
import { judgeFully } from '../../src/model/judgement/judgeFully';
import type { FindingKind, Judgement } from '../../src/model/judgement/types';
import { withPower } from '../../src/model/judgement/withPower';
import { packTrial } from '../../src/model/power/otherPacks';
import { typicalMassOf, withTypicalMass } from '../../src/model/power/typical';
import { wiringOf } from '../../src/model/power/wiring';
import { aircraftFaults } from '../../src/model/reading/faults';
import { estimateStability } from '../../src/model/stability/estimateStability';
import { stabilityInput } from '../../src/model/stability/stability';
import { enterFound, massFromWhole } from '../../src/model/weigh/findMass';
import { verdictInBrief } from '../../src/model/words/behindWords';
import { readings } from '../../src/panels/readings';
import { type DemoName, demo, NAMES } from './demoAircraft';

const say = readings('metric', 0);
const at = (aircraft: Aircraft, fuelFraction: number) => balanceAt(aircraft, { fuelFraction, down: LEVEL });
const stationMm = (aircraft: Aircraft, fuelFraction: number) =>
  at(aircraft, fuelFraction).cgMm?.[0] ?? Number.NaN;

/** A demo, and where it has variants each of them. */
const outfits = (name: DemoName): readonly Aircraft[] => {
  const each = [...eachVariant(demo(name))].map(({ aircraft }) => aircraft);
  return each.length > 0 ? each : [demo(name)];
};

const rows = NAMES.flatMap((name) =>
  outfits(name).map((aircraft) => [`${name} ${aircraft.variants?.chosenId ?? ''}`, name, aircraft] as const),
);

const estimates = new Map(
  NAMES.map((name) => {
    const answer = estimateStability(stabilityInput(demo(name)), 'coarse');
    if (!answer || 'fault' in answer) throw new Error(`no estimate for ${name}`);
    return [name, answer];
  }),
);
const given = (name: DemoName) => ({ down: LEVEL, estimate: estimates.get(name) ?? null });
const judged = (aircraft: Aircraft, name: DemoName): Judgement =>
  withPower(aircraft, judgeFully(aircraft, given(name)));

/** How a person reads that something is so. */
const SAID: Readonly<Record<FindingKind, RegExp>> = {
  'tail-heavy': /tail-heavy by \d/i,
  'nose-heavy': /nose-heavy by \d/i,
  'behind-neutral-point': /behind the estimated neutral point/,
  'margin-tiny': /margin -?−?\d/,
  'margin-under': /margin -?−?\d/,
  'margin-over': /margin -?−?\d/,
  'band-behind-neutral-point': /do not trust this band|aft limit behind/,
  lateral: /wing is heavy|CG [\d.]+\smm (left|right)/,
  fit: /clash|through|outside|out of|too short|too close|too thin|where none/,
  power: /wiring/,
  'mass-unknown': /not known/,
  'no-mass': /no mass|weighs anything/i,
  'no-band': /no band|CG is at station/i,
  'not-finite': /worked out/,
  'loads-unchecked': /as shown|load states/,
  'fit-unchecked': /fit/,
  'margin-unchecked': /margin/,
};

/** What is wrong with an aircraft that is offered and is not said of it. */
function unsaid(aircraft: Aircraft, judgement: Judgement): readonly string[] {
  const words = verdictInBrief(aircraft, judgement, say);
  return judgement.findings.flatMap(({ kind }) => (SAID[kind].test(words) ? [] : [`${kind}: ${words}`]));
}

/** What an edit that promises to change nothing for the worse has made worse. */
function madeWorse(name: DemoName, before: Aircraft, after: Aircraft): readonly string[] {
  const had = new Set(judged(before, name).findings.map(({ kind }) => kind));
  const more = judged(after, name).findings.filter(({ kind }) => !had.has(kind));
  return [
    ...more.map(({ kind }) => kind),
    ...newProblems(wholeFit(before), wholeFit(after)).map(({ key }) => key),
    ...aircraftFaults(after).map(({ sentence }) => sentence),
  ];
}

describe.each(rows)('%s', (_what, name, aircraft) => {
  test('“Take so many mAh” saves and moves what it says, does what is asked, and tells each fault it leads to', () => {
    const wiring = wiringOf(aircraft);
    for (const { id } of wiring?.packs ?? []) {
      const offer = smallestPack(aircraft, id);
      if (!offer) continue;
      const after = offer.aircraft;
      expect(at(aircraft, 1).massG - at(after, 1).massG).toBeCloseTo(offer.savedG ?? Number.NaN, 6);
      expect(stationMm(after, 0) - stationMm(aircraft, 0)).toBeCloseTo(offer.cgShiftMm?.dry ?? Number.NaN, 6);
      expect(packTrial(after, id)?.doesAsItIs).toBe(true);
      expect(aircraftFaults(after)).toEqual([]);
      expect(unsaid(after, judged(after, name)), id).toEqual([]);
    }
  });

  test('“Take this way”: each row tells all that is wrong with the way, as it is judged again', () => {
    for (const way of packWays(aircraft, given(name))) {
      expect(aircraftFaults(way.aircraft), way.name).toEqual([]);
      const again = judged(way.aircraft, name);
      expect(again.findings.map(({ kind }) => kind)).toEqual(way.judgement.findings.map(({ kind }) => kind));
      expect(unsaid(way.aircraft, again), way.name).toEqual([]);
      expect(at(way.aircraft, 1).massG).toBeCloseTo(way.massG, 6);
    }
  });

  test('“Take the typical mass” leaves a pack, and its twin, at what it is said to weigh', () => {
    for (const part of wiringOf(aircraft)?.packs ?? []) {
      const typical = typicalMassOf(part);
      const after = withTypicalMass(aircraft, part.id);
      const packs = after.parts.filter(({ id }) => id === part.id || id === part.twinId);
      for (const { massG, massFrom } of packs) {
        expect(Math.abs(massG - (typical?.massG ?? Number.NaN))).toBeLessThanOrEqual(0.5);
        expect(massFrom).toBe('typical');
      }
      expect(aircraftFaults(after)).toEqual([]);
      expect(newProblems(wholeFit(aircraft), wholeFit(after))).toEqual([]);
    }
  });

  test('“Find the mass”: with what was found, the whole weighs what the scale said', () => {
    const items = [...aircraft.parts, ...aircraft.tanks];
    // Each by itself, and each that stands mirrored as one of a pair.
    const asked = items.flatMap(({ id }) => {
      const other = pairableWith(aircraft, id);
      return [[id, aircraft] as const, ...(other ? [[id, makePair(aircraft, id, other.id)] as const] : [])];
    });
    expect(asked.length).toBeGreaterThan(items.length);
    for (const [id, of] of asked) {
      const unknown = updateTank(updatePart(of, id, { massFrom: 'unknown' }), id, { massFrom: 'unknown' });
      const balance = at(unknown, 1);
      const whole = { massG: balance.massG + 17, plusMinusG: 5 };
      const found = massFromWhole(unknown, balance, id, whole, (g) => `${g} g`);
      if (typeof found === 'string') throw new Error(found);
      const after = enterFound(unknown, id, found);
      // What is found is rounded to a tenth of a gram, of a pair twice.
      expect(Math.abs(at(after, 1).massG - whole.massG)).toBeLessThanOrEqual(0.1 + 1e-9);
      expect(aircraftFaults(after)).toEqual([]);
    }
  });

  test('“Make them a pair” of things that stand mirrored makes nothing worse', () => {
    for (const { id } of [...aircraft.parts, ...aircraft.tanks]) {
      const other = pairableWith(aircraft, id);
      if (!other) continue;
      expect(madeWorse(name, aircraft, makePair(aircraft, id, other.id)), id).toEqual([]);
    }
  });
});

test('“Put back” and “As all share it” leave that one thing as all share it, and all else as it was', () => {
  let pressed = 0;
  for (const aircraft of NAMES.flatMap(outfits)) {
    const shared = sharedAircraft(aircraft);
    const { without = [], changes = [] } = variantFrom(shared, aircraft);
    const presses = [
      ...without.map((id) => [id, putBack(aircraft, id)] as const),
      ...changes.map(({ of: id }) => [id, asShared(aircraft, id)] as const),
    ];
    for (const [id, after] of presses) {
      pressed += 1;
      const items = ({ parts, tanks }: Aircraft) => [...parts, ...tanks];
      const it = (of: Aircraft) => items(of).find((item) => item.id === id);
      expect(it(after)).toEqual(it(shared));
      expect(items(after).filter((item) => item.id !== id)).toEqual(
        items(aircraft).filter((item) => item.id !== id),
      );
      expect(aircraftFaults(after)).toEqual([]);
    }
  }
  expect(pressed).toBeGreaterThan(0);
});
