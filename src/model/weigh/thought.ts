import { standardUncertainty } from '../../engine/balance/uncertainty';
import type { Suspect } from '../../engine/weigh/culpritHypotheses';
import { BARE_AIRFRAME_ID } from '../airframe/bareAirframe';
import { type Positions, switchesOf } from '../airframe/loadSwitches';
import { fuelDensity } from '../airframe/tanks';
import { type Balance, balanceAt } from '../balance/balance';
import { densityPlusMinus, type MeasuredThing, measuredThings, USUAL } from '../balance/measurements';
import { itemById, structureById } from '../document/edit';
import type { Aircraft, MassFrom, WeighIn } from '../document/types';
import { downAtPitch } from './pitch';

/** The aircraft as the list has it, in the load state and at the fuel of a weigh-in. */
export interface Thought {
  readonly balance: Balance;
  /** Everything aboard, liquid too. */
  readonly suspects: readonly Suspect[];
  /** All of it but the liquid. */
  readonly dryIds: ReadonlySet<string>;
  /** What each is called, by id. */
  readonly names: ReadonlyMap<string, string>;
  /** What each comes from in the file; liquid from its tank. */
  readonly sources: ReadonlyMap<string, string>;
}

export const positionsOf = ({ switches }: Pick<WeighIn, 'switches'>): Positions =>
  Object.fromEntries(switches.map(({ switchId, positionId }) => [switchId, positionId]));

/** Switch positions noted at a weigh-in that the aircraft has no more, by their ids: they have no say in what is held against it. */
export const positionsGone = (
  aircraft: Aircraft,
  { switches }: Pick<WeighIn, 'switches'>,
): readonly string[] =>
  switches.flatMap(({ switchId, positionId }) => {
    const there = switchesOf(aircraft).find(({ id }) => id === switchId);
    if (!there) return [switchId];
    return there.positions.some(({ id }) => id === positionId) ? [] : [`${there.name}: ${positionId}`];
  });

/** How it stood; hung up or swung its liquid is taken as it lies level. */
const pitchOf = ({ reading }: WeighIn): number => (reading.by === 'scales' ? reading.pitchDeg : 0);

export function thoughtAt(aircraft: Aircraft, weighIn: WeighIn): Thought {
  const balance = balanceAt(aircraft, {
    fuelFraction: weighIn.fuelPct / 100,
    down: downAtPitch(pitchOf(weighIn)),
    positions: positionsOf(weighIn),
  });
  const things = measuredThings(aircraft, balance.bodies);
  const suspects = [...things.map((thing) => suspectOf(aircraft, thing)), ...liquids(aircraft, balance)];
  const tankName = (id: string) => itemById(aircraft, id)?.name ?? id;
  return {
    balance,
    suspects,
    dryIds: new Set(things.map(({ id }) => id)),
    names: new Map([
      ...things.map(({ id, name }) => [id, name] as const),
      ...balance.liquids.map(({ tankId }) => [liquidId(tankId), `Liquid in ${tankName(tankId)}`] as const),
    ]),
    sources: new Map([
      ...things.map(({ id, sourceId }) => [id, sourceId] as const),
      ...balance.liquids.map(({ tankId }) => [liquidId(tankId), tankId] as const),
    ]),
  };
}

/** No id in a file has a blank in it. */
const liquidId = (tankId: string) => `liquid ${tankId}`;

/** Whether nobody weighed what a mass of such a source is of. */
const notWeighed: Readonly<Record<MassFrom, boolean>> = {
  weighed: false,
  measured: false,
  typical: true,
  assumed: true,
  unknown: true,
};

function suspectOf(aircraft: Aircraft, thing: MeasuredThing): Suspect {
  const { id, mass, sigmaG, sigmaMm, sourceId } = thing;
  const item = itemById(aircraft, sourceId);
  const structure = structureById(aircraft, sourceId);
  const massFrom = item?.massFrom ?? structure?.massFrom;
  const guessed =
    massFrom === undefined
      ? structure !== undefined && structure.kind !== 'leg' && structure.mass.by !== 'weighed'
      : notWeighed[massFrom];
  return {
    id,
    mass,
    sigmaG,
    sigmaMm,
    notWeighed: guessed,
    massTyped: item !== undefined || (structure !== undefined && !guessed) || sourceId === BARE_AIRFRAME_ID,
    ...(item && { typedMm: item.positionMm }),
  };
}

/** What all of the liquid may be off by, one sigma as a share of its mass: as sure as its density. */
export function liquidShareSigma(aircraft: Aircraft, { loaded: { fuel } }: Balance): number {
  return fuel ? standardUncertainty(densityPlusMinus(aircraft)) / fuelDensity(fuel) : 0;
}

/** What the tanks hold: its mass is as sure as its density, its place as that of its tank. */
function liquids(aircraft: Aircraft, balance: Balance): readonly Suspect[] {
  const share = liquidShareSigma(aircraft, balance);
  return balance.liquids.flatMap(({ tankId, mass }) => {
    if (!mass.cgMm) return [];
    const item = itemById(aircraft, tankId);
    const sigma = standardUncertainty(item?.plusMinusMm ?? USUAL.tapeMm);
    return {
      id: liquidId(tankId),
      mass,
      sigmaG: share * mass.massG,
      sigmaMm: [sigma, sigma, sigma],
      notWeighed: false,
      massTyped: false,
    };
  });
}
