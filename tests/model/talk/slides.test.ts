import { describe, expect, test } from 'vitest';
import { removeItem, updatePart } from '../../../src/model/document/edit';
import { mostSlides } from '../../../src/model/document/schema/talk';
import { settled } from '../../../src/model/document/settle';
import type { Aircraft, Slide } from '../../../src/model/document/types';
import { addVariant, removeVariant } from '../../../src/model/document/variantEdits';
import { chooseVariant } from '../../../src/model/document/variants';
import { writeAircraft } from '../../../src/model/document/write';
import { aircraftFaults } from '../../../src/model/reading/faults';
import { parseAircraft, readAircraft } from '../../../src/model/reading/read';
import { shownSlide, stateToKeep } from '../../../src/model/talk/shown';
import {
  addSlide,
  moveSlide,
  removeSlide,
  replaceSeen,
  slidesOf,
  updateSlide,
} from '../../../src/model/talk/slides';
import { fuelAt, stayMs } from '../../../src/panels/present/show/burnPlay';
import { demo } from '../../demo/demoAircraft';
import { randomFrom } from '../../randomFrom';
import { seed } from '../../seed';
import { aircraftOf, boxPart } from '../aircraft';

const plain: Omit<Slide, 'id'> = { title: 'Nose', view: 'side', fuel: 1, layers: ['cg'], figures: ['mass'] };
const bare = aircraftOf([], [boxPart('pack', 200, [300, 0, 0]), boxPart('camera', 100, [800, 0, 0])]);
const titles = (aircraft: Aircraft) => slidesOf(aircraft).map(({ title }) => title);
const talkOf = (...names: string[]) =>
  names.reduce((aircraft, title) => addSlide(aircraft, { ...plain, title }), bare);
const first = (aircraft: Aircraft): Slide => {
  const [slide] = slidesOf(aircraft);
  if (!slide) throw new Error('no slide');
  return slide;
};
const faultsOf = (talk: unknown) => {
  const read = readAircraft({ ...bare, talk });
  return read.ok ? '' : read.faults.map(({ sentence }) => sentence).join('\n');
};

