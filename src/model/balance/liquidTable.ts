import { type LiquidMoment, momentOf } from '../../engine/balance/travel';
import type { Vec3 } from '../../engine/geometry/types';
import { feedBreaks } from '../../engine/liquid/feedBreaks';
import { liquidState } from '../../engine/liquid/liquidState';
import { type Plumbing, plumbing, tankVolumesAfter } from '../../engine/liquid/plumbing';
import type { LiquidState } from '../../engine/liquid/types';
import { lastOnly, notesOn } from '../../engine/memory/memory';
import { engineTanks } from '../airframe/tanks';
import type { Aircraft } from '../document/types';

/** Fuel states along the burn, full to dry, at which the travel is first computed. */
const FUEL_STATES = 64;
/** Fewer with the aircraft tilted, for every step of the tilt settles all the liquid again. */
const TILTED_STATES = 17;
/** At most so many states has a travel, with those where the feed changes and those that it takes to be certain of its ends. */
export const MOST_FUEL_STATES = 192;
/** Fuel fractions closer than this are one state. */
const SAME_STATE = 1e-9;

/** All the liquid at the fuel states of the travel, full to dry; a single state when nothing can be drawn. */
export interface LiquidTable {
  /** Null without tanks, or with tanks that cannot hold anything. */
  readonly plumbing: Plumbing | null;
  /** Why nothing can be drawn as the tanks are plumbed, a sentence each; empty when it can. */
  readonly feedFaults: readonly string[];
  readonly down: Vec3;
  readonly moments: readonly LiquidMoment[];
  /** Liquid in each tank at each moment, g, in the order of `plumbing.tanks`. */
  readonly tankMassesG: readonly (readonly number[])[];
}

const DRY: LiquidTable = {
  plumbing: null,
  feedFaults: [],
  down: [0, 0, -1],
  moments: [{ fuelFraction: 0, massG: 0, momentGmm: [0, 0, 0] }],
  tankMassesG: [[]],
};

/** All the liquid of a fuel state as one. */
export function liquidMoment(fuelFraction: number, states: readonly LiquidState[]): LiquidMoment {
  let massG = 0;
  let [x, y, z] = [0, 0, 0];
  const byTank = states.map(({ mass }) => momentOf(mass));
  for (const tank of byTank) {
    massG += tank.massG;
    x += tank.momentGmm[0];
    y += tank.momentGmm[1];
    z += tank.momentGmm[2];
  }
  return { fuelFraction, massG, momentGmm: [x, y, z], byTank };
}

/** The liquid in each tank with a fraction of the usable liquid left, 1 full to 0 dry. */
export function liquidStatesAt(plumbed: Plumbing, fuelFraction: number, down: Vec3): LiquidState[] {
  const volumes = tankVolumesAfter(plumbed, (1 - fuelFraction) * plumbed.usableMl, down);
  return plumbed.tanks.map((tank, i) => liquidState(tank, volumes[i] ?? 0, down));
}

/**
 * How the tanks are plumbed; null without tanks, or with ones that cannot hold anything. Tanks that cannot be drained as
 * they feed each other keep what they start with: it is aboard, and nothing of it can be drawn.
 */
export const plumbingOf = (aircraft: Aircraft): Plumbing | null => feedOf(aircraft).plumbing;

/** Why nothing can be drawn from the tanks, a sentence each; empty when it can, or when there is nothing to draw. */
export const feedFaultsOf = (aircraft: Aircraft): readonly string[] => feedOf(aircraft).feedFaults;

function feedOf(aircraft: Pick<Aircraft, 'tanks' | 'fuel'>): Pick<LiquidTable, 'plumbing' | 'feedFaults'> {
  const tanks = engineTanks(aircraft);
  if (tanks.length === 0) return { plumbing: null, feedFaults: [] };
  const plumbed = plumbing(tanks);
  if (!('faults' in plumbed)) return { plumbing: plumbed, feedFaults: [] };
  const eachAlone = plumbing(tanks.map((tank, rank) => ({ ...tank, feeds: 'outlet', rank })));
  if ('faults' in eachAlone) return { plumbing: null, feedFaults: plumbed.faults };
  return { plumbing: { tanks, outlet: [], usableMl: 0 }, feedFaults: plumbed.faults };
}

function liquidTable(aircraft: Pick<Aircraft, 'tanks' | 'fuel'>, down: Vec3): LiquidTable {
  const feed = feedOf(aircraft);
  const plumbed = feed.plumbing;
  if (!plumbed) return { ...DRY, ...feed, down };
  const level = down[0] === 0 && down[1] === 0;
  const count = plumbed.usableMl > 0 ? (level ? FUEL_STATES : TILTED_STATES) : 1;
  const even = Array.from({ length: count }, (_, i) => (count === 1 ? 0 : 1 - i / (count - 1)));
  const breaks =
    count === 1 ? [] : feedBreaks(plumbed, down).map((drawnMl) => 1 - drawnMl / plumbed.usableMl);
  const none: LiquidTable = { ...feed, down, moments: [], tankMassesG: [] };
  return withStates(none, [...even, ...breaks.slice(0, MOST_FUEL_STATES - count)]);
}

/** The table with more fuel states, each in its place; those that it has already are passed over. */
export function withStates(table: LiquidTable, fractions: readonly number[]): LiquidTable {
  const { plumbing: plumbed, moments, tankMassesG, down } = table;
  const taken = new Set(moments.map(({ fuelFraction }) => stateKey(fuelFraction)));
  const fresh = fractions.filter((fraction) => {
    const key = stateKey(fraction);
    return !taken.has(key) && taken.add(key);
  });
  if (!plumbed || fresh.length === 0) return table;
  const rows = moments.map((moment, k) => ({ moment, massesG: tankMassesG[k]! }));
  for (const fraction of fresh) {
    const states = liquidStatesAt(plumbed, fraction, down);
    rows.push({ moment: liquidMoment(fraction, states), massesG: states.map(({ mass }) => mass.massG) });
  }
  rows.sort((a, b) => b.moment.fuelFraction - a.moment.fuelFraction);
  return {
    ...table,
    moments: rows.map(({ moment }) => moment),
    tankMassesG: rows.map(({ massesG }) => massesG),
  };
}

const stateKey = (fuelFraction: number) => Math.round(fuelFraction / SAME_STATE);

/** The last table, for a part being dragged leaves the tanks as they are; it may have grown since. */
const lastTable = lastOnly((tanks: Aircraft['tanks'], fuel: Aircraft['fuel'], down: Vec3) => {
  const first = liquidTable({ tanks, fuel }, down);
  return notedIn({ table: first });
});

/** What a table that is kept is kept in. */
const keptIn = notesOn<LiquidTable, { table: LiquidTable }>();

function notedIn(holder: { table: LiquidTable }) {
  keptIn.set(holder.table, holder);
  return holder;
}

/** The table of an aircraft; the very same one while tanks, fuel and attitude stay what they were. */
export const liquidTableOf = ({ tanks, fuel }: Pick<Aircraft, 'tanks' | 'fuel'>, down: Vec3): LiquidTable =>
  lastTable(tanks, fuel, down).table;

/** Keeps a table that has been given more states in place of the one that it was made from. */
export function keepTable(before: LiquidTable, grown: LiquidTable): void {
  const holder = keptIn.get(before);
  if (holder?.table !== before) return;
  holder.table = grown;
  notedIn(holder);
}
