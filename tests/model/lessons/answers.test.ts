import { describe, expect, test } from 'vitest';
import { structureMass } from '../../../src/model/airframe/structureBodies';
import { answerOf, lessonAnswer } from '../../../src/model/lessons/answer';
import { checkBench } from '../../../src/model/lessons/bench';
import { rightOptions } from '../../../src/model/lessons/outcome';
import { estimateHere } from '../../../src/model/lessons/quantity';
import {
  ballastByFaa,
  boxMl,
  cgOf,
  type JsonAircraft,
  massOf,
  movedTo,
  plusMinusByGum,
  weights,
} from './byHand';
import { lessonJson, lessonNamed } from './lessonFiles';

/** The engine's answers to a lesson and to its check, and the bare file to work them out by hand. */
function both(name: string) {
  const lesson = lessonNamed(name);
  const json = lessonJson(name);
  const { question } = lesson.check;
  const found = answerOf(checkBench(lesson), question)!;
  const right = question.by === 'choice' ? question.options[rightOptions(question, found)[0]!]!.say : null;
  return {
    json,
    aircraft: json.aircraft as JsonAircraft,
    lesson,
    main: lessonAnswer(lesson)!,
    check: found,
    right,
  };
}

const place = (json: { question: { change: { stationMm?: number; buttlineMm?: number }[] } }) =>
  json.question.change[0]!;

test('the see-saw: the CG follows the pack by its share of the mass (PHAK: w/W = ΔCG/d)', () => {
  const { json, aircraft, main, check, right } = both('see-saw');
  const list = weights(aircraft);
  const pack = list.find(({ id }) => id === 'pack')!;
  const to = place(json).stationMm!;
  expect(main.before).toBeCloseTo(cgOf(list), 6);
  expect(main.answer).toBeCloseTo(cgOf(movedTo(list, 'pack', to)), 6);
  expect(main.answer - main.before).toBeCloseTo((pack.g / massOf(list)) * (to - pack.at[0]), 6);
  const receiver = list.find(({ id }) => id === 'receiver')!;
  const distance = place(json.check).stationMm! - receiver.at[0];
  expect(distance).toBe(120);
  expect(check.answer).toBeCloseTo((receiver.g / massOf(list)) * distance, 6);
  expect(right).toMatch(/less far/);
});

test('grams in the nose: ballast by the FAA’s rule, at both arms', () => {
  const { json, aircraft, main, check } = both('nose-grams');
  const bare = weights(aircraft).filter(({ id }) => id !== 'ballast');
  const wanted = json.question.quantity.wanted.value;
  const atNose = aircraft.parts.find(({ id }) => id === 'ballast')!.positionMm[0];
  const inMiddle = place(json.check).stationMm!;
  expect(main.answer).toBeCloseTo(ballastByFaa(massOf(bare), cgOf(bare), wanted, atNose), 6);
  expect(check.answer).toBeCloseTo(ballastByFaa(massOf(bare), cgOf(bare), wanted, inMiddle), 6);
  // The words say that half the arm takes twice the grams, and the third step that it takes about four times as many.
  expect(wanted - inMiddle).toBe((wanted - atNose) / 2);
  expect(check.answer / main.answer).toBeCloseTo(2, 6);
  const last = json.experiment[1].goal.change.stationMm;
  expect((wanted - atNose) / (wanted - last)).toBe(4);
  // The ballast found puts the CG where it was wanted.
  const withIt = [...bare, { id: 'ballast', g: main.answer, at: [atNose, 0] as const }];
  expect(cgOf(withIt)).toBeCloseTo(wanted, 6);
});

test('a tank ahead of the CG: full and dry by hand', () => {
  const { json, aircraft, main, check, right } = both('tank-ahead');
  const full = weights(aircraft, { main: boxMl(aircraft.tanks[0]!) });
  const dry = weights(aircraft);
  expect(main.before).toBeCloseTo(cgOf(full), 6);
  expect(main.answer).toBeCloseTo(cgOf(dry), 6);
  const to = place(json.check).stationMm!;
  const { forwardMm, aftMm } = json.aircraft.targetBand;
  expect(check.answer).toBeCloseTo(cgOf(movedTo(dry, 'pack', to)), 6);
  // "Well inside the band" when full, and behind it when dry, as the words say.
  const takesOff = cgOf(movedTo(full, 'pack', to));
  expect(takesOff).toBeGreaterThan(forwardMm + 10);
  expect(takesOff).toBeLessThan(aftMm - 10);
  expect(check.answer).toBeGreaterThan(aftMm);
  expect(right).toMatch(/tail-heavy/);
});

