import type { Vec3 } from '../../engine/geometry/types';
import { lastOnly } from '../../engine/memory/memory';
import { flyingStart } from '../airframe/flyingStates';
import {
  inLoadState,
  type Positions,
  positionOf,
  switchesOf,
  UNDERCARRIAGE_ID,
} from '../airframe/loadSwitches';
import { type Balance, balanceAt, LEVEL } from '../balance/balance';
import { cgErrorOf, LINE_95 } from '../balance/certainty';
import { plumbingOf } from '../balance/liquidTable';
import { liquidWord, midSentence } from '../document/inWords';
import type { Aircraft } from '../document/types';
import { bandToKeep } from '../judgement/bandToKeep';
import { statedMoment } from '../judgement/statedPoint';
import { aircraftCases } from '../place/loadCases';

/** How full the aircraft is balanced: `header` with the header tanks full and all that feeds them dry. */
export const FUEL_CHOICES = ['dry', 'header', 'full'] as const;
export type FuelChoice = (typeof FUEL_CHOICES)[number];

/** The state that the aircraft will be balanced in; as it starts a flight where nothing is chosen. */
export interface BalancingChoice {
  readonly fuel: FuelChoice | null;
  readonly positions: Positions;
}

/** Usable liquid left when only tanks that others feed still hold any; null without such. */
export function headerFraction(aircraft: Aircraft): number | null {
  const plumbing = plumbingOf(aircraft);
  if (!plumbing || plumbing.usableMl <= 0) return null;
  const fed = new Set(plumbing.tanks.map(({ feeds }) => feeds));
  const headerMl = plumbing.tanks
    .filter(({ id }) => fed.has(id))
    .reduce((sum, { startMl, unusableMl }) => sum + Math.max(0, startMl - unusableMl), 0);
  const fraction = headerMl / plumbing.usableMl;
  return fraction > 0 && fraction < 1 ? fraction : null;
}

/** The fuel states that can be chosen for an aircraft; none where nothing can be drawn. */
export function fuelChoices(aircraft: Aircraft): readonly FuelChoice[] {
  const plumbing = plumbingOf(aircraft);
  if (!plumbing || plumbing.usableMl <= 0) return [];
  return headerFraction(aircraft) === null ? ['dry', 'full'] : FUEL_CHOICES;
}

/** What was chosen, where that can be; else dry, with header tanks full where there are any. */
export function fuelChosen(aircraft: Aircraft, { fuel }: BalancingChoice): FuelChoice {
  const choices = fuelChoices(aircraft);
  if (fuel && choices.includes(fuel)) return fuel;
  return choices.includes('header') ? 'header' : 'dry';
}

export const fuelChoiceWords = (aircraft: Aircraft, fuel: FuelChoice): string => {
  if (fuel === 'header') return 'tanks dry, header full';
  if (liquidWord(aircraft) === 'water') return fuel === 'dry' ? 'no water' : 'all its water';
  return fuel === 'dry' ? 'tanks dry' : 'tanks full';
};

/** Dry is without what can be drawn: whoever drains the tanks has less in them, and balances elsewhere. */
function fuelStateWords(aircraft: Aircraft, fuel: FuelChoice): string {
  if (fuelChoices(aircraft).length === 0) return '';
  const unusable = plumbingOf(aircraft)?.tanks.some((tank) => Math.min(tank.unusableMl, tank.startMl) > 0);
  const left = fuel !== 'full' && unusable ? ` (the unusable ${liquidWord(aircraft)} in)` : '';
  return `${fuelChoiceWords(aircraft, fuel)}${left}`;
}

/** The aircraft as it will be balanced. */
export interface Balanced {
  readonly positions: Positions;
  readonly fuelFraction: number;
  readonly balance: Balance;
  /** "Tanks dry, header full (the unusable fuel in), canopy on". */
  readonly words: string;
  readonly cgMm: Vec3 | null;
  /** 95 %, mm and g; null where it is not known. */
  readonly plusMinusMm: number | null;
  readonly plusMinusG: number | null;
}

/** Dry unless chosen otherwise, header tanks full where there are any; switches as at the start of a flight. */
export const balancedState = lastOnly((aircraft: Aircraft, choice: BalancingChoice): Balanced => {
  const positions = { ...flyingStart(aircraft), ...choice.positions };
  const loaded = inLoadState(aircraft, positions);
  const fuel = fuelChosen(loaded, choice);
  const fuelFraction = fuel === 'full' ? 1 : fuel === 'header' ? (headerFraction(loaded) ?? 0) : 0;
  const balance = balanceAt(aircraft, { fuelFraction, down: LEVEL, positions });
  const error = cgErrorOf(aircraft, balance);
  return {
    positions,
    fuelFraction,
    balance,
    words: stateWords(aircraft, positions, fuelStateWords(loaded, fuel)),
    cgMm: balance.cgMm,
    plusMinusMm: error && LINE_95 * error.sigmaMm[0],
    plusMinusG: error && LINE_95 * error.massSigmaG,
  };
});

/** Every switch by name, so that nobody has to know how it stands when nothing is said. */
export function stateWords(aircraft: Aircraft, positions: Positions, fuel: string): string {
  const settings = switchesOf(aircraft).map((each) => {
    const { name } = positionOf(each, positions);
    return each.id === UNDERCARRIAGE_ID ? `wheels ${name}` : `${midSentence(each.name)} ${name}`;
  });
  const words = [fuel, ...settings].filter(Boolean).join(', ') || 'everything aboard';
  return words.charAt(0).toUpperCase() + words.slice(1);
}

export interface KeepBetween {
  readonly fromMm: number;
  readonly toMm: number;
}

/** Whether the CG as listed lies where it keeps the band in every load state. */
export const isKept = (keep: KeepBetween | null, cgMm: Vec3): boolean =>
  keep !== null && cgMm[0] >= keep.fromMm && cgMm[0] <= keep.toMm;

/**
 * The stations that the CG may have in the state that it is balanced in, so that it keeps the limits and the margin in every
 * load state that was looked at, where what is off is a mass or a place that is there in all of them: a moment that moves the
 * CG there by d moves it by d·m/mₛ in a state of mass mₛ. Null without a band, a CG, or where no such station is.
 */
export const keepBetween = lastOnly(
  (aircraft: Aircraft, shown: Balance, { balance, cgMm }: Balanced): KeepBetween | null => {
    const band = bandToKeep(shown, aircraft);
    if (!band || !cgMm || !(balance.massG > 0)) return null;
    let [fromMm, toMm] = [Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY];
    for (const { massG, stationMm } of heldPoints(aircraft)) {
      const share = massG / balance.massG;
      fromMm = Math.max(fromMm, cgMm[0] + (band.forwardMm - stationMm) * share);
      toMm = Math.min(toMm, cgMm[0] + (band.aftMm - stationMm) * share);
    }
    return fromMm <= toMm && Number.isFinite(fromMm) && Number.isFinite(toMm) ? { fromMm, toMm } : null;
  },
);

/** Every CG that is held to the limits: along the burn of each flying state, level, or only where they were stated for. */
function heldPoints(aircraft: Aircraft): readonly { readonly massG: number; readonly stationMm: number }[] {
  const moment = statedMoment(aircraft);
  if (moment) {
    const { massG, cgMm } = balanceAt(aircraft, { ...moment, down: LEVEL });
    return cgMm ? [{ massG, stationMm: cgMm[0] }] : [];
  }
  return aircraftCases(aircraft, LEVEL).map(({ massG, momentGmm }) => ({
    massG,
    stationMm: momentGmm[0] / massG,
  }));
}
