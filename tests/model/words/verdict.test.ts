import { describe, expect, test } from 'vitest';
import { sayIn } from '../../../src/commands/say';
import { advise } from '../../../src/model/advice/advise';
import { LEVEL } from '../../../src/model/balance/balance';
import type { Aircraft, Part } from '../../../src/model/document/types';
import { judge } from '../../../src/model/judgement/judge';
import type { Known } from '../../../src/model/judgement/types';
import { changeStability } from '../../../src/model/stability/stability';
import { lengthDown, lengthUp } from '../../../src/model/words/say';
import { ballastG, verdict } from '../../../src/model/words/verdict';
import { demo } from '../../demo/demoAircraft';
import { aircraftOf, boxPart, weightlessWing } from '../aircraft';
import { estimateAt } from '../judgement/estimate';

const say = sayIn('metric', null);
const plain = (text: string) => text.replace(/\u202f/g, ' ');

/** All the mass at one station. */
const at = (stationMm: number, buttlineMm = 0): Aircraft => ({
  ...aircraftOf([], [boxPart('pack', 1000, [stationMm, buttlineMm, 0])]),
  lateralToleranceMm: 2,
});
const banded = (aircraft: Aircraft, forwardMm: number, aftMm: number): Aircraft => ({
  ...aircraft,
  targetBand: { by: 'station', forwardMm, aftMm },
});

const CHECKED: Known = {
  down: LEVEL,
  estimate: null,
  loads: { status: 'found', envelope: null },
  fit: [],
  certainty: null,
};
function said(aircraft: Aircraft, known: Partial<Known> = {}, checking = false) {
  const { headline, cause, ...rest } = verdict(aircraft, judge(aircraft, { ...CHECKED, ...known }), say, {
    checking,
  });
  const facts = Object.fromEntries(
    rest.facts.map(({ key, value, note, tone }) => [key, plain(`${value}; ${note}; ${tone}`)]),
  );
  return { ...rest, headline: plain(headline), cause: plain(cause), facts };
}

describe('what is said to be out is never less than it is, what is left never more', () => {
  test.each([
    [0.01, '0.1 mm', '0.0 mm'],
    [1.61, '1.7 mm', '1.6 mm'],
    [9.95, '10 mm', '9.9 mm'],
    [12.0, '12 mm', '12 mm'],
    [12.2, '13 mm', '12 mm'],
  ])('%d mm', (mm, up, down) => {
    expect([lengthUp(mm, say), lengthDown(mm, say)].map(plain)).toEqual([up, down]);
  });

  test('in inches too: 1 mm is 0.0394 in', () => {
    const inches = sayIn('inch-ounce', null);
    expect([lengthUp(1, inches), lengthDown(1, inches)].map(plain)).toEqual(['0.04 in', '0.03 in']);
  });
});

test('tail-heavy says first of all not to fly, and why', () => {
  expect(said(banded(at(552), 500, 540))).toMatchObject({
    tone: 'danger',
    headline: 'Do not fly: tail-heavy by 12 mm',
    cause: 'CG at 552.0 mm, aft limit 540.0 mm.',
  });
});

/** A switch that takes a part off. */
const offSwitch = (id: string, name: string) => ({
  id: `${id}-aboard`,
  name,
  positions: [
    { id: 'on', name: 'on' },
    { id: 'off', name: 'off', without: [id] },
  ],
});

test('too far aft in one load state and too far forward in another: both are said, each by its own length', () => {
  // All aboard: (1000·500 + 3000·300)/4000 = 350; the camera off: 500.
  const aircraft: Aircraft = {
    ...aircraftOf([], [boxPart('pack', 1000, [500, 0, 0]), boxPart('camera', 3000, [300, 0, 0])]),
    switches: [offSwitch('camera', 'Camera')],
  };
  expect(said(banded(aircraft, 440, 460))).toMatchObject({
    tone: 'danger',
    headline: 'Do not fly: tail-heavy by 40 mm, camera off',
    cause: 'And nose-heavy by 90 mm: the CG travels farther than the band is long.',
  });
});

test('the load state farthest aft and the one farthest to a side are each named where they are spoken of', () => {
  // x and y: all (450, 10); camera off (483.3, 16.7); pod off (450, 0); both off (500, 0).
  const parts = [
    boxPart('pack', 1000, [500, 0, 0]),
    boxPart('camera', 1000, [400, 0, 0]),
    boxPart('pod', 500, [450, 50, 0]),
  ];
  const aircraft: Aircraft = {
    ...aircraftOf([], parts),
    switches: [offSwitch('camera', 'Camera'), offSwitch('pod', 'Pod')],
    lateralToleranceMm: 2,
  };
  expect(said(banded(aircraft, 440, 490)).headline).toBe(
    'Do not fly: tail-heavy by 10 mm, camera off, pod off',
  );
  const { headline, cause, facts } = said(banded(aircraft, 440, 510));
  expect(headline).toBe('In the band, but the right wing is heavy');
  expect(cause).toMatch(/^CG 17 mm right, camera off; at most 2\.?0? mm\.$/);
  expect(facts.worst).toMatch(/^camera off, pod off; 10 mm short of the aft limit; good$/);
});

