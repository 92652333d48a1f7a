import { bodyMeasurements, densityMeasurement, type Measurement } from '../../engine/balance/bandProbability';
import type { TravelPoint } from '../../engine/balance/travel';
import { cgPerMm, type MeasuredBody, standardUncertainty } from '../../engine/balance/uncertainty';
import { massSum } from '../../engine/mass/massProperties';
import { BARE_AIRFRAME_ID } from '../airframe/bareAirframe';
import type { Body } from '../airframe/bodies';
import { fuelDensity } from '../airframe/tanks';
import type { Aircraft, StructurePiece } from '../document/types';
import type { LiquidTable } from './liquidTable';

/**
 * What a figure may be off by where the file does not say, as a ± of two standard uncertainties. Common
 * practice, no source: kitchen scales read to 1 g, a tape is laid to 2 mm.
 */
export const USUAL = {
  scalesG: 1,
  tapeMm: 2,
  /** A density carries a whole element, and a typical figure is another maker's: share of the mass. */
  notWeighed: 0.05,
  typical: 0.1,
  densityGPerMl: 0.01,
} as const;

interface PlusMinus {
  readonly g: number;
  readonly mm: number;
}

interface Stated {
  readonly plusMinusG?: number | undefined;
  readonly plusMinusMm?: number | undefined;
}

/** What goes on the scales as one: a part, an empty tank, one side of an element, the bare airframe. */
export interface MeasuredThing extends MeasuredBody {
  readonly sourceId: string;
  readonly name: string;
  readonly plusMinus: PlusMinus;
  /** Whether somebody said how well it was weighed. */
  readonly stated: boolean;
}

/**
 * All that is aboard, liquid apart, as it was measured. Of an element each side was weighed as one; a bare
 * airframe on the scales stands for all its elements, whatever else is said of them.
 */
export function measuredThings(aircraft: Aircraft, aboard: readonly Body[]): readonly MeasuredThing[] {
  const airframe = aircraft.bareAirframe?.use === 'compare' ? null : aircraft.bareAirframe;
  const groups = new Map<string, Body[]>();
  for (const body of aboard) {
    const side = body.side === 'centre' ? '' : `.${body.side}`;
    const key = airframe && body.group === 'structure' ? BARE_AIRFRAME_ID : body.sourceId + side;
    const group = groups.get(key);
    if (group) group.push(body);
    else groups.set(key, [body]);
  }
  const statedOf = statedIn(aircraft);
  return [...groups].flatMap(([id, members]) => {
    const mass = massSum(members.map((body) => body.mass));
    const [first] = members;
    if (!first || !mass.cgMm) return [];
    const sourceId = id === BARE_AIRFRAME_ID ? id : first.sourceId;
    const name = nameOf(first, id);
    const [stated, usualG] = statedOf(sourceId, mass.massG);
    const plusMinus = { g: stated.plusMinusG ?? usualG, mm: stated.plusMinusMm ?? USUAL.tapeMm };
    const sigmaMm = standardUncertainty(plusMinus.mm);
    return {
      id,
      sourceId,
      name,
      mass,
      plusMinus,
      stated: stated.plusMinusG !== undefined,
      sigmaG: standardUncertainty(plusMinus.g),
      sigmaMm: [sigmaMm, sigmaMm, sigmaMm],
    };
  });
}

const nameOf = ({ name, side }: Body, id: string) =>
  id === BARE_AIRFRAME_ID ? 'Bare airframe' : side === 'centre' ? name : `${name}, ${side}`;

/** What the file says about a thing, and the ± in g where it says nothing. */
function statedIn({ bareAirframe, parts, tanks, structure }: Aircraft) {
  const partOf = new Map(parts.map((part) => [part.id, part]));
  const tankOf = new Map(tanks.map((tank) => [tank.id, tank]));
  const elementOf = new Map(structure.map((element) => [element.id, element]));
  return (id: string, massG: number): readonly [Stated, number] => {
    if (id === BARE_AIRFRAME_ID) return [bareAirframe ?? {}, USUAL.scalesG];
    const part = partOf.get(id);
    if (part) return [part, part.typical ? Math.max(USUAL.scalesG, USUAL.typical * massG) : USUAL.scalesG];
    const tank = tankOf.get(id);
    if (tank) return [tank, USUAL.scalesG];
    const element = elementOf.get(id);
    return element
      ? [element, weighed(element) ? USUAL.scalesG : USUAL.notWeighed * massG]
      : [{}, USUAL.scalesG];
  };
}

const weighed = (element: StructurePiece) => element.kind === 'leg' || element.mass.by === 'weighed';

/** What a density may be off by, g/ml. */
export const densityPlusMinus = ({ fuel }: Aircraft): number => fuel?.plusMinusGPerMl ?? USUAL.densityGPerMl;

/**
 * Every measurement and how it moves the CG's station along the travel, which must be that of the liquid. A tank
 * that stands elsewhere takes its liquid with it.
 */
export function travelMeasurements(
  aircraft: Aircraft,
  things: readonly MeasuredThing[],
  { plumbing, moments, tankMassesG }: LiquidTable,
  travel: readonly TravelPoint[],
): readonly Measurement[] {
  const ofBodies = bodyMeasurements(things, travel);
  const { fuel } = aircraft;
  if (!fuel || !plumbing || moments.length !== travel.length) return ofBodies;
  const withLiquid = ofBodies.map((measurement) => {
    const tank =
      measurement.quantity === 'station'
        ? plumbing.tanks.findIndex(({ id }) => id === measurement.bodyId)
        : -1;
    if (tank < 0) return measurement;
    const perUnitMm = measurement.perUnitMm.map(
      (slope, point) => slope + cgPerMm(tankMassesG[point]?.[tank] ?? 0, travel[point]?.massG ?? 1),
    );
    return { ...measurement, perUnitMm };
  });
  const sigma = standardUncertainty(densityPlusMinus(aircraft));
  return [...withLiquid, densityMeasurement(fuelDensity(fuel), sigma, moments, travel)];
}
