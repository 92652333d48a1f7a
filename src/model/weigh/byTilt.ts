import { standardUncertainty } from '../../engine/balance/uncertainty';
import type { Vec3 } from '../../engine/geometry/types';
import { massSum } from '../../engine/mass/massProperties';
import type { MassProperties } from '../../engine/mass/types';
import { lastPerObject } from '../../engine/memory/memory';
import { type Figure, type Refusal, refusal } from '../../engine/weigh/figure';
import {
  heightFromTilt,
  type RecommendedTilt,
  recommendedTilt,
  type TiltedHeight,
  type TiltSetup,
} from '../../engine/weigh/heightFromTilt';
import { netOf } from '../../engine/weigh/weighOnScales';
import type { WholeQuantity } from '../../engine/weigh/wholeResiduals';
import { type Balance, balanceAt, LEVEL } from '../balance/balance';
import { liquidStatesAt } from '../balance/liquidTable';
import type { Aircraft, WeighIn } from '../document/types';
import { wholeFigure } from './byStand';
import { measurementOf, type OfReading, type Weighed } from './measured';
import { downAtPitch } from './pitch';
import { liquidShareSigma, positionsOf, type Thought } from './thought';

const rowOf: Readonly<Partial<Record<WholeQuantity, number>>> = { mass: 0, station: 1, waterline: 2 };

/** One scale read at several pitches. The answer is the aircraft without its liquid, wherever that lay. */
export function byTilt(
  aircraft: Aircraft,
  entry: WeighIn,
  reading: OfReading<'tilt'>,
  { dryIds }: Thought,
): Weighed | Refusal {
  const height = tiltedHeight(aircraft, entry, reading);
  if (!height.ok) return height;
  const { massG, stationMm, waterlineMm, covariance } = height;
  const measurement = measurementOf(
    entry.id,
    [
      ['mass', massG],
      ['station', stationMm],
      ['waterline', waterlineMm],
    ],
    (a, b) => covariance[rowOf[a] ?? 0]?.[rowOf[b] ?? 0] ?? 0,
  );
  return {
    ok: true,
    massG,
    stationMm,
    buttlineMm: null,
    waterlineMm,
    withoutLiquid: true,
    measurement: { ...measurement, aboard: dryIds },
  };
}

/** The fit through the readings, with what each is off it by. */
export function tiltedHeight(
  aircraft: Aircraft,
  entry: WeighIn,
  reading: OfReading<'tilt'>,
): TiltedHeight | Refusal {
  const { readings, tareG, resolutionG, pitchPlusMinusDeg } = reading;
  const geometry = tiltGeometry(reading);
  if (!geometry) return refusal('The mass of the whole aircraft is needed: weigh it first.');
  const unread = readings.findIndex(({ grossG }) => !(grossG > 0));
  if (unread >= 0) return refusal(`Reading ${unread + 1}: the scale has not been read yet.`);
  const under = readings.findIndex(({ grossG }) => grossG < tareG);
  if (under >= 0) {
    return refusal(
      `Reading ${under + 1}: ${readings[under]?.grossG} g is less than the tare, ${tareG} g; no axle pulls.`,
    );
  }
  return heightFromTilt({
    ...geometry,
    liquidShareSigma: liquidShareSigma(aircraft, levelBalance(entry, aircraft)),
    readings: readings.map(({ pitchDeg, grossG }) => {
      const { massG, cgMm } = tiltedState(aircraft, entry, pitchDeg).liquid;
      return {
        pitchDeg: { value: pitchDeg, sigma: standardUncertainty(pitchPlusMinusDeg) },
        readingG: netOf({ grossG, tareG, resolutionG }),
        ...(cgMm && { liquid: { massG, cgMm } }),
      };
    }),
  });
}

/** How an aircraft was loaded. */
type LoadedAs = Pick<WeighIn, 'fuelPct' | 'switches'>;

const levelBalance = lastPerObject(
  (loaded: LoadedAs, aircraft: Aircraft): Balance =>
    balanceAt(aircraft, {
      fuelFraction: loaded.fuelPct / 100,
      down: LEVEL,
      positions: positionsOf(loaded),
    }),
);

/** Mass and CG of the aircraft as listed, and its liquid by itself. */
interface TiltedState {
  readonly massG: number;
  readonly cgMm: Vec3 | null;
  readonly liquid: MassProperties;
}

/** The aircraft as listed, held at a pitch: its liquid has run to where it lies then. */
export function tiltedState(aircraft: Aircraft, loaded: LoadedAs, pitchDeg: number): TiltedState {
  const { liquid: table, bodies } = levelBalance(loaded, aircraft);
  const states = table.plumbing
    ? liquidStatesAt(table.plumbing, loaded.fuelPct / 100, downAtPitch(pitchDeg))
    : [];
  const liquid = massSum(states.map(({ mass }) => mass));
  const { massG, cgMm } = massSum([liquid, ...bodies.map(({ mass }) => mass)]);
  return { massG, cgMm, liquid };
}

function tiltGeometry({
  massG,
  massPlusMinusG,
  pivotMm,
  otherMm,
  tapeMm,
}: OfReading<'tilt'>): Omit<TiltSetup, 'readings'> | null {
  const mass = wholeFigure(massG, massPlusMinusG);
  const taped = (value: number): Figure => ({ value, sigma: standardUncertainty(tapeMm) });
  return (
    mass && {
      massG: mass,
      pivotMm: [taped(pivotMm[0]), taped(pivotMm[2])],
      otherMm: [taped(otherMm[0]), taped(otherMm[2])],
    }
  );
}

/** The tilt to take beside a level reading, nose up or down, whichever tells more; null where none keeps weight on the scale. */
export function tiltToTake(
  aircraft: Aircraft,
  entry: LoadedAs,
  reading: OfReading<'tilt'>,
): RecommendedTilt | null {
  const listed = levelBalance(entry, aircraft);
  if (!listed.cgMm) return null;
  const { cgMm } = listed;
  const geometry = tiltGeometry({ ...reading, massG: reading.massG ?? listed.massG });
  if (!geometry) return null;
  const errors = {
    readingSigmaG: netOf({ ...reading, grossG: 0 }).sigma,
    pitchSigmaDeg: standardUncertainty(reading.pitchPlusMinusDeg),
  };
  const [up, down] = [true, false].map((noseUp) => recommendedTilt(geometry, cgMm, { ...errors, noseUp }));
  if (!up || !down) return up ?? down ?? null;
  return down.sigmaMm < up.sigmaMm ? down : up;
}
