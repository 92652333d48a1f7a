import type { Aircraft, Part, TankItem } from '../../src/model/document/types';
import { changeStability } from '../../src/model/stability/stability';
import { type DemoName, partOf } from './demoAircraft';

/** A demo with a fault planted in it, and what must be said of it. */
export interface Broken {
  readonly demo: DemoName;
  readonly fault: string;
  readonly plant: (aircraft: Aircraft) => Aircraft;
  /** What the fault adds to the sum in every load state and fuel state: g, and g·mm about the datum along x and y. */
  readonly adds?: (aircraft: Aircraft) => {
    readonly massG: number;
    readonly xGmm: number;
    readonly yGmm: number;
  };
  readonly tone: 'danger' | 'bad' | 'caution' | 'unknown' | 'good';
  readonly headline: RegExp;
  readonly cause?: RegExp;
  /** What the label of the remedy must read like; null: none must be offered. */
  readonly fix?: RegExp | null;
  readonly facts?: Readonly<Record<string, RegExp>>;
}

type Change<T> = (item: T) => Partial<T>;
const part =
  (id: string, change: Change<Part>) =>
  (aircraft: Aircraft): Aircraft => ({
    ...aircraft,
    parts: aircraft.parts.map((one) => (one.id === id ? { ...one, ...change(one) } : one)),
  });
const tank =
  (id: string, change: Change<TankItem>) =>
  (aircraft: Aircraft): Aircraft => ({
    ...aircraft,
    tanks: aircraft.tanks.map((one) => (one.id === id ? { ...one, ...change(one) } : one)),
  });
const shift =
  (id: string, x: number, y = 0, z = 0) =>
  (aircraft: Aircraft): Aircraft =>
    part(id, ({ positionMm: p }) => ({ positionMm: [p[0] + x, p[1] + y, p[2] + z] }))(aircraft);
const mass = (id: string, massG: number) => part(id, () => ({ massG }));
const gone =
  (id: string) =>
  (aircraft: Aircraft): Aircraft => ({
    ...aircraft,
    parts: aircraft.parts.filter((one) => one.id !== id),
    leads: (aircraft.leads ?? []).filter(({ from, to }) => from !== id && to !== id),
  });
const both =
  (...plants: readonly ((aircraft: Aircraft) => Aircraft)[]) =>
  (aircraft: Aircraft): Aircraft =>
    plants.reduce((now, plant) => plant(now), aircraft);
const band =
  (forwardMm: number, aftMm: number) =>
  (aircraft: Aircraft): Aircraft => ({ ...aircraft, targetBand: { by: 'station', forwardMm, aftMm } });
const level = (aircraft: Aircraft): Aircraft => ({ ...aircraft, lateralToleranceMm: 0 });
const unbanded = (aircraft: Aircraft): Aircraft => ({ ...aircraft, targetBand: null });
const wanted = (minPct: number, maxPct: number) => (aircraft: Aircraft) =>
  changeStability(aircraft, { marginRange: { minPct, maxPct } });
const lead =
  (massG: number, x: number, y: number, z: number, locked = true) =>
  (aircraft: Aircraft): Aircraft => ({
    ...aircraft,
    parts: [
      ...aircraft.parts,
      {
        id: 'planted',
        name: 'Planted lead',
        role: 'ballast',
        shape: { kind: 'box', lengthMm: 10, widthMm: 10, heightMm: 10 },
        massG,
        positionMm: [x, y, z],
        yawDeg: 0,
        pitchDeg: 0,
        rollDeg: 0,
        locked,
      },
    ],
  });
const locked = (aircraft: Aircraft): Aircraft => ({
  ...aircraft,
  parts: aircraft.parts.map((one) => ({ ...one, locked: true })),
});

/** A part that comes (+) or goes (−) as heavy as it is, where it is. */
const weight = (id: string, byG: (massG: number) => number) => (aircraft: Aircraft) => {
  const { massG, positionMm } = partOf(aircraft, id);
  const addedG = byG(massG);
  return { massG: addedG, xGmm: addedG * positionMm[0], yGmm: addedG * positionMm[1] };
};
const moment =
  (ids: readonly string[], x: number, y = 0) =>
  (aircraft: Aircraft) => {
    const massG = ids.reduce((sum, id) => sum + partOf(aircraft, id).massG, 0);
    return { massG: 0, xGmm: massG * x, yGmm: massG * y };
  };
const TO_MASS = (massG: number) => (was: number) => massG - was;
const GONE = (was: number) => -was;

const TAIL = /^Do not fly: tail-heavy by /;
const NOSE = /^Nose-heavy by /;

