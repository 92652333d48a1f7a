import { expect, it } from 'vitest';
import { sayIn } from '../../../src/commands/say';
import { LEVEL } from '../../../src/model/balance/balance';
import type { Aircraft, Part } from '../../../src/model/document/types';
import { judgeFully } from '../../../src/model/judgement/judgeFully';
import { compareSeverity } from '../../../src/model/judgement/types';
import { withPower } from '../../../src/model/judgement/withPower';
import { headAndCause } from '../../../src/model/words/headline';
import { aircraftOf, boxPart } from '../aircraft';

/** The CG at station 100, and a servo that gets 8.4 V: too much for `mostV` of 6, right for one of 9. */
function servoOn(
  mostV: number,
  [forwardMm, aftMm]: readonly [number, number],
  more: Partial<Aircraft> = {},
): Aircraft {
  const at = (id: string, stationMm: number, power: NonNullable<Part['power']>): Part => ({
    ...boxPart(id, 100, [stationMm, 0, 0]),
    power,
  });
  return {
    ...aircraftOf(
      [],
      [
        at('pack', 40, { pack: { chemistry: 'lipo', cells: 2, capacityMah: 2000 } }),
        at('servo', 160, {
          use: { kind: 'servo', minV: 4.8, maxV: mostV, meanA: 0.2, peakA: 1 },
          fedBy: [{ from: 'pack' }],
        }),
      ],
    ),
    targetBand: { by: 'station', forwardMm, aftMm },
    ...more,
  };
}

const judged = (aircraft: Aircraft) =>
  withPower(aircraft, judgeFully(aircraft, { down: LEVEL, estimate: null }));
const headline = (aircraft: Aircraft) =>
  headAndCause(aircraft, judged(aircraft), sayIn('metric', null)).headline;

it('a fault of the wiring says nothing of the band that is not so', () => {
  expect(headline(servoOn(6, [50, 150]))).toBe('In the band, but the wiring does not hold: 1 fault');
  // 5 mm ahead of a band of 60 is slight, so the wiring is worse; but it is not in the band.
  expect(headline(servoOn(6, [105, 165]))).toBe('Nose-heavy, and the wiring does not hold: 1 fault');
  const unweighed = servoOn(6, [50, 150]);
  const [pack, servo] = unweighed.parts as [Part, Part];
  expect(headline({ ...unweighed, parts: [pack, { ...servo, massFrom: 'unknown' }] })).toBe(
    'Not all masses are known, and the wiring does not hold: 1 fault',
  );
});

it('never stands before a balance that is as bad or worse', () => {
  expect(headline(servoOn(6, [0, 90]))).toMatch(/^Do not fly: tail-heavy/);
  expect(headline(servoOn(6, [150, 200]))).toMatch(/^Nose-heavy by 50/);
});

it('an unstated flight is no finding', () => {
  const aircraft = servoOn(9, [50, 150]);
  expect(judged(aircraft).findings.some(({ kind }) => kind === 'power')).toBe(false);
  expect(judged(aircraft).severity).toBe(judgeFully(aircraft, { down: LEVEL, estimate: null }).severity);
});

it('what is found stands by how bad it is, the wiring among the rest', () => {
  for (const aircraft of [servoOn(6, [0, 90]), servoOn(6, [105, 165]), servoOn(6, [50, 150])]) {
    const severities = judged(aircraft).findings.map(({ severity }) => severity);
    expect(severities).toEqual(severities.toSorted(compareSeverity));
    expect(judged(aircraft).findings.some(({ kind }) => kind === 'power')).toBe(true);
  }
});