describe('the slides of a talk', () => {
  test('are added, moved, renamed, replaced and taken out, each with an id of its own', () => {
    const three = talkOf('A', 'B', 'B');
    expect(new Set(slidesOf(three).map(({ id }) => id)).size).toBe(3);
    const [a, b, c] = slidesOf(three).map(({ id }) => id) as [string, string, string];
    expect(titles(moveSlide(three, c, -2))).toEqual(['B', 'A', 'B']);
    expect(titles(addSlide(three, { ...plain, title: 'C' }, a))).toEqual(['A', 'C', 'B', 'B']);
    expect(titles(addSlide(three, { ...plain, title: 'C' }, c))).toEqual(['A', 'B', 'B', 'C']);
    expect(titles(addSlide(three, { ...plain, title: 'C' }, 'gone'))).toEqual(['A', 'B', 'B', 'C']);
    expect(slidesOf(moveSlide(three, a, 9)).at(-1)?.id).toBe(a);
    expect(moveSlide(three, a, -1)).toBe(three);
    expect(titles(updateSlide(three, b, { title: 'Middle' }))).toEqual(['A', 'Middle', 'B']);
    const seen = { view: 'top', fuel: 0.3, layers: [], selectedId: 'pack' } as const;
    const replaced = slidesOf(
      replaceSeen(updateSlide(three, b, { note: 'Say so', looking: ['cut'] }), b, seen),
    )[1];
    expect(replaced).toEqual({ ...plain, ...seen, id: b, title: 'B', note: 'Say so', figures: ['mass'] });
    expect(titles(removeSlide(three, b))).toEqual(['A', 'B']);
    const none = [a, b, c].reduce(removeSlide, three);
    expect(none).toEqual(bare);
    expect(Object.keys(none)).not.toContain('talk');
  });

  test('go into the file and come back, and an old file has none', () => {
    const kept = {
      ...plain,
      note: 'Two lines,\nspoken.',
      eye: { atMm: [300, 0, 20], fromMm: [-900, -1200, 700], wideMm: 900, highMm: 500 },
      attitude: { pitchDeg: 30, rollDeg: 0, forwardG: -0.5 },
      positions: [{ of: 'undercarriage', in: 'up' }],
      looking: ['xray', 'quiet'],
      burn: { to: 0, seconds: 8 },
      against: { as: 'ghost', name: 'Before', ...stateToKeep({ aircraft: bare, positions: {}, fuel: 0.5 }) },
    } as const satisfies Omit<Slide, 'id'>;
    const aircraft = addSlide(bare, kept);
    expect(aircraftFaults(aircraft)).toEqual([]);
    const back = parseAircraft(writeAircraft(aircraft));
    expect(back).toEqual({ ok: true, aircraft });
    expect(slidesOf(demo('sandmartin'))).toEqual([]);
  });

  test('a burn that would fill the tanks is told', () => {
    const slide = { id: 'a', ...plain, fuel: 0.2, burn: { to: 0.5, seconds: 3 } };
    expect(shownSlide(bare, slide).missing.join()).toMatch(/more fuel than it begins with/);
    expect(shownSlide(bare, { ...slide, fuel: 0.6 }).missing).toEqual([]);
  });

  test('what is wrong in a file is told with its place', () => {
    const slide = { id: 'a', ...plain };
    expect(faultsOf([slide, slide])).toMatch(/talk.*that of another slide/s);
    expect(faultsOf([{ ...slide, view: 'below' }])).toMatch(/talk.*"free" or "side" or "top" or "front"/s);
    expect(faultsOf([{ ...slide, fuel: 1.2 }])).toMatch(/0 to 1/);
    expect(faultsOf([{ ...slide, burn: { to: 0, seconds: 0 } }])).toMatch(/1 to 120 s/);
    expect(faultsOf([{ ...slide, titel: 'x', title: undefined }])).not.toBe('');
    expect(faultsOf([{ ...slide, against: { as: 'under', name: 'x', fuel: 1 } }])).toMatch(/ghost/);
    expect(faultsOf({})).toMatch(/Expected a list|expected a list/);
    const many = Array.from({ length: mostSlides + 1 }, (_, at) => ({ ...slide, id: `s${at}` }));
    expect(faultsOf(many)).toMatch(/at most 60/);
    const full = many.slice(1).reduce((aircraft, { id: _, ...each }) => addSlide(aircraft, each), bare);
    expect(addSlide(full, plain)).toBe(full);
  });
});

