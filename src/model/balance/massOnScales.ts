import { COVERAGE_FACTOR, standardUncertainty } from '../../engine/balance/uncertainty';
import { lastOnly } from '../../engine/memory/memory';
import type { Aircraft, MassFrom } from '../document/types';
import type { Balance } from './balance';
import { carriedOver, cgErrorOf } from './certainty';
import { USUAL } from './measurements';

/** What a gram of the aircraft rests on: a source, nobody's word, or for liquid its density. */
export type RestsOn = MassFrom | 'not said' | 'liquid';

/** A thing that would make the CG surer if it went on a scale. */
export interface WeighNext {
  /** The thing's id in the file. */
  readonly id: string;
  readonly name: string;
  /** The ± that the CG's station would have then, 95 %, mm. */
  readonly thenMm: number;
}

/** How much of the mass at the loading shown rests on a scale, and what to weigh next. */
export interface MassOnScales {
  readonly massG: number;
  /** What each kind of source carries, the surest first; none of no mass. */
  readonly shares: readonly { readonly restsOn: RestsOn; readonly massG: number }[];
  /** The ± of the CG's station now, 95 %, mm. */
  readonly nowMm: number;
  /** What helps most first; empty where nothing is left that a scale would better. */
  readonly next: readonly WeighNext[];
}

const ORDER: readonly RestsOn[] = [
  'weighed',
  'measured',
  'liquid',
  'not said',
  'typical',
  'assumed',
  'unknown',
];
/** So many are named, and none that betters the CG by less than this share. */
const MOST_NAMED = 3;
const WORTH_IT = 0.01;

/**
 * Everything aboard by where its mass comes from, and what each thing's own mass, once it is known as a scale knows it,
 * would make of the ± of the CG's station: the variance that it adds now goes down by the square of the two ± (GUM, equation
 * 10). Its place is left as it is. Null without a CG.
 */
export const massOnScales = lastOnly((aircraft: Aircraft, balance: Balance): MassOnScales | null => {
  const carried = carriedOver(aircraft, balance);
  const error = cgErrorOf(aircraft, balance);
  if (!carried || !error) return null;
  const massOf = new Map<RestsOn, number>();
  const put = (restsOn: RestsOn, massG: number) => massOf.set(restsOn, (massOf.get(restsOn) ?? 0) + massG);
  for (const { massFrom, mass } of carried.things) put(massFrom ?? 'not said', mass.massG);
  for (const { mass } of balance.liquids) put('liquid', mass.massG);
  const variance = error.sigmaMm[0] ** 2;
  const addedBy = new Map(
    carried.sum.contributions
      .filter(({ quantity }) => quantity === 'mass')
      .map(({ bodyId, varianceMm2 }) => [bodyId, varianceMm2[0]]),
  );
  const scaleG = standardUncertainty(USUAL.scalesG);
  const next = carried.things.flatMap(({ id, sourceId, name, sigmaG }): WeighNext[] => {
    if (!(sigmaG > scaleG)) return [];
    const gone = (addedBy.get(id) ?? 0) * (1 - (scaleG / sigmaG) ** 2);
    const thenMm = COVERAGE_FACTOR * Math.sqrt(Math.max(0, variance - gone));
    return [{ id: sourceId, name, thenMm }];
  });
  const nowMm = COVERAGE_FACTOR * error.sigmaMm[0];
  return {
    massG: balance.massG,
    shares: ORDER.flatMap((restsOn) => {
      const massG = massOf.get(restsOn) ?? 0;
      return massG > 0 ? [{ restsOn, massG }] : [];
    }),
    nowMm,
    next: next
      .filter(({ thenMm }) => thenMm < nowMm * (1 - WORTH_IT))
      .sort((a, b) => a.thenMm - b.thenMm)
      .slice(0, MOST_NAMED),
  };
});
