import { ballastRange } from '../../engine/balance/ballast';
import type { Vec3 } from '../../engine/geometry/types';
import { commonCapacitiesMah } from '../../engine/power/cells';
import { packEndurance } from '../../engine/power/packEndurance';
import { itemExtent } from '../airframe/extent';
import { balanceAt } from '../balance/balance';
import { addPart, removeItem } from '../document/edit';
import type { Aircraft, Part } from '../document/types';
import { type Given, judgeFully } from '../judgement/judgeFully';
import type { Judgement } from '../judgement/types';
import { withPower } from '../judgement/withPower';
import { drawnPhases, powerPlan } from '../power/draws';
import { isControl, isEngine, lostWithout, type PowerProblem, powerProblems } from '../power/powerProblems';
import { wiringOf } from '../power/wiring';
import { smallestPack, withCapacity } from './packChoice';

/** One way to carry the packs, worked out whole. */
export interface PackWay {
  readonly name: string;
  readonly aircraft: Aircraft;
  readonly judgement: Judgement;
  readonly problems: readonly PowerProblem[];
  /** Ready to fly, tanks full, g. */
  readonly massG: number;
  /** Level, tanks full and dry, mm; null without a CG. */
  readonly cgMm: { readonly full: number; readonly dry: number } | null;
  /** The least ballast that brings it into the band, at one end of the hull; 0 where it needs none, null where none does it. */
  readonly ballast: { readonly massG: number; readonly at: 'nose' | 'tail' | null } | null;
  /** How long the pack that gives up first lasts, s; null where nothing is known or nothing is drawn. */
  readonly lastsS: number | null;
  /** For each pack, what is lost when it fails. */
  readonly falls: readonly { readonly pack: Part; readonly control: boolean; readonly engine: boolean }[];
}

/** The packs as they are, and the other ways that the wiring allows: one for all, and two where one carries control alone. */
export function packWays(aircraft: Aircraft, given: Given): readonly PackWay[] {
  const wiring = wiringOf(aircraft);
  if (!wiring || wiring.packs.length === 0) return [];
  const others = [oneForAll(aircraft), ...wiring.packs.map((pack) => twoForOne(aircraft, pack))];
  return [
    workOut('As it is', aircraft, given),
    ...others.flatMap((way) => (way ? [workOut(way.name, way.aircraft, given)] : [])),
  ];
}

interface Way {
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
  return { name: `${largest.name} for all`, aircraft: sized };
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

const energyWh = ({ power }: Part) => (power?.pack ? power.pack.cells * power.pack.capacityMah : 0);

/** A gap between two packs side by side, mm. */
const BESIDE_MM = 3;

/** Two packs of half the capacity side by side, where one pack alone carries control; null where it does not. */
function twoForOne(aircraft: Aircraft, part: Part): Way | null {
  const wiring = wiringOf(aircraft);
  const pack = part.power?.pack;
  if (!wiring || !pack || !lostWithout(wiring, part.id).some(isControl)) return null;
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
  return { name: `Two packs in place of ${part.name}`, aircraft: { ...added.aircraft, parts } };
}

function workOut(name: string, aircraft: Aircraft, given: Given): PackWay {
  const judgement = withPower(aircraft, judgeFully(aircraft, given));
  const [full, dry] = [1, 0].map((fuelFraction) => balanceAt(aircraft, { fuelFraction, down: given.down }));
  const wiring = wiringOf(aircraft);
  const plan = powerPlan(aircraft);
  const lasting =
    wiring && plan ? [...packEndurance(wiring.net, drawnPhases(plan, wiring.units)).packs.values()] : [];
  const ends = lasting.flatMap(({ emptyAtS }) => emptyAtS ?? []);
  return {
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

/** The least ballast at nose or tail that brings every load state into the band, as the judgement knows them. */
function ballastOf(aircraft: Aircraft, { band, foremost, aftmost }: Judgement): PackWay['ballast'] {
  if (!band || !foremost || !aftmost) return null;
  if (foremost.outsideMm === 0 && aftmost.outsideMm === 0) return { massG: 0, at: null };
  const ends = aircraft.structure.flatMap((piece) =>
    piece.kind === 'fuselage' ? piece.sections.map(({ stationMm }) => stationMm) : [],
  );
  if (ends.length === 0) return null;
  const places = [
    { at: 'nose', stationMm: Math.min(...ends) + FROM_END_MM },
    { at: 'tail', stationMm: Math.max(...ends) - FROM_END_MM },
  ] as const;
  const points = [foremost, aftmost].map((point) => ({
    ...point,
    cgMm: [point.cgMm[0] + point.maybeAftMm, point.cgMm[1], point.cgMm[2]] as Vec3,
  }));
  const needed = places.flatMap(({ at, stationMm }) => {
    const range = ballastRange(points, band, stationMm);
    return range ? [{ massG: Math.ceil(range.leastG), at }] : [];
  });
  return needed.toSorted((a, b) => a.massG - b.massG)[0] ?? null;
}