describe('what a slide shows', () => {
  test('the aircraft as it is now, in the state that was bookmarked', () => {
    const fieldfare = demo('fieldfare');
    const slide = { id: 'a', ...plain, fuel: 0.25, positions: [{ of: 'undercarriage', in: 'up' }] };
    const { now, against, missing } = shownSlide(fieldfare, slide);
    expect(now).toEqual({ aircraft: fieldfare, positions: { undercarriage: 'up' }, fuel: 0.25 });
    expect([against, missing]).toEqual([null, []]);
  });

  test('another state: where things stood, and what they weighed', () => {
    const kept = stateToKeep({ aircraft: bare, positions: {}, fuel: 0.5 });
    const later = updatePart(bare, 'pack', { positionMm: [420, 0, 0], massG: 260 });
    const slide: Slide = { id: 'a', ...plain, against: { as: 'ghost', name: 'Before', ...kept } };
    const { now, against, missing } = shownSlide(later, slide);
    expect(now.aircraft.parts[0]?.positionMm).toEqual([420, 0, 0]);
    expect(against?.aircraft.parts).toEqual(bare.parts);
    expect(against?.fuel).toBe(0.5);
    expect(missing).toEqual([]);
  });

  test('what is gone is said, and the rest is shown', () => {
    const slide: Slide = {
      id: 'a',
      ...plain,
      selectedId: 'camera',
      variantId: 'winter',
      positions: [{ of: 'canopy', in: 'off' }],
      against: { as: 'beside', name: 'Before', ...stateToKeep({ aircraft: bare, positions: {}, fuel: 1 }) },
    };
    const { now, against, missing } = shownSlide(removeItem(bare, 'camera'), slide);
    expect(missing.join(' ')).toMatch(/“winter”.*“canopy”.*“camera”.*One thing/);
    expect(missing).toHaveLength(4);
    expect(now.positions).toEqual({});
    expect(against?.aircraft.parts.map(({ id }) => id)).toEqual(['pack']);
  });

  test('a variant that is talked about is shown, whichever stands on the bench; one that is gone is named', () => {
    const two = addVariant(bare, 'Aft');
    const moved = settled(two, updatePart(two, 'pack', { positionMm: [500, 0, 0] }), 'this');
    const aft = moved.variants?.chosenId ?? '';
    const talked = addSlide(moved, { ...plain, variantId: aft });
    const other = chooseVariant(talked, moved.variants?.list[0]?.id ?? '');
    expect(other.parts[0]?.positionMm).toEqual([300, 0, 0]);
    // The talk is that of the aircraft, not of one variant.
    expect(slidesOf(other)).toEqual(slidesOf(talked));
    expect(shownSlide(other, first(other)).now.aircraft.parts[0]?.positionMm).toEqual([500, 0, 0]);
    const { missing } = shownSlide(removeVariant(other, aft), first(other));
    expect(missing).toEqual([`The variant of this slide (“${aft}”) is no longer there.`]);
  });

  test('a burn goes evenly from the slide’s fuel to its end, and the slide stays until then', () => {
    const slide = { fuel: 0.8, burn: { to: 0.2, seconds: 6 } };
    expect(fuelAt(slide, 0)).toBe(0.8);
    expect(fuelAt(slide, 1e6)).toBeCloseTo(0.2, 12);
    const begins = stayMs(slide) - 1500 - 6000;
    expect(fuelAt(slide, begins)).toBe(0.8);
    expect(fuelAt(slide, begins + 3000)).toBeCloseTo(0.5, 9);
    expect(fuelAt({ fuel: 0.4 }, 5000)).toBe(0.4);
    // At its end it is exactly there: nothing waits for a last bit.
    expect(fuelAt({ fuel: 0.7, burn: { to: 0.1, seconds: 3 } }, 1e6)).toBe(0.1);
    // From less than it ends with, nothing burns and nothing is filled up.
    expect(fuelAt({ fuel: 0, burn: { to: 0.5, seconds: 3 } }, 1e6)).toBe(0);
  });
});

test('no sequence of edits makes a talk that its file does not hold', () => {
  const random = randomFrom(seed);
  const pick = <T>(list: readonly T[]): T => list[Math.floor(random() * list.length)] as T;
  let aircraft = demo('whimbrel');
  for (let step = 0; step < 120; step += 1) {
    const ids = slidesOf(aircraft).map(({ id }) => id);
    const id = ids.length > 0 ? pick(ids) : 'none';
    const variantId = pick(aircraft.variants?.list ?? [])?.id;
    const edits: readonly (() => Aircraft)[] = [
      () =>
        addSlide(aircraft, { ...plain, title: pick(['A', 'ß', '3']), ...(variantId && { variantId }) }, id),
      () => moveSlide(aircraft, id, pick([-3, -1, 1, 2])),
      () => removeSlide(aircraft, id),
      () =>
        updateSlide(aircraft, id, {
          against: {
            as: 'beside',
            name: 'Then',
            ...stateToKeep({ aircraft, positions: {}, fuel: random() }),
          },
        }),
      () =>
        updateSlide(aircraft, id, { burn: pick([undefined, { to: random(), seconds: 1 + random() * 100 }]) }),
      () => removeItem(aircraft, pick(aircraft.parts)?.id ?? 'none'),
      () => (variantId ? chooseVariant(aircraft, variantId) : aircraft),
    ];
    aircraft = (step < 30 ? edits[0] : pick(edits))?.() ?? aircraft;
    for (const slide of slidesOf(aircraft)) shownSlide(aircraft, slide);
  }
  expect(slidesOf(aircraft).length).toBeGreaterThan(0);
  expect(parseAircraft(writeAircraft(aircraft))).toEqual({ ok: true, aircraft });
});
