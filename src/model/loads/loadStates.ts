import {
  type LoadEnvelope,
  type LoadExtreme,
  type LoadState,
  loadEnvelope,
} from '../../engine/balance/loadStates';
import type { Vec3 } from '../../engine/geometry/types';
import { feedBreaks } from '../../engine/liquid/feedBreaks';
import type { Plumbing } from '../../engine/liquid/plumbing';
import { massSum } from '../../engine/mass/massProperties';
import type { MassProperties } from '../../engine/mass/types';
import { bodies } from '../airframe/bodies';
import { itemExtent } from '../airframe/extent';
import { type AircraftSwitch, flyingSwitches, inLoadState, type Positions } from '../airframe/loadSwitches';
import { liquidMoment, liquidStatesAt, plumbingOf } from '../balance/liquidTable';
import type { Aircraft } from '../document/types';

export type { LoadEnvelope, LoadExtreme, LoadState } from '../../engine/balance/loadStates';

/** How closely the extremes are certified, mm: a tenth of what the verdict shows. */
const TOLERANCE_MM = 0.1;

let kept: { aircraft: Aircraft; down: Vec3; envelope: LoadEnvelope | null } | null = null;

/**
 * The extremes of CG and mass over every combination of the switches and all fuel, with liquid settled to one
 * attitude; null where a load state weighs nothing. Takes a millisecond or several, so it is asked for at rest;
 * the very same answer again for the same aircraft and attitude.
 */
export function loadEnvelopeOf(aircraft: Aircraft, down: Vec3): LoadEnvelope | null {
  if (kept?.aircraft !== aircraft || kept.down !== down) {
    kept = { aircraft, down, envelope: envelopeOf(aircraft, down) };
  }
  return kept.envelope;
}

/**
 * Switches that change what is in the tanks change the whole burn, so the others are searched once for each of
 * their combinations; the rest only add and take bodies, and the engine needs no enumeration for them.
 */
function envelopeOf(aircraft: Aircraft, down: Vec3): LoadEnvelope | null {
  const switches = flyingSwitches(aircraft);
  const tankIds = new Set(aircraft.tanks.map(({ id }) => id));
  const ofTanks = switches.filter((one) => changesTanks(one, tankIds));
  const ofBodies = switches.filter((one) => !ofTanks.includes(one));
  let whole: LoadEnvelope | null = null;
  for (const positions of combinations(ofTanks)) {
    const own = withBodiesSwitched(aircraft, positions, ofBodies, down);
    if (!own) return null;
    whole = whole ? outermost(whole, own) : own;
  }
  return whole;
}

/** Whether any position of a switch leaves out or empties a tank. */
export const changesTanks = ({ positions }: AircraftSwitch, tankIds: ReadonlySet<string>): boolean =>
  positions.some(({ without, empty }) => empty.length > 0 || without.some((id) => tankIds.has(id)));

function combinations(switches: readonly AircraftSwitch[]): readonly Positions[] {
  return switches.reduce<readonly Positions[]>(
    (all, { id, positions }) =>
      all.flatMap((chosen) => positions.map((one) => ({ ...chosen, [id]: one.id }))),
    [{}],
  );
}

function withBodiesSwitched(
  aircraft: Aircraft,
  positions: Positions,
  ofBodies: readonly AircraftSwitch[],
  down: Vec3,
): LoadEnvelope | null {
  const state = inLoadState(aircraft, positions);
  const things = ofBodies.map((one) => thingsOf(state, one));
  const switched = new Set(things.flat());
  const stays = ({ id }: { readonly id: string }) => !switched.has(id);
  const fixed = bodies(
    { ...state, structure: state.structure.filter(stays), parts: state.parts.filter(stays) },
    aircraft,
  );
  const always = new Set(fixed.map(({ id }) => id));
  const plumbed = plumbingOf(state);
  const found = loadEnvelope({
    fixed: massSum(fixed.map(({ mass }) => mass)),
    switches: ofBodies.map(({ id, name, positions: own }, index) => ({
      id,
      name,
      positions: own.map((position) => ({
        id: position.id,
        name: position.name,
        mass: massOf(aircraft, { ...positions, [id]: position.id }, things[index] ?? [], always),
      })),
    })),
    ...burnOf(state, plumbed, down),
    toleranceMm: TOLERANCE_MM,
  });
  return found && mapStates(found, (one) => ({ ...one, positions: { ...positions, ...one.positions } }));
}

