import type { LoadSwitch } from '../../engine/balance/bestLoad';
import {
  burnsEnvelope,
  type LoadBurn,
  type LoadEnvelope,
  type LoadState,
} from '../../engine/balance/loadStates';
import { type MassMoment, momentOf } from '../../engine/balance/travel';
import type { Vec3 } from '../../engine/geometry/types';
import { massSum } from '../../engine/mass/massProperties';
import { lastOnly } from '../../engine/memory/memory';
import { type Body, bodies } from '../airframe/bodies';
import { flyingStart } from '../airframe/flyingStates';
import { type LoadGroup, loadGroups } from '../airframe/loadGroups';
import { inLoadState, type Positions } from '../airframe/loadSwitches';
import type { Aircraft } from '../document/types';
import { burnOf } from './burn';
import { CERTAIN_MM } from './certain';

export type { LoadEnvelope, LoadExtreme, LoadState } from '../../engine/balance/loadStates';

/** What the search may cost: so many tanks to settle, beside those of the two ends of every burn. */
const MOST_SETTLED = 6000;

/**
 * The extremes of CG and mass over every combination of the flying switches and all fuel, with liquid settled to one
 * attitude; null where a load state weighs nothing. Takes a millisecond up to a few seconds, so it is asked for at rest;
 * the very same answer again for the same aircraft and attitude. Throws a RangeError with a sentence where switches that
 * bear on each other have too many combinations.
 */
export const loadEnvelopeOf = lastOnly(envelopeOf);

/**
 * Groups of switches that only put bodies aboard are the engine's switches, one for each group, and it needs no enumeration
 * for them. The group that bears on the tanks changes the whole burn, so each of its combinations is a burn of its own.
 */
function envelopeOf(aircraft: Aircraft, down: Vec3): LoadEnvelope | null {
  const groups = loadGroups(aircraft);
  const start = flyingStart(aircraft);
  const ofTanks = groups.find((group) => group.ofTanks);
  const others = groups.filter((group) => group !== ofTanks);
  const burns = (ofTanks?.states() ?? [{}]).map((chosen): LoadBurn => {
    const positions = { ...start, ...chosen };
    const fixed = aboard(aircraft, positions);
    return {
      positions: chosen,
      fixed: momentOf(massSum(fixed.map(({ mass }) => mass))),
      ...burnOf(inLoadState(aircraft, positions), down),
    };
  });
  const switches = others.map((group, k) => asSwitch(aircraft, start, group, groupId(k)));
  const found = burnsEnvelope(burns, switches, {
    toleranceMm: CERTAIN_MM,
    mostSamples: MOST_SETTLED / Math.max(1, aircraft.tanks.length),
  });
  const states = new Map(others.map((group, k) => [groupId(k), group.states()]));
  return found && mapStates(found, (state) => ({ ...state, positions: spelledOut(state.positions, states) }));
}

/** An id that no switch of a file can have. */
const groupId = (k: number) => `/${k}`;

const aboard = (aircraft: Aircraft, positions: Positions): readonly Body[] =>
  bodies(inLoadState(aircraft, positions), aircraft);

/** A group as one switch, whose positions are its combinations; loads are differences from how it starts. */
function asSwitch(aircraft: Aircraft, start: Positions, group: LoadGroup, id: string): LoadSwitch {
  const before = aboard(aircraft, start);
  return {
    id,
    name: group.switches.map(({ name }) => name).join(', '),
    positions: group.states().map((chosen, index) => ({
      id: String(index),
      name: '',
      load: difference(before, aboard(aircraft, { ...start, ...chosen })),
    })),
  };
}

/** What comes aboard less what goes; the bodies that stay cancel exactly. */
function difference(before: readonly Body[], after: readonly Body[]): MassMoment {
  const [stood, stands] = [new Set(before), new Set(after)];
  const sumOf = (list: readonly Body[], without: ReadonlySet<Body>) =>
    momentOf(massSum(list.filter((body) => !without.has(body)).map(({ mass }) => mass)));
  const [came, went] = [sumOf(after, stood), sumOf(before, stands)];
  const moment = (axis: 0 | 1 | 2) => came.momentGmm[axis] - went.momentGmm[axis];
  return { massG: came.massG - went.massG, momentGmm: [moment(0), moment(1), moment(2)] };
}

/** The chosen position of every switch, from the combination of its group. */
function spelledOut(
  chosen: Positions,
  groups: ReadonlyMap<string, readonly Positions[]>,
): Record<string, string> {
  const positions: Record<string, string> = {};
  for (const [id, at] of Object.entries(chosen)) {
    const states = groups.get(id);
    Object.assign(positions, states ? states[Number(at)] : { [id]: at });
  }
  return positions;
}

function mapStates(envelope: LoadEnvelope, change: <T extends LoadState>(state: T) => T): LoadEnvelope {
  return {
    foremost: change(envelope.foremost),
    aftmost: change(envelope.aftmost),
    leftmost: change(envelope.leftmost),
    rightmost: change(envelope.rightmost),
    heaviest: change(envelope.heaviest),
    lightest: change(envelope.lightest),
  };
}