test('the header tank stays full until the main tank is empty', () => {
  const { aircraft, main, check } = both('header-tank');
  const [tank, header] = aircraft.tanks as [JsonAircraft['tanks'][0], JsonAircraft['tanks'][0]];
  const usable = boxMl(tank) + boxMl(header);
  const inHeader = (left: number) => Math.min(boxMl(header), left * usable);
  expect(main.before).toBeCloseTo(boxMl(header), 6);
  expect(main.answer).toBeCloseTo(inHeader(0.5), 6);
  expect(check.answer).toBeCloseTo(inHeader(0.1), 6);
  expect(check.answer).toBeLessThan(boxMl(header) - 50);
});

test('fuel in the climb: half of a long box at 30° is a trapezium', () => {
  const { json, aircraft, main, check, right } = both('fuel-in-the-climb');
  const { shape } = aircraft.tanks[0]!;
  const [{ pitchDeg }] = json.question.change;
  // The surface goes through the middle of the box and meets floor and lid. The liquid's long side lies on the floor, against
  // the aft end; the centroid of a trapezium from its square end is (a² + ab + b²)/3(a + b).
  const reach = shape.heightMm / 2 / Math.tan((pitchDeg * Math.PI) / 180);
  expect(reach).toBeLessThan(shape.lengthMm / 2);
  const [a, b] = [shape.lengthMm / 2 + reach, shape.lengthMm / 2 - reach];
  const ranMm = shape.lengthMm / 2 - (a * a + a * b + b * b) / (3 * (a + b));
  const half = boxMl(aircraft.tanks[0]!) / 2;
  const fuelG = half * aircraft.fuel!.densityGPerMl;
  expect(main.answer).toBeCloseTo((fuelG * ranMm) / massOf(weights(aircraft, { main: half })), 6);
  expect(check.answer).toBeCloseTo(0, 9);
  expect(right).toMatch(/stays/);
});

test('a camera off the middle: moments about the middle', () => {
  const { json, aircraft, main, check } = both('offset-camera');
  const out = place(json).buttlineMm!;
  const list = movedTo(weights(aircraft), 'camera', null, out);
  expect(main.answer).toBeCloseTo(cgOf(list, 1), 9);
  const camera = list.find(({ id }) => id === 'camera')!;
  const tip = aircraft.parts.find(({ id }) => id === 'tip-ballast')!.positionMm[1];
  expect(check.answer).toBeCloseTo((camera.g * out) / -tip, 6);
  // The pack's way in the second step levels within the goal.
  const [{ buttlineMm }] = json.experiment[1].goal.way;
  expect(Math.abs(cgOf(movedTo(list, 'pack', null, buttlineMm), 1))).toBeLessThan(0.5);
});

/** Chord of a straight-tapered panel at a share of its span, integrated by Simpson's rule, exact for c² and c·x. */
function macOf(json: JsonSurface) {
  let [c0, x0, chord2, chordLead, area] = [json.rootChordMm, json.rootMm[0], 0, 0, 0];
  for (const { spanMm, tipChordMm: c1, sweepMm } of json.panels) {
    const x1 = x0 + sweepMm;
    const [cm, xm] = [(c0 + c1) / 2, (x0 + x1) / 2];
    area += spanMm * cm;
    chord2 += (spanMm / 6) * (c0 * c0 + 4 * cm * cm + c1 * c1);
    chordLead += (spanMm / 6) * (c0 * x0 + 4 * cm * xm + c1 * x1);
    [c0, x0] = [c1, x1];
  }
  const spanMm = 2 * json.panels.reduce((sum, panel) => sum + panel.spanMm, 0);
  return {
    macMm: chord2 / area,
    lemacMm: chordLead / area,
    areaMm2: 2 * area,
    aspect: spanMm ** 2 / (2 * area),
  };
}

interface JsonSurface {
  id: string;
  rootMm: [number, number, number];
  rootChordMm: number;
  panels: { spanMm: number; tipChordMm: number; sweepMm: number }[];
}