/** Ids of everything that a switch is about. */
function thingsOf({ structure }: Aircraft, { positions }: AircraftSwitch): readonly string[] {
  const named = positions.flatMap(({ without }) => without);
  const legs = positions.some(({ legsUp }) => legsUp)
    ? structure.flatMap((element) => (element.kind === 'leg' && element.retract ? [element.id] : []))
    : [];
  return [...new Set([...named, ...legs])];
}

/** What a switch puts aboard in one of its positions: the things themselves, as shapes, and leads that come with them. */
function massOf(
  aircraft: Aircraft,
  positions: Positions,
  things: readonly string[],
  always: ReadonlySet<string>,
): MassProperties {
  const own = bodies(inLoadState({ ...aircraft, bareAirframe: null }, positions)).filter(
    ({ id, sourceId, group }) => things.includes(sourceId) || (group === 'lead' && !always.has(id)),
  );
  return massSum(own.map(({ mass }) => mass));
}

/** The liquid over the burn as the engine's search takes it. */
function burnOf({ tanks }: Aircraft, plumbed: Plumbing | null, down: Vec3) {
  const liquidAt = (fraction: number) =>
    liquidMoment(fraction, plumbed ? liquidStatesAt(plumbed, fraction, down) : []);
  if (!plumbed || !(plumbed.usableMl > 0)) return { liquidAt, breaks: [1] };
  const drawn = feedBreaks(plumbed, down).map((ml) => 1 - ml / plumbed.usableMl);
  const boxes = tanks.map(itemExtent);
  const bound = (pick: (...values: number[]) => number, end: 'minMm' | 'maxMm', axis: 0 | 1 | 2) =>
    pick(...boxes.map((box) => box[end][axis]));
  const corner = (pick: (...values: number[]) => number, end: 'minMm' | 'maxMm'): Vec3 => [
    bound(pick, end, 0),
    bound(pick, end, 1),
    bound(pick, end, 2),
  ];
  return {
    liquidAt,
    breaks: [1, 0, ...drawn.map((fraction) => Math.min(1, Math.max(0, fraction)))],
    tanksMm: { min: corner(Math.min, 'minMm'), max: corner(Math.max, 'maxMm') },
  };
}

/** The outer of two envelopes, state by state; the first where they tie. */
function outermost(a: LoadEnvelope, b: LoadEnvelope): LoadEnvelope {
  const farther =
    (pick: (one: LoadState) => number) => (key: 'foremost' | 'aftmost' | 'leftmost' | 'rightmost') =>
      pick(b[key]) > pick(a[key]) ? b[key] : a[key];
  const loosest = (chosen: LoadExtreme, other: LoadExtreme): LoadExtreme => ({
    ...chosen,
    withinMm:
      chosen.withinMm === null || other.withinMm === null ? null : Math.max(chosen.withinMm, other.withinMm),
  });
  const both = (key: 'foremost' | 'aftmost' | 'leftmost' | 'rightmost', pick: (one: LoadState) => number) => {
    const chosen = farther(pick)(key);
    return loosest(chosen, chosen === a[key] ? b[key] : a[key]);
  };
  return {
    foremost: both('foremost', ({ cgMm }) => -cgMm[0]),
    aftmost: both('aftmost', ({ cgMm }) => cgMm[0]),
    leftmost: both('leftmost', ({ cgMm }) => -cgMm[1]),
    rightmost: both('rightmost', ({ cgMm }) => cgMm[1]),
    heaviest: b.heaviest.massG > a.heaviest.massG ? b.heaviest : a.heaviest,
    lightest: b.lightest.massG < a.lightest.massG ? b.lightest : a.lightest,
  };
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