test('the travel: how far, and which way, by the tank that empties', () => {
  // 1000 g at 500 and 740 g of fuel, 1000 ml at 0.74 g/ml, in a tank 200 aft of it or ahead: full 500 ± 85.06, dry 500.
  const withTank = (stationMm: number): Aircraft => ({
    ...at(500),
    fuel: {
      kind: 'petrol',
      name: 'Petrol',
      densityGPerMl: 0.74,
      use: 'burn',
      share: 'volume',
      flow: { idleMlPerMin: 10, fullMlPerMin: 20 },
      profile: { name: 'Flight', phases: [{ name: 'Flight', durationS: 600, throttlePct: 50 }] },
      reservePct: 0,
    },
    tanks: [
      {
        id: 'tank',
        name: 'Tank',
        shape: { kind: 'box', lengthMm: 100, widthMm: 100, heightMm: 100 },
        positionMm: [stationMm, 0, 0],
        ...{ yawDeg: 0, pitchDeg: 0, rollDeg: 0 },
        emptyMassG: 0,
        startMl: null,
        unusableMl: 0,
        feeds: 'outlet',
        rank: 1,
      },
    ],
  });
  const aft = said(banded(withTank(700), 400, 600)).facts;
  expect(aft.travel).toBe('86 mm; forward; good');
  expect(aft['cg-full']).toBe('585.1 mm; 14 mm short of the aft limit; good');
  expect(aft['cg-dry']).toMatch(/^500\.0 mm; 100 mm (behind the forward|short of the aft) limit; good$/);
  expect(said(banded(withTank(300), 400, 600)).facts.travel).toBe('86 mm; aft; good');
  expect(said(banded(withTank(500), 400, 600)).facts.travel).toBe('none; ; good');
});

test('slightly nose-heavy is a caution, more is bad; never do not fly', () => {
  const slightly = said(banded(at(495), 500, 540));
  expect(slightly).toMatchObject({ tone: 'caution', headline: 'Nose-heavy by 5.0 mm' });
  expect(said(banded(at(480), 500, 540))).toMatchObject({ tone: 'bad', headline: 'Nose-heavy by 20 mm' });
});

describe('the estimated margin: MAC 200 mm, so 2 mm is 1 %', () => {
  test('is named an estimate and rounded down', () => {
    const { facts, tone } = said(banded(at(530), 520, 540), { estimate: estimateAt(549.9) });
    expect(facts.margin).toMatch(/^9 % MAC; at least 8 % is usual for this kind; good$/);
    expect(tone).toBe('good');
  });

  test.each([
    // 9.95 % less two standard deviations: of 6.1 mm 6.1 %, of 8.5 mm 8.5 %, of 12 mm 12 %.
    [6.1, /^9 ± 7 % MAC; at least 8 % is usual for this kind; good$/],
    [8.5, /^9 ± 9 % MAC; may be as little as 1 % MAC; at least 8 % .*; caution$/],
    [12, /^9 ± 12 % MAC; may be behind the neutral point; at least 8 % .*; caution$/],
  ])(
    'with its ±, a standard deviation of %d mm, and its tone by the safe side',
    (neutralPointSigmaMm, margin) => {
      const estimate = { ...estimateAt(549.9), neutralPointSigmaMm };
      expect(said(banded(at(530), 520, 540), { estimate }).facts.margin).toMatch(margin);
    },
  );

  test('behind the neutral point: do not fly, in the band or not', () => {
    const { tone, headline } = said(banded(at(530), 520, 560), { estimate: estimateAt(520) });
    expect([tone, headline]).toEqual(['danger', 'Do not fly: CG 10 mm behind the estimated neutral point']);
  });

  test('less than was wanted is said beside stated limits', () => {
    const aircraft = changeStability(banded(at(530), 520, 540), { marginRange: { minPct: 11, maxPct: 15 } });
    expect(said(aircraft, { estimate: estimateAt(548) })).toMatchObject({
      tone: 'caution',
      headline: 'In the band, but margin 9 % MAC (estimate)',
      cause: 'At least 11 % is wanted.',
    });
  });

  test('an estimate that is out of date is left out', () => {
    const stale = { estimate: estimateAt(510), estimateFresh: false };
    expect(said(banded(at(530), 520, 540), stale).headline).toBe('In the band');
    const wanted = changeStability(at(530), { marginRange: { minPct: 5, maxPct: 15 } });
    expect(said(wanted, { estimate: estimateAt(550), estimateFresh: false }).tone).toBe('unknown');
  });

  test('a band from the margin is called an estimate', () => {
    const wanted = changeStability(at(530), { marginRange: { minPct: 5, maxPct: 15 } });
    expect(said(wanted, { estimate: estimateAt(550) })).toMatchObject({
      tone: 'good',
      headline: 'In the estimated band',
    });
    // The band runs from 600 − 30 to 600 − 10, so the CG lies 40 mm ahead of it.
    expect(said(wanted, { estimate: estimateAt(600) }).headline).toBe(
      'Nose-heavy by 40 mm of the estimated band',
    );
  });

  test('a stated band behind the neutral point is not to be trusted', () => {
    expect(said(banded(at(520), 510, 562), { estimate: estimateAt(550) })).toMatchObject({
      tone: 'caution',
      headline: 'In the band, but do not trust this band',
      cause: 'Its aft limit is 12 mm behind the estimated neutral point.',
    });
  });
});

