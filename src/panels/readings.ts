import { lastPerObject } from '../engine/memory/memory';
import type { UnitSystem } from '../model/units';
import { formatLength, formatMass, formatMoment, formatShift } from '../model/units';
import type { Say } from '../model/words/verdict';
import type { Bench } from '../store/bench';
import { useBench, useCommitted, useView } from '../store/react';
import { fromWords } from './measureFrom';

/** Puts figures into words in the person's units, and stations as read from their reference point. */
export interface Readings extends Say {
  readonly units: UnitSystem;
  /** The station that readings are taken from, mm aft of the datum. */
  readonly fromMm: number;
  /** What that is, as it stands in a sentence. */
  readonly from: string;
  /** A station or a mass without its unit, for a column that names it in its head. */
  stationFigure(mm: number): string;
  massFigure(g: number): string;
  /** A station with one decimal in metric. */
  stationFine(mm: number): string;
  /** A distance with one decimal in metric. */
  lengthFine(mm: number): string;
  /** A distance with one decimal in metric and its sign. */
  offset(mm: number): string;
  /** A small distance with two decimals in metric, three in inches, and its sign. */
  shift(mm: number): string;
  /** A moment with its sign, from g·mm. */
  moment(gmm: number): string;
}

/** Below this a whole millimetre would say too little, mm. */
const FINE_BELOW_MM = 2;

export function readings(units: UnitSystem, fromMm: number, from = 'the datum'): Readings {
  return {
    units,
    fromMm,
    from,
    length: (mm) => formatLength(mm, units, { fine: Math.abs(mm) < FINE_BELOW_MM }),
    station: (mm) => formatLength(mm - fromMm, units),
    mass: (g) => formatMass(g, units),
    stationFigure: (mm) => formatLength(mm - fromMm, units, { unit: false }),
    massFigure: (g) => formatMass(g, units, { unit: false }),
    stationFine: (mm) => formatLength(mm - fromMm, units, { fine: true }),
    lengthFine: (mm) => formatLength(mm, units, { fine: true }),
    offset: (mm) => formatLength(mm, units, { fine: true, signed: true }),
    shift: (mm) => formatShift(mm, units),
    moment: (gmm) => formatMoment(gmm, units, { signed: true }),
  };
}

/** The readings of the bench; the same object until units or reference point change. */
export function useReadings(): Readings {
  const units = useView((view) => view.units);
  const fromId = useView((view) => view.measureFromId);
  const fromMm = useCommitted(
    ({ referencePoints }) => referencePoints.find(({ id }) => id === fromId)?.positionMm[0] ?? 0,
  );
  const from = useCommitted((aircraft) => fromWords(aircraft, fromId));
  return readingsOf(useBench(), units, fromMm, from);
}

/** The very same for every place of the bench, so that what is worded with them is worded once. */
const readingsOf = lastPerObject(
  (_: Bench, units: UnitSystem, fromMm: number, from: string): Readings => readings(units, fromMm, from),
);
