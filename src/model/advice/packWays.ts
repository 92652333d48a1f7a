import { ballastRange } from '../../engine/balance/ballast';
import type { Vec3 } from '../../engine/geometry/types';
import { commonCapacitiesMah } from '../../engine/power/cells';
import { itemExtent } from '../airframe/extent';
import { balanceAt } from '../balance/balance';
import { addPart, removeItem } from '../document/edit';
import type { Aircraft, Part } from '../document/types';
import { type Given, judgeFully } from '../judgement/judgeFully';
import type { Judgement } from '../judgement/types';
import { withPower } from '../judgement/withPower';
import { powerPlan } from '../power/draws';
import { lostWithout } from '../power/flows';
import { withCapacity } from '../power/otherPacks';
import { enduranceOf, isControl, isEngine, type PowerProblem, powerProblems } from '../power/powerProblems';
import { packSource, wiringOf } from '../power/wiring';
import { smallestPack } from './packChoice';

/** One way to carry the packs, worked out whole. */
export interface PackWay {
  readonly id: string;
  readonly name: string;
  readonly aircraft: Aircraft;
  readonly judgement: Judgement;
  readonly problems: readonly PowerProblem[];
  /** Ready to fly, tanks full, g. */
  readonly massG: number;
  /** Level, tanks full and dry, mm; null without a CG. */
  readonly cgMm: { readonly full: number; readonly dry: number } | null;
  readonly ballast: NeededBallast;
  /** How long the pack that gives up first lasts, s; null where nothing is known or nothing is drawn. */
  readonly lastsS: number | null;
  /** For each pack, what is lost when it fails. */
  readonly falls: readonly { readonly pack: Part; readonly control: boolean; readonly engine: boolean }[];
}

/** The least ballast that brings it into the band, whole g, at one end of the hull; why there is no figure where there is none. */
export type NeededBallast =
  | { readonly massG: number; readonly at: 'nose' | 'tail' }
  | 'none'
  | 'none does it'
  | 'not known';

/** The packs as they are, and the other ways that the wiring allows: one for all, and two where one carries control alone. */
export function packWays(aircraft: Aircraft, given: Given): readonly PackWay[] {
  const wiring = wiringOf(aircraft);
  if (!wiring || wiring.packs.length === 0) return [];
  const others = [oneForAll(aircraft), ...wiring.packs.map((pack) => twoForOne(aircraft, pack))];
  return [
    workOut({ id: 'as-it-is', name: 'As it is', aircraft }, given),
    ...others.flatMap((way) => (way ? [workOut(way, given)] : [])),
  ];
}

interface Way {
  readonly id: string;
  readonly name: string;
  readonly aircraft: Aircraft;
}

/** Everything fed by the largest of several packs, no larger than it must be. */
function oneForAll(aircraft: Aircraft): Way | null {
  const packs = wiringOf(aircraft)?.packs ?? [];
  const [largest] = packs.toSorted((a, b) => energyWh(b) - energyWh(a));
  if (!largest || packs.length < 2) return null;
  let changed = aircraft;
  for (const pack of packs) {
    if (pack === largest) continue;
    changed = { ...changed, parts: changed.parts.map((part) => fedInstead(part, pack.id, largest.id)) };
    changed = removeItem(changed, pack.id);
  }
  const sized = smallestPack(changed, largest.id)?.aircraft ?? changed;
  return { id: `all ${largest.id}`, name: `${largest.name} for all`, aircraft: sized };
}

/** Fed by another pack in place of one; once only where both fed it. */
function fedInstead(part: Part, gone: string, instead: string): Part {
  const fedBy = part.power?.fedBy;
  if (!fedBy?.some(({ from }) => from === gone)) return part;
  const rest = fedBy.filter(({ from }) => from !== gone);
  const before = fedBy.find(({ from }) => from === gone);
  const again = rest.some(({ from }) => from === instead) || !before ? [] : [{ ...before, from: instead }];
  return { ...part, power: { ...part.power, fedBy: [...rest, ...again] } };
}

function energyWh({ id, power }: Part): number {
  return power?.pack ? (packSource(id, power.pack).nominalV * power.pack.capacityMah) / 1000 : 0;
}

/** A gap between two packs side by side, mm. */
const BESIDE_MM = 3;