test('sideways: which wing, and by how much', () => {
  expect(said(banded(at(520, -3), 500, 540))).toMatchObject({
    tone: 'caution',
    headline: 'In the band, but the left wing is heavy',
    cause: 'CG 3.0 mm left; at most 2.0 mm.',
    facts: { sideways: '3.0 mm left; at most 2.0 mm; caution' },
  });
});

test('what is not checked yet is said, and is only called good while the check runs', () => {
  const aircraft = banded(at(520), 500, 540);
  const unchecked = said(aircraft, { fit: null });
  expect(unchecked).toMatchObject({ tone: 'unknown', facts: { fit: 'not checked yet; ; unknown' } });
  expect(said(aircraft, { fit: null }, true)).toMatchObject({ tone: 'good', headline: 'In the band' });
});

test('a margin, load states and a fit that are not checked are each said beside a CG in the band', () => {
  const winged = { ...banded(at(520), 500, 540), structure: [weightlessWing] };
  expect(said(winged, { estimating: 'failed' })).toMatchObject({
    tone: 'unknown',
    headline: 'In the band',
    cause: 'The margin is not checked.',
    facts: { margin: 'not known; not checked; unknown' },
  });
  expect(said(winged, { estimating: 'unfinished', fit: null }).cause).toBe(
    'The margin is not checked yet. The fit is not checked yet.',
  );
});

test('an empty bench asks for a mass, and one without a band for a band', () => {
  expect(said(aircraftOf([]))).toMatchObject({ tone: 'unknown', headline: /weighs anything/ });
  const { headline, cause, tone } = said(at(520));
  expect([headline, tone]).toEqual(['The CG is at station 520 mm', 'unknown']);
  expect(cause).toMatch(/no target band/);
});

test('the fix comes with what it brings about', () => {
  const aircraft = banded(
    { ...at(552), parts: [boxPart('engine', 900, [500, 0, 0]), { ...boxPart('pack', 100, [1000, 0, 0]) }] },
    500,
    540,
  );
  const advice = advise(aircraft, { down: LEVEL, estimate: null }, say);
  const { fix } = verdict(aircraft, advice.before, say, { advice });
  // (900·500 + 100·1000)/1000 = 550: forward by 10·1000/100 = 100 mm and a little.
  expect(plain(fix?.label ?? '')).toMatch(/^Move “(engine|pack)” \d+ mm forward$/);
  expect(fix?.consequence).toBe('Then: in the band.');
});

test('what burns nothing has one CG; with fuel aboard it has one full and one dry', () => {
  const labels = (aircraft: Aircraft) =>
    verdict(aircraft, judge(aircraft, CHECKED), say).facts.map(({ label }) => label);
  expect(labels(at(500)).filter((label) => label.startsWith('CG'))).toEqual(['CG']);
  const fuelled = demo('sandmartin');
  expect(labels(fuelled).filter((label) => label.startsWith('CG'))).toEqual(['CG full', 'CG dry']);
});

test('off centre is not judged where the file says that it does not matter', () => {
  const { facts } = said({ ...banded(at(500, 30), 490, 510), lateralToleranceMm: 0 });
  expect(facts.sideways).toBe('30 mm right; not judged; good');
});

test('dead weight is the parts that are ballast, and no others', () => {
  const [lead, more, pack] = [100, 20, 3000].map((g, i) => boxPart(`p${i}`, g, [0, 0, 0])) as [
    Part,
    Part,
    Part,
  ];
  const aircraft = aircraftOf([], [{ ...lead, role: 'ballast' }, { ...more, role: 'ballast' }, pack]);
  expect(ballastG(aircraft)).toBe(120);
});

test('the band is said by both its limits and how it came about', () => {
  const { facts } = said(banded(at(500), 490, 510));
  expect(facts.band).toMatch(/^490\.0–510\.0 mm; /);
});