/**
 * Each row was read as a person would: what does this fault do to the aircraft, and is that what is said? Figures are held
 * against sums of mass × arm in the test.
 */
export const brokenDemos: readonly Broken[] = [
  // Sandmartin: band 749 to 772 mm; its camera sits to the right, which is its lesson.
  {
    demo: 'sandmartin',
    fault: 'as it comes',
    plant: (aircraft) => aircraft,
    tone: 'caution',
    headline: /^In the band, but the right wing is heavy$/,
    cause: /^The CG is 1\.\d mm to the right/,
    fix: /^Move “Camera” \d+ mm left$/,
    facts: { fit: /^everything fits/, worst: /video sender off/, travel: /aft/ },
  },
  {
    demo: 'sandmartin',
    fault: 'nobody minds the camera’s side',
    plant: level,
    tone: 'good',
    headline: /^In the band, full to dry$/,
    fix: null,
    facts: { sideways: /not judged; good/, margin: /^8 % MAC, an estimate; at least 8 %/ },
  },
  {
    demo: 'sandmartin',
    fault: 'far too much nose ballast',
    plant: mass('nose-ballast', 444),
    adds: weight('nose-ballast', TO_MASS(444)),
    tone: 'bad',
    headline: NOSE,
    fix: /^Reduce “Nose ballast” from 444 g to \d{2} g$/,
  },
  {
    demo: 'sandmartin',
    fault: 'the flight pack 150 mm too far aft',
    plant: shift('flight-pack', 150),
    adds: moment(['flight-pack'], 150),
    tone: 'danger',
    headline: TAIL,
    cause: /the aft limit is 772\.0 mm\.$/,
    fix: /^Move /,
  },
  {
    demo: 'sandmartin',
    fault: 'the camera left at home',
    plant: gone('camera'),
    adds: weight('camera', GONE),
    tone: 'danger',
    headline: TAIL,
    facts: { 'cg-full': /aft of the band; danger/, 'cg-dry': /aft of the band; danger/ },
  },
  {
    demo: 'sandmartin',
    fault: 'a camera of twice the mass',
    plant: mass('camera', 1280),
    adds: weight('camera', TO_MASS(1280)),
    tone: 'bad',
    headline: NOSE,
  },
  {
    demo: 'sandmartin',
    fault: 'a pound of lead in the tail of a boom',
    plant: lead(450, 1700, 300, 80),
    adds: () => ({ massG: 450, xGmm: 450 * 1700, yGmm: 450 * 300 }),
    tone: 'danger',
    headline: TAIL,
    facts: { sideways: /right;.*; bad/, margin: /danger|bad/ },
  },
  {
    demo: 'sandmartin',
    fault: 'the receiver inside the flight pack',
    plant: both(
      level,
      part('receiver', () => ({ positionMm: [283, -30, -30] })),
    ),
    tone: 'bad',
    headline: /^In the band, but does not fit: .*clash/,
    cause: /“(Receiver|Flight pack)”/,
    fix: /^Move “(Receiver|Flight pack)” \d+ mm/,
    facts: { fit: /clash.*; bad/ },
  },
  {
    demo: 'sandmartin',
    fault: 'the telemetry sender through the floor of the pod',
    plant: both(level, shift('telemetry', 0, 0, -75)),
    tone: 'bad',
    headline: /through the skin/,
    cause: /“Telemetry sender” reaches \d+(\.\d)? mm out of/,
    fix: /^Move “Telemetry sender” \d+ mm up$/,
  },
  {
    demo: 'sandmartin',
    fault: 'the receiver so far aft that its lead does not reach',
    plant: both(
      level,
      part('receiver', () => ({ positionMm: [540 - 60, 0, 40] })),
    ),
    tone: 'bad',
    headline: /lead too short/,
    facts: { fit: /1 lead too short/ },
  },
  {
    demo: 'sandmartin',
    fault: 'an aft limit behind the neutral point',
    plant: both(level, band(749, 812)),
    tone: 'caution',
    headline: /^In the band, but do not trust this band$/,
    cause: /behind the estimated neutral point/,
    fix: null,
  },
  {
    demo: 'sandmartin',
    fault: 'lead in the tail and a band that allows it',
    plant: both(level, band(780, 860), lead(450, 1700, 0, 80)),
    adds: () => ({ massG: 450, xGmm: 450 * 1700, yGmm: 0 }),
    tone: 'danger',
    headline: /^Do not fly: CG \d+(\.\d)? mm behind the estimated neutral point/,
    facts: { margin: /^−\d+ % MAC.*; danger/ },
  },
  {
    demo: 'sandmartin',
    fault: 'no band at all',
    plant: both(level, unbanded),
    tone: 'unknown',
    headline: /^The CG is at station 75\d mm$/,
    cause: /no target band/,
    fix: null,
    facts: { band: /^none/, margin: /an estimate.*; good/ },
  },
  {
    demo: 'sandmartin',
    fault: 'no band, and hardly any margin',
    plant: both(level, unbanded, lead(140, 1900, 0, 80)),
    adds: () => ({ massG: 140, xGmm: 140 * 1900, yGmm: 0 }),
    tone: 'bad',
    headline: /^Hardly stable: margin [01] % MAC \(estimate\)/,
    cause: /^At least 8 % is usual/,
  },
  {
    demo: 'sandmartin',
    fault: 'a margin of 11 to 15 % wanted beside the stated limits',
    plant: both(level, wanted(11, 15)),
    tone: 'caution',
    headline: /^In the band, but margin 8 % MAC \(estimate\)/,
    cause: /^At least 11 % is wanted\.$/,
  },
  {
    demo: 'sandmartin',
    fault: 'a margin of 4 to 8 % wanted beside the stated limits',
    plant: both(level, wanted(4, 8)),
    tone: 'caution',
    headline: /margin 1[34] % MAC \(estimate\)/,
    cause: /^At most 8 % is wanted\.$/,
  },
  {
    demo: 'sandmartin',
    fault: 'a margin of 8 to 15 % wanted and no limits stated',
    plant: both(level, unbanded, wanted(8, 15)),
    tone: 'good',
    headline: /^In the estimated band, full to dry$/,
    facts: { band: /an estimate/ },
  },
  {
    demo: 'sandmartin',
    fault: 'a video sender of 700 g that can be off',
    plant: both(level, mass('video-sender', 700)),
    tone: 'bad',
    headline: NOSE,
  },
  {
    demo: 'sandmartin',
    fault: 'a mass that no sum can hold',
    plant: mass('camera', 1e308),
    tone: 'bad',
    headline: /^The balance cannot be worked out$/,
    cause: /Look at “Camera” first/,
    fix: null,
  },

  // Fieldfare: band 1100 to 1123 mm, wheels that swing up, kerosene.
  {
    demo: 'fieldfare',
    fault: 'as it comes',
    plant: (aircraft) => aircraft,
    tone: 'caution',
    headline: /^Nose-heavy by 2\.\d mm, tanks full, wheels down$/,
    cause: /the forward limit is 1100\.0 mm/,
    fix: /^(Move|Add)/,
  },
  {
    demo: 'fieldfare',
    fault: 'a turbine 300 g heavier',
    plant: mass('turbine', 1590),
    adds: weight('turbine', TO_MASS(1590)),
    tone: 'danger',
    headline: /^Do not fly: tail-heavy by .*tanks dry, wheels up$/,
  },
  {
    demo: 'fieldfare',
    fault: 'lead at the very tail, not locked',
    plant: lead(200, 1840, 0, 20, false),
    adds: () => ({ massG: 200, xGmm: 200 * 1840, yGmm: 0 }),
    tone: 'danger',
    headline: TAIL,
    fix: /^(Reduce|Take out) “Planted lead”/,
  },
  {
    demo: 'fieldfare',
    fault: 'one saddle tank not filled',
    plant: both(
      band(1080, 1130),
      tank('saddle-left', () => ({ startMl: 20 })),
    ),
    tone: 'caution',
    headline: /the right wing is heavy$/,
    facts: { sideways: /^1\d mm right; at most 3\.0 mm; caution/ },
  },
  {
    demo: 'fieldfare',
    fault: 'a receiver pack in the other one’s place',
    plant: both(
      band(1090, 1123),
      part('receiver-pack-1', () => ({ positionMm: [215, -15, -24] })),
    ),
    tone: 'bad',
    headline: /does not fit: 1 clash$/,
    cause: /“Receiver pack [12]”/,
    fix: /^Move “Receiver pack [12]” \d+ mm/,
  },
  {
    demo: 'fieldfare',
    fault: 'the stabiliser above the hull',
    plant: both(band(1090, 1123), shift('gyro', 0, 0, 220)),
    tone: 'caution',
    headline: /outside the hull$/,
    cause: /“Stabiliser” stands in no hull and no wing/,
  },
  {
    demo: 'fieldfare',
    fault: 'the receiver beside the turbine’s controller',
    plant: both(
      band(1090, 1123),
      part('receiver', () => ({ positionMm: [540, 30, -32] })),
    ),
    tone: 'caution',
    headline: /pair too close$/,
    cause: /too close to/,
    fix: /^Move “(Receiver|ECU)”/,
  },
  {
    demo: 'fieldfare',
    fault: 'a pack forgotten',
    plant: gone('ecu-pack'),
    adds: weight('ecu-pack', GONE),
    tone: 'danger',
    headline: TAIL,
  },
  {
    demo: 'fieldfare',
    fault: 'everything screwed down',
    plant: locked,
    tone: 'caution',
    headline: NOSE,
    fix: /^Add \d+ g of ballast at station 1[5-8]\d\d mm$/,
  },

  // Whimbrel: band 21 to 25 % MAC, 12 mm; no tail, nothing burns.
  {
    demo: 'whimbrel',
    fault: 'as it comes',
    plant: (aircraft) => aircraft,
    tone: 'caution',
    headline: /^In the band, but the right wing is heavy$/,
    fix: /^Move “Camera” \d+ mm left$/,
    facts: { band: /stated in % MAC/, margin: /^[78] % MAC, an estimate; at least 3 %/ },
  },
  {
    demo: 'whimbrel',
    fault: 'both packs 30 mm too far forward',
    plant: both(shift('flight-pack-right', -30), shift('flight-pack-left', -30)),
    adds: moment(['flight-pack-right', 'flight-pack-left'], -30),
    tone: 'bad',
    headline: NOSE,
    fix: /^Move “Flight pack, right” and “Flight pack, left” \d+ mm aft$/,
  },
  {
    demo: 'whimbrel',
    fault: 'one pack left at home',
    plant: gone('flight-pack-left'),
    adds: weight('flight-pack-left', GONE),
    // The packs lie ahead of the CG.
    tone: 'danger',
    headline: TAIL,
    facts: { sideways: /right; .*; bad/ },
  },
  {
    demo: 'whimbrel',
    fault: 'a motor of twice the mass',
    plant: mass('motor', 452),
    adds: weight('motor', TO_MASS(452)),
    tone: 'danger',
    headline: TAIL,
    facts: { margin: /an estimate/ },
  },
  {
    demo: 'whimbrel',
    fault: 'no camera',
    plant: gone('camera'),
    adds: weight('camera', GONE),
    tone: 'danger',
    headline: TAIL,
  },
  {
    demo: 'whimbrel',
    fault: 'the autopilot in the speed controller',
    plant: both(
      level,
      part('autopilot', () => ({ positionMm: [432, 10, 14] })),
    ),
    tone: 'bad',
    headline: /clash/,
    fix: /^Move “(Autopilot|Speed controller)”/,
  },
  {
    demo: 'whimbrel',
    fault: 'a band of 30 to 34 % MAC',
    plant: (aircraft) => ({
      ...aircraft,
      targetBand: { by: 'mac', surfaceId: 'wing', forwardPct: 30, aftPct: 34 },
    }),
    tone: 'bad',
    headline: NOSE,
    fix: null,
  },

  // Corncrake: band 33 to 39.5 % MAC; a wheel that swings up, water that is dropped.
  {
    demo: 'corncrake',
    fault: 'as it comes',
    plant: (aircraft) => aircraft,
    tone: 'danger',
    headline: /^Do not fly: tail-heavy by 1\.\d mm, tanks full, wheels down$/,
    fix: /^(Move|Add)/,
  },
  {
    demo: 'corncrake',
    fault: 'too much in the nose',
    plant: mass('nose-ballast', 444),
    adds: weight('nose-ballast', TO_MASS(444)),
    tone: 'bad',
    headline: NOSE,
    fix: /^Reduce “Nose ballast” from 444 g to (29|30)\d g$/,
  },
  {
    demo: 'corncrake',
    fault: 'no ballast in the nose',
    plant: gone('nose-ballast'),
    adds: weight('nose-ballast', GONE),
    tone: 'danger',
    headline: TAIL,
    facts: { margin: /an estimate/ },
  },
  {
    demo: 'corncrake',
    fault: 'water in the left wing only',
    plant: both(
      mass('nose-ballast', 300),
      tank('wing-tank-right', () => ({ startMl: 0 })),
    ),
    tone: 'bad',
    headline: /the left wing is heavy$/,
    cause: /left, tanks full, wheels down/,
  },
  {
    demo: 'corncrake',
    fault: 'an elevator servo of 124 g',
    plant: mass('elevator-servo', 124),
    adds: weight('elevator-servo', TO_MASS(124)),
    tone: 'danger',
    headline: TAIL,
  },
  {
    demo: 'corncrake',
    fault: 'everything screwed down',
    plant: locked,
    tone: 'danger',
    headline: TAIL,
    fix: /^Add \d+ g of ballast at station −\d+ mm$/,
  },
];
