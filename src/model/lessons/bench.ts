import type { Vec3 } from '../../engine/geometry/types';
import { AT_START, type Positions } from '../airframe/loadSwitches';
import { type Balance, balanceAt } from '../balance/balance';
import {
  itemById,
  movedStructure,
  placeItem,
  replaceStructure,
  structureById,
  updatePart,
  updateTank,
} from '../document/edit';
import { BARE_AIRFRAME_ID } from '../document/ids';
import { withoutItem } from '../document/removal';
import type { Aircraft } from '../document/types';
import { type BenchAttitude, downOf, LEVEL_ATTITUDE } from '../loads/attitude';
import type { Change, Estimator, Lesson } from './types';

/** All that a lesson looks at: the aircraft and how the bench holds it. Made from the live bench, or by `startBench`. */
export interface LessonBench {
  readonly aircraft: Aircraft;
  /** Usable liquid left, 1 full to 0 dry. */
  readonly fuelFraction: number;
  readonly attitude: BenchAttitude;
  readonly positions: Positions;
}

/** An aircraft as it comes onto the bench: tanks as they start, level, every switch in its first position. */
export const freshBench = (aircraft: Aircraft): LessonBench => ({
  aircraft,
  fuelFraction: 1,
  attitude: LEVEL_ATTITUDE,
  positions: AT_START,
});

/** The bench as the lesson begins. */
export const startBench = ({ aircraft, begin = [] }: Lesson): LessonBench =>
  changed(freshBench(aircraft), begin);

/** The bench as the check begins: that of the lesson, or its own aircraft fresh, as the check begins it. */
export const checkBench = (lesson: Lesson): LessonBench => {
  const { aircraft, begin = [] } = lesson.check;
  return changed(aircraft ? freshBench(aircraft) : startBench(lesson), begin);
};

/** A bench after changes, in their order. A change that names nothing aboard leaves it as it was; `solved` too (`answer.ts`). */
export const changed = (bench: LessonBench, changes: readonly Change[]): LessonBench =>
  changes.reduce(afterChange, bench);

function afterChange(bench: LessonBench, change: Change): LessonBench {
  switch (change.do) {
    case 'fuel':
      return { ...bench, fuelFraction: change.leftPct / 100 };
    case 'hold': {
      const { pitchDeg = 0, rollDeg = 0, forwardG = 0 } = change;
      return { ...bench, attitude: { pitchDeg, rollDeg, forwardG } };
    }
    case 'switch':
      return { ...bench, positions: { ...bench.positions, [change.switchId]: change.positionId } };
    case 'solved':
      return bench;
    case 'place':
    case 'shiftStructure':
    case 'mass':
    case 'takeOut':
    case 'plusMinus':
    case 'start':
      return { ...bench, aircraft: editedAircraft(bench.aircraft, change) };
  }
}

type Edit = Exclude<Change, { readonly do: 'fuel' | 'hold' | 'switch' | 'solved' }>;

function editedAircraft(aircraft: Aircraft, change: Edit): Aircraft {
  switch (change.do) {
    case 'place': {
      const item = itemById(aircraft, change.itemId);
      if (!item) return aircraft;
      const [x, y, z] = item.positionMm;
      const { stationMm = x, buttlineMm = y, waterlineMm = z } = change;
      return placeItem(aircraft, change.itemId, [stationMm, buttlineMm, waterlineMm]);
    }
    case 'shiftStructure': {
      const piece = structureById(aircraft, change.pieceId);
      const by: Vec3 = [change.aftMm, 0, 0];
      return piece ? replaceStructure(aircraft, movedStructure(piece, by)) : aircraft;
    }
    case 'mass':
      return withMass(aircraft, change.itemId, change.massG);
    case 'takeOut':
      return withoutItem(aircraft, change.itemId);
    case 'plusMinus':
      return withPlusMinus(aircraft, change);
    case 'start':
      return updateTank(aircraft, change.tankId, { startMl: change.ml });
  }
}

/** A part, or an empty tank, of another mass. */
export const withMass = (aircraft: Aircraft, itemId: string, massG: number): Aircraft =>
  aircraft.parts.some(({ id }) => id === itemId)
    ? updatePart(aircraft, itemId, { massG })
    : updateTank(aircraft, itemId, { emptyMassG: massG });

function withPlusMinus(
  aircraft: Aircraft,
  { itemId, g, mm }: Extract<Change, { readonly do: 'plusMinus' }>,
): Aircraft {
  const said = {
    ...(g === undefined ? {} : { plusMinusG: g }),
    ...(mm === undefined ? {} : { plusMinusMm: mm }),
  };
  if (itemId === BARE_AIRFRAME_ID) {
    const { bareAirframe } = aircraft;
    return bareAirframe ? { ...aircraft, bareAirframe: { ...bareAirframe, ...said } } : aircraft;
  }
  return aircraft.parts.some(({ id }) => id === itemId)
    ? updatePart(aircraft, itemId, said)
    : updateTank(aircraft, itemId, said);
}

/** The balance of a bench; with an estimator its margins too. */
export const benchBalance = (
  { aircraft, fuelFraction, attitude, positions }: LessonBench,
  estimator?: Estimator,
): Balance =>
  balanceAt(aircraft, {
    fuelFraction,
    down: downOf(attitude),
    positions,
    estimate: estimator ? estimator(aircraft) : null,
  });