describe('the neutral point', () => {
  const { json, aircraft, lesson, main, check, right } = both('neutral-point');
  const surface = (id: string) =>
    macOf(json.aircraft.structure.find((piece: JsonSurface) => piece.id === id) as JsonSurface);
  const [wing, tail] = [surface('wing'), surface('tailplane')];

  test('the margin falls by what the CG moves, in % of the MAC of G2 (∫c²dy ÷ ∫c dy)', () => {
    const list = weights(aircraft);
    const moved = movedTo(list, 'pack', place(json).stationMm!);
    const byHand = ((cgOf(list) - cgOf(moved)) / wing.macMm) * 100;
    // The surface is flat in the sum by hand; its dihedral of 2° and 6° takes a thousandth off.
    expect(main.answer - main.before).toBeCloseTo(byHand, 1);
  });

  test('wing and tail together lie where Drela’s formula puts them, within 5 % MAC', () => {
    // M. Drela, Basic Aircraft Design Rules, MIT Unified Engineering (from memory):
    // x_np/c ≈ 1/4 + (1 + 2/AR)/(1 + 2/AR_h) · (1 − 4/(AR + 2)) · V_h, of wing and tail without a body.
    const armMm = tail.lemacMm + tail.macMm / 4 - (wing.lemacMm + wing.macMm / 4);
    const volume = (tail.areaMm2 * armMm) / (wing.areaMm2 * wing.macMm);
    const slopes = (1 + 2 / wing.aspect) / (1 + 2 / tail.aspect);
    const share = 0.25 + slopes * (1 - 4 / (wing.aspect + 2)) * volume;
    const estimate = estimateHere(lesson.aircraft)!;
    const surfacesMm = estimate.neutralPointMm - estimate.fuselageShiftMm;
    expect(Math.abs((surfacesMm - wing.lemacMm) / wing.macMm - share)).toBeLessThan(0.05);
    // The body moves it forward, as bodies do (Multhopp; Nelson, ch. 2).
    expect(estimate.fuselageShiftMm).toBeLessThan(0);
  });

  test('a longer tail moves it aft, about as the same formula has it', () => {
    const slopes = (1 + 2 / wing.aspect) / (1 + 2 / tail.aspect);
    const longerMm = json.check.question.change[0].aftMm;
    const byFormula = slopes * (1 - 4 / (wing.aspect + 2)) * ((tail.areaMm2 * longerMm) / wing.areaMm2);
    expect(check.answer / byFormula).toBeGreaterThan(0.7);
    expect(check.answer / byFormula).toBeLessThan(1.3);
    expect(right).toMatch(/aft/);
  });
});

describe('inertia', () => {
  const { json, aircraft, lesson, main, check } = both('inertia-and-gyro');
  /** kg·m² about the yaw axis through the CG: Steiner on boxes, m(l² + w²)/12, and cylinders along x, m(3r² + l²)/12. */
  function yaw(list: ReturnType<typeof weights>): number {
    const cg = cgOf(list);
    const own = aircraft.parts.map(({ id, massG, shape }) => {
      const { lengthMm: l, widthMm: w, diameterMm: d } = shape;
      const itself = shape.kind === 'cylinder' ? (3 * (d / 2) ** 2 + l * l) / 12 : (l * l + w * w) / 12;
      const at = list.find((each) => each.id === id)!.at;
      return massG * (itself + (at[0] - cg) ** 2 + at[1] ** 2);
    });
    // The weighed airframe keeps the spread of its shapes, scaled to what it weighs; shapes have tests of their own.
    const shapes = structureMass(lesson.aircraft.structure);
    const { massG, stationMm } = aircraft.bareAirframe;
    const bare = (shapes.inertiaAboutCgGmm2.zz * massG) / shapes.massG + massG * (stationMm - cg) ** 2;
    return (own.reduce((sum, each) => sum + each, 0) + bare) / 1e9;
  }
  const list = weights(aircraft);
  const out = (change: { itemId: string; stationMm: number }[]) =>
    change.reduce((moved, each) => movedTo(moved, each.itemId, each.stationMm), list);

  test('as many times as much as Steiner has it', () => {
    expect(main.answer).toBeCloseTo(yaw(out(json.question.change)) / yaw(list), 6);
    expect(check.answer).toBeCloseTo(yaw(out(json.check.question.change)) / yaw(list), 6);
  });

  test('the CG stays, and half as far out adds a fifth as much, as the words say', () => {
    expect(cgOf(out(json.question.change))).toBeCloseTo(cgOf(list), 9);
    const added = (change: Parameters<typeof out>[0]) => yaw(out(change)) - yaw(list);
    expect(added(json.check.question.change) / added(json.question.change)).toBeCloseTo(1 / 5, 9);
    expect(cgOf(list)).toBeCloseTo(380, 6);
  });
});

test('the kitchen scale: root of the sum of squares (GUM 5.1.2)', () => {
  const { json, aircraft, main, check } = both('kitchen-scale');
  const measured = (change: { itemId: string; g: number }[]): JsonAircraft => ({
    ...aircraft,
    parts: aircraft.parts.map((part) => {
      const better = change.find(({ itemId }) => itemId === part.id);
      return better ? { ...part, plusMinusG: better.g } : part;
    }),
  });
  expect(main.before).toBeCloseTo(plusMinusByGum(aircraft), 6);
  expect(main.answer).toBeCloseTo(plusMinusByGum(measured(json.question.change)), 6);
  expect(check.answer).toBeCloseTo(plusMinusByGum(measured(json.check.question.change)), 6);
  // "Alone, each would blur the CG by about as much", and together less than the sum.
  const [motor, pack] = json.check.question.change;
  const [first, second] = [plusMinusByGum(measured([motor])), plusMinusByGum(measured([pack]))];
  expect(Math.abs(first - second) / first).toBeLessThan(0.15);
  expect(check.answer).toBeLessThan(0.8 * (first + second));
});