/** Two packs of half the capacity side by side, where one pack alone carries control; null where it does not, or is one of a pair. */
function twoForOne(aircraft: Aircraft, part: Part): Way | null {
  const wiring = wiringOf(aircraft);
  const pack = part.power?.pack;
  if (!wiring || !pack || part.twinId !== undefined || !lostWithout(wiring, part.id).some(isControl))
    return null;
  const half = commonCapacitiesMah.find((mah) => mah >= pack.capacityMah / 2) ?? pack.capacityMah / 2;
  const halved = withCapacity(aircraft, part, pack, half);
  const first = halved.parts.find(({ id }) => id === part.id);
  if (!first) return null;
  const { minMm, maxMm } = itemExtent(first);
  const asideMm = (maxMm[1] - minMm[1] + BESIDE_MM) / 2;
  const at = (sideMm: number): Vec3 => [
    first.positionMm[0],
    first.positionMm[1] + sideMm,
    first.positionMm[2],
  ];
  const { id: _id, ...twin } = first;
  const added = addPart(halved, { ...twin, name: `${part.name} 2`, positionMm: at(asideMm) });
  const parts = added.aircraft.parts.map((other): Part => {
    if (other.id === part.id) return { ...other, positionMm: at(-asideMm) };
    const supply = other.power?.fedBy?.find(({ from }) => from === part.id);
    if (!supply) return other;
    return {
      ...other,
      power: { ...other.power, fedBy: [...(other.power?.fedBy ?? []), { ...supply, from: added.id }] },
    };
  });
  const name = `Two packs in place of ${part.name}`;
  return { id: `two ${part.id}`, name, aircraft: { ...added.aircraft, parts } };
}

function workOut({ id, name, aircraft }: Way, given: Given): PackWay {
  const judgement = withPower(aircraft, judgeFully(aircraft, given));
  const [full, dry] = [1, 0].map((fuelFraction) => balanceAt(aircraft, { fuelFraction, down: given.down }));
  const wiring = wiringOf(aircraft);
  const plan = powerPlan(aircraft);
  const endurance = wiring && plan && enduranceOf(wiring, plan);
  const ends = [...(endurance?.packs.values() ?? [])].flatMap(({ emptyAtS }) => emptyAtS ?? []);
  return {
    id,
    name,
    aircraft,
    judgement,
    problems: powerProblems(aircraft) ?? [],
    massG: full?.massG ?? Number.NaN,
    cgMm: full?.cgMm && dry?.cgMm ? { full: full.cgMm[0], dry: dry.cgMm[0] } : null,
    ballast: ballastOf(aircraft, judgement),
    lastsS: ends.length > 0 ? Math.min(...ends) : null,
    falls: (wiring?.packs ?? []).map((pack) => {
      const lost = wiring ? lostWithout(wiring, pack.id) : [];
      return { pack, control: lost.some(isControl), engine: lost.some(isEngine) };
    }),
  };
}

/** How far in from the end of the hull ballast is taken to stand, mm. */
const FROM_END_MM = 30;

/**
 * The least ballast at nose or tail that brings every load state looked at into the band, or the one that its limits were
 * stated for: a heavy state that is hardly outside may ask for more than a light one far outside.
 */
function ballastOf(aircraft: Aircraft, judgement: Judgement): NeededBallast {
  const { band, foremost, aftmost, statedFor, states } = judgement;
  if (!band || !foremost || !aftmost) return 'not known';
  const everywhere = [
    foremost,
    aftmost,
    ...states.flatMap((state) => [state.foremost, state.aftmost, state.full, state.dry]),
  ];
  const points = (statedFor ? [statedFor] : everywhere).map((point) => ({
    ...point,
    cgMm: [point.cgMm[0] + point.maybeAftMm, point.cgMm[1], point.cgMm[2]] as Vec3,
  }));
  if (points.every(({ outsideMm }) => outsideMm === 0)) return 'none';
  const ends = aircraft.structure.flatMap((piece) =>
    piece.kind === 'fuselage' ? piece.sections.map(({ stationMm }) => stationMm) : [],
  );
  if (ends.length === 0) return 'not known';
  const places = [
    { at: 'nose', stationMm: Math.min(...ends) + FROM_END_MM },
    { at: 'tail', stationMm: Math.max(...ends) - FROM_END_MM },
  ] as const;
  const needed = places.flatMap(({ at, stationMm }) => {
    const range = ballastRange(points, band, stationMm);
    if (!range) return [];
    const massG = Math.ceil(range.leastG);
    return massG <= range.mostG ? [{ massG, at }] : [];
  });
  return needed.toSorted((a, b) => a.massG - b.massG)[0] ?? 'none does it';
}
