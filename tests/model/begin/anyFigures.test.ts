import { expect, test } from 'vitest';
import { arrangementIds } from '../../../src/model/begin/arrangements';
import {
  type Beginning,
  beginAircraft,
  motorsOf,
  readyToFlyG,
  roomFault,
} from '../../../src/model/begin/beginAircraft';
import { constructions } from '../../../src/model/begin/proportions';
import { tapeFaults, tapeFields, wholeTape } from '../../../src/model/begin/tape';
import { wholeFit } from '../../../src/model/fit/wholeFit';
import { readAircraft } from '../../../src/model/reading/read';
import { randomFrom } from '../../randomFrom';
import { seed } from '../../seed';

const CASES = 26;

/** Figures that nobody checked against each other: each from half of its proportion to half as much again, or left out. */
function anyWish(random: () => number, arrangement: Beginning['arrangement']): Beginning {
  const pick = <T>(list: readonly T[]): T => list[Math.floor(random() * list.length)]!;
  const motor = pick(motorsOf(arrangement));
  const spanMm = 700 + 3000 * random();
  const usual = wholeTape(arrangement, { spanMm }, motor);
  const others = tapeFields(arrangement).filter((field) => field !== 'spanMm' && random() < 0.5);
  const typed = {
    spanMm,
    ...Object.fromEntries(others.map((field) => [field, usual[field] * (0.5 + random())])),
  };
  const wish = {
    arrangement,
    typed,
    construction: pick(constructions),
    motor,
    massG: null,
    kit: null,
    band: null,
  };
  if (Object.keys(tapeFaults(arrangement, typed, motor)).length > 0) return { ...wish, typed: { spanMm } };
  const weighed = random() < 0.5 ? wish : { ...wish, massG: readyToFlyG(wish) * (0.5 + 1.5 * random()) };
  return roomFault(weighed) ? { ...wish, typed: { spanMm } } : weighed;
}

test('whatever is typed and not refused makes an aircraft that reads and in which nothing clashes', () => {
  const random = randomFrom(seed);
  for (let index = 0; index < CASES; index += 1) {
    const wish = anyWish(random, arrangementIds[index % arrangementIds.length]!);
    const aircraft = beginAircraft(wish);
    const told = JSON.stringify(wish);
    expect(readAircraft(structuredClone(aircraft)), told).toMatchObject({ ok: true });
    expect(wholeFit(aircraft).problems, told).toEqual([]);
  }
});

test('a body that is too short for what goes in is refused in a sentence', () => {
  const short: Beginning = {
    arrangement: 'flying-wing',
    typed: { spanMm: 2900, lengthMm: 500, wingAtMm: 100 },
    construction: 'glass',
    motor: 'electric',
    massG: 7000,
    kit: null,
    band: null,
  };
  expect(roomFault(short)).toMatch(/^What goes in the body needs \d+ mm .* it has 500 mm\.$/);
  expect(roomFault({ ...short, typed: { spanMm: 2900 }, massG: null })).toBeNull();
});
