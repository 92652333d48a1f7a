import { expect, test } from 'vitest';
import { arrangementIds } from '../../../src/model/begin/arrangements';
import { type Beginning, beginAircraft, motorsOf, readyToFlyG } from '../../../src/model/begin/beginAircraft';
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
  return random() < 0.5 ? wish : { ...wish, massG: readyToFlyG(wish) * (0.5 + 1.5 * random()) };
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
