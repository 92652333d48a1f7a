import { positionOf, switchesOf } from '../airframe/loadSwitches';
import { itemById, structureById } from '../document/edit';
import { BARE_AIRFRAME_ID } from '../document/ids';
import type { Aircraft } from '../document/types';
import { changed, type LessonBench } from './bench';
import { pieceStationMm } from './pieceStation';
import type { Change } from './types';

/** One figure of the bench that a goal is about: where it was, is, and shall come to. */
export interface Measured {
  readonly was: number;
  readonly is: number;
  readonly shall: number;
  /** What its unit is, for a sentence. */
  readonly unit: 'mm' | 'g' | 'ml' | '%' | '°' | '×';
  /** How far off still counts, where that is no matter of the step. */
  readonly within?: number;
}

/** An acceleration this near is the same, g. */
const SAME_G = 0.05;

/** How far off a goal still counts as reached where the file does not say, in the unit of each. Ours, no source. */
export const DEFAULT_WITHIN: Readonly<Record<Change['do'], number>> = {
  place: 3,
  shiftStructure: 3,
  mass: 1,
  takeOut: 0,
  plusMinus: 0.25,
  start: 5,
  fuel: 1,
  hold: 2,
  switch: 0,
  solved: 0,
};

/** The figures that a change is about: as the step began, as they are, and as the change wants them. */
export function measuredBy(change: Change, from: LessonBench, now: LessonBench): readonly Measured[] {
  const target = changed(from, [change]);
  const each = (
    figure: (bench: LessonBench) => number | null,
    unit: Measured['unit'],
  ): readonly Measured[] => {
    const [was, is, shall] = [figure(from), figure(now), figure(target)];
    return was === null || shall === null ? [] : [{ was, is: is ?? Number.NaN, shall, unit }];
  };
  switch (change.do) {
    case 'place':
      return [change.stationMm, change.buttlineMm, change.waterlineMm].flatMap((wanted, axis) =>
        wanted === undefined
          ? []
          : each(({ aircraft }) => itemById(aircraft, change.itemId)?.positionMm[axis] ?? null, 'mm'),
      );
    case 'shiftStructure':
      return each(({ aircraft }) => {
        const piece = structureById(aircraft, change.pieceId);
        return piece ? pieceStationMm(piece) : null;
      }, 'mm');
    case 'mass':
      return each(({ aircraft }) => massOf(aircraft, change.itemId), 'g');
    case 'takeOut':
      return each(({ aircraft }) => (itemById(aircraft, change.itemId) ? 1 : 0), '×');
    case 'plusMinus':
      return [
        ...(change.g === undefined
          ? []
          : each(({ aircraft }) => plusMinusOf(aircraft, change.itemId).plusMinusG ?? 0, 'g')),
        ...(change.mm === undefined
          ? []
          : each(({ aircraft }) => plusMinusOf(aircraft, change.itemId).plusMinusMm ?? 0, 'mm')),
      ];
    case 'start':
      return each(
        ({ aircraft }) => aircraft.tanks.find(({ id }) => id === change.tankId)?.startMl ?? null,
        'ml',
      );
    case 'fuel':
      return each(({ fuelFraction }) => fuelFraction * 100, '%');
    case 'hold':
      return [
        ...each(({ attitude }) => attitude.pitchDeg, '°'),
        ...each(({ attitude }) => attitude.rollDeg, '°'),
        ...each(({ attitude }) => attitude.forwardG, '×').map((figure) => ({ ...figure, within: SAME_G })),
      ];
    case 'switch':
      return each(({ aircraft, positions }) => {
        const found = switchesOf(aircraft).find(({ id }) => id === change.switchId);
        return found ? found.positions.indexOf(positionOf(found, positions)) : null;
      }, '×');
    case 'solved':
      return [];
  }
}

function massOf(aircraft: Aircraft, itemId: string): number | null {
  const item = itemById(aircraft, itemId);
  if (!item) return null;
  return 'massG' in item ? item.massG : item.emptyMassG;
}

const plusMinusOf = (
  aircraft: Aircraft,
  itemId: string,
): { readonly plusMinusG?: number | undefined; readonly plusMinusMm?: number | undefined } =>
  (itemId === BARE_AIRFRAME_ID ? aircraft.bareAirframe : itemById(aircraft, itemId)) ?? {};

/** What a change is about, so that nothing else counts as astray: ids of things aboard, or `fuel`, `attitude`, a switch. */
export function subjectOf(change: Change): string {
  switch (change.do) {
    case 'place':
    case 'mass':
    case 'takeOut':
    case 'plusMinus':
      return change.itemId;
    case 'shiftStructure':
      return change.pieceId;
    case 'start':
      return change.tankId;
    case 'fuel':
      return 'fuel';
    case 'hold':
      return 'attitude';
    case 'switch':
      return `switch ${change.switchId}`;
    case 'solved':
      return 'solved';
  }
}
