import { bodyMeasurements, densityMeasurement, type Measurement } from '../../engine/balance/bandProbability';
import type { TravelPoint } from '../../engine/balance/travel';
import { cgPerMm, type MeasuredBody, standardUncertainty } from '../../engine/balance/uncertainty';
import type { Vec3 } from '../../engine/geometry/types';
import { massSum } from '../../engine/mass/massProperties';
import type { MassProperties } from '../../engine/mass/types';
import { lastPerObject, perObject, perObjects } from '../../engine/memory/memory';
import { BARE_AIRFRAME_ID } from '../airframe/bareAirframe';
import type { Body } from '../airframe/bodies';
import { fuelDensity } from '../airframe/tanks';
import type {
  Aircraft,
  BareAirframe,
  MassFrom,
  Part,
  SizeFrom,
  StructurePiece,
  TankItem,
} from '../document/types';
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
  /** Proportions know the kind of aircraft only; of what is unknown the figure stands for nothing. */
  assumed: 0.2,
  unknown: 1,
  /** A difference of two readings is off by both: times the reading's own. */
  difference: Math.SQRT2,
  /** A size likewise: share of the length. */
  typicalSize: 0.05,
  assumedSize: 0.1,
  unknownSize: 0.25,
  densityGPerMl: 0.01,
} as const;

interface PlusMinus {
  readonly g: number;
  /** Along the aircraft. */
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
  /** Where its mass comes from; a density is assumed, and null where nobody said. */
  readonly massFrom: MassFrom | null;
}

/**
 * All that is aboard, liquid apart, as it was measured. Of an element each side was weighed as one; a bare
 * airframe on the scales stands for all its elements, whatever else is said of them.
 */
export const measuredThings = perObjects(
  (aircraft: Aircraft, aboard: readonly Body[]): readonly MeasuredThing[] => {
    const airframe = aircraft.bareAirframe?.use === 'compare' ? null : aircraft.bareAirframe;
    const groups = new Map<string, [Body, ...Body[]]>();
    for (const body of aboard) {
      const side = body.side === 'centre' ? '' : `.${body.side}`;
      const key = airframe && body.group === 'structure' ? BARE_AIRFRAME_ID : body.sourceId + side;
      const group = groups.get(key);
      if (group) group.push(body);
      else groups.set(key, [body]);
    }
    const entryOf = entriesIn(aircraft);
    return [...groups].flatMap(([id, [first, ...others]]) => {
      const sourceId = id === BARE_AIRFRAME_ID ? id : first.sourceId;
      return measuredThing(first, id, entryOf(sourceId), ...others) ?? [];
    });
  },
);

/** The very same one while neither its bodies nor its entry in the file change: of a drag only what is in hand is measured anew. */
const measuredThing = lastPerObject(
  (first: Body, id: string, entry: Entry | null, ...others: readonly Body[]): MeasuredThing | null => {
    const mass = massSum([first, ...others].map((body) => body.mass));
    if (!mass.cgMm) return null;
    const sourceId = id === BARE_AIRFRAME_ID ? id : first.sourceId;
    const source = toldBy(sourceId, entry);
    const { plusMinusG, plusMinusMm } = source;
    const mm: Vec3 =
      plusMinusMm === undefined ? usualPlusMinusMm(mass, source) : [plusMinusMm, plusMinusMm, plusMinusMm];
    const plusMinus = { g: plusMinusG ?? usualPlusMinusG(mass.massG, source), mm: mm[0] };
    return {
      id,
      sourceId,
      name: nameOf(first, id),
      mass,
      plusMinus,
      stated: plusMinusG !== undefined,
      massFrom: source.massFrom ?? (source.byDensity ? 'assumed' : null),
      sigmaG: standardUncertainty(plusMinus.g),
      sigmaMm: mm.map(standardUncertainty) as unknown as Vec3,
    };
  },
);

const nameOf = ({ name, side }: Body, id: string) =>
  id === BARE_AIRFRAME_ID ? 'Bare airframe' : side === 'centre' ? name : `${name}, ${side}`;

/** What the file says of how well an item is known, and where its mass comes from if it does. */
interface Told extends Stated {
  readonly massFrom?: MassFrom | undefined;
  readonly sizeFrom?: SizeFrom | undefined;
  /** The mass comes from a density where nothing else is said. */
  readonly byDensity?: boolean;
}

type Entry = BareAirframe | Part | TankItem | StructurePiece;

/** What the file has under an id, or the bare airframe's; null where there is nothing. */
const entriesIn = perObject(({ bareAirframe, parts, tanks, structure }: Aircraft) => {
  const entries = new Map<string, Entry>(
    [...parts, ...tanks, ...structure].map((entry) => [entry.id, entry]),
  );
  if (bareAirframe) entries.set(BARE_AIRFRAME_ID, bareAirframe);
  return (id: string): Entry | null => entries.get(id) ?? null;
});

function toldBy(id: string, entry: Entry | null): Told {
  if (id === BARE_AIRFRAME_ID) return { massFrom: 'weighed', ...entry };
  if (!entry) return {};
  return 'kind' in entry ? { ...entry, byDensity: byDensity(entry) } : entry;
}

/** Where the mass of something aboard comes from, by its id or the bare airframe's; a density is assumed, null where nobody said. */
export function massSourceOf(aircraft: Aircraft, id: string): MassFrom | null {
  const source = toldBy(id, entriesIn(aircraft)(id));
  return source.massFrom ?? (source.byDensity ? 'assumed' : null);
}

const byDensity = (element: StructurePiece) => element.kind !== 'leg' && element.mass.by !== 'weighed';

/** The ± in g of a mass of which only its source is said: two standard uncertainties. */
export function usualPlusMinusG(massG: number, { massFrom, byDensity = false }: Told): number {
  const atLeast = (share: number) => Math.max(USUAL.scalesG, share * massG);
  switch (massFrom) {
    case 'weighed':
      return USUAL.scalesG;
    case 'measured':
      return USUAL.difference * USUAL.scalesG;
    case 'typical':
      return atLeast(USUAL.typical);
    case 'assumed':
      return atLeast(USUAL.assumed);
    case 'unknown':
      return atLeast(USUAL.unknown);
    case undefined:
      return byDensity ? USUAL.notWeighed * massG : USUAL.scalesG;
  }
}

const sizeShare: Readonly<Record<SizeFrom, number>> = {
  measured: 0,
  typical: USUAL.typicalSize,
  assumed: USUAL.assumedSize,
  unknown: USUAL.unknownSize,
};

/**
 * The ± in mm of the CG along each axis, where only the source of the sizes is said: the tape's, and half of what the
 * length along that axis may be off by, for an item is set against one of its ends. The length is that of the uniform bar
 * with the same spread: √12 radii of gyration.
 */
function usualPlusMinusMm(mass: MassProperties, { sizeFrom = 'measured' }: Told): Vec3 {
  const share = sizeShare[sizeFrom];
  const { xx, yy, zz } = mass.inertiaAboutCgGmm2;
  return [yy + zz - xx, xx + zz - yy, xx + yy - zz].map((twice) => {
    const gyrationMm = Math.sqrt(Math.max(0, twice) / 2 / mass.massG);
    return Math.hypot(USUAL.tapeMm, (share * Math.sqrt(12) * gyrationMm) / 2);
  }) as unknown as Vec3;
}

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
