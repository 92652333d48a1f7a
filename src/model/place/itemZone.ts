import type { Band } from '../../engine/balance/band';
import { TOUCH_MM } from '../../engine/balance/band';
import type { Stretch, Vec3 } from '../../engine/geometry/types';
import { lastOnly } from '../../engine/memory/memory';
import {
  type AllowedZone,
  allowedZone,
  type ZoneInput,
  type ZoneMargin,
  zoneMargin,
} from '../../engine/place/allowedZone';
import { leadBody } from '../airframe/bodies';
import { itemExtent } from '../airframe/extent';
import { balanceAt } from '../balance/balance';
import { type Item, itemById, placeItem } from '../document/edit';
import { twinOf } from '../document/twins';
import type { Aircraft } from '../document/types';
import { clashesOf } from '../fit/clash';
import { hullRail } from './hullRail';
import { type AircraftCase, aircraftCases, standCases } from './loadCases';
import { obstaclesOf } from './obstacles';
import { bayBox } from './placeOptions';
import { trueStretch } from './trueStretch';

/** The zone of a part or tank, in terms of its own position (its origin), mm. */
export interface ItemZone extends AllowedZone {
  /**
   * The stations of its origin that are allowed at its present height and buttline and where it also has room: within its
   * bay, or the hull around it, and clear of the boxes of everything else, formers and legs among them, legs up and down. From fore to aft; empty when there is none.
   */
  readonly freeStations: readonly { readonly fromMm: number; readonly toMm: number }[];
  /** The margins with its origin at a station and a buttline. */
  marginAt(stationMm: number, buttlineMm: number): ZoneMargin;
  /**
   * The least margin of what is only ever so on the balancing stand, such as a canopy off. It holds nothing up. Null without
   * such a state.
   */
  standAt(stationMm: number, buttlineMm: number): ZoneMargin | null;
}

/**
 * The zone over every load state and the whole burn, everything else where it is: exact, but that with leads on the item
 * its ends may be drawn in a little too far. Null without a band or a mass. It
 * takes the liquid to move with a tank as it stands. Of a mirrored pair both move: stations are exact, and sideways, where a
 * pair moves no CG, it draws the buttlines in too far. The very same answer again for the same aircraft. The band, mm, is
 * the stated one unless another is given, such as an estimated one.
 */
export function itemZone(
  aircraft: Aircraft,
  itemId: string,
  down: Vec3,
  band: Band | null = balanceAt(aircraft, { fuelFraction: 1, down }).band,
): ItemZone | null {
  return lastZone(aircraft, itemId, down, band?.forwardMm ?? null, band?.aftMm ?? null);
}

const lastZone = lastOnly(
  (aircraft: Aircraft, itemId: string, down: Vec3, forwardMm: number | null, aftMm: number | null) =>
    zoneOf(aircraft, itemId, down, forwardMm === null || aftMm === null ? null : { forwardMm, aftMm }),
);

function zoneOf(aircraft: Aircraft, itemId: string, down: Vec3, band: Band | null): ItemZone | null {
  const item = itemById(aircraft, itemId);
  if (!item || !band) return null;
  const [x, y] = item.positionMm;
  // The item is taken out as if all of it stood at its origin: what it adds elsewhere moves along with it, and so does the
  // share of its leads that hangs on it.
  const hanging = leadSharesG(aircraft, item);
  const twin = twinOf(aircraft, itemId);
  const massOf = (state: AircraftCase) => state.massOf(itemId) + (twin ? state.massOf(twin.id) : 0);
  const inputFor = (cases: readonly AircraftCase[]): ZoneInput => {
    const massesG = cases.map((load) =>
      hanging.reduce((sum, { id, shareG }) => (load.massOf(id) > 0 ? sum + shareG : sum), massOf(load)),
    );
    return {
      cases: cases.map(({ id, name, massG, momentGmm }, s) => ({
        id,
        name,
        massG: massG - massesG[s]!,
        momentGmm: [momentGmm[0] - massesG[s]! * x, momentGmm[1] - massesG[s]! * y, momentGmm[2]],
      })),
      massesG,
      band,
      lateralMm: aircraft.lateralToleranceMm > 0 ? aircraft.lateralToleranceMm : null,
    };
  };
  const input = inputFor(aircraftCases(aircraft, down));
  const stand = inputFor(standCases(aircraft, down));
  const zone = allowedZone(input);
  if (!zone) return null;
  const { station } = zone;
  const allowed =
    station.allowed &&
    trueStretch(aircraft, item, { allowed: station.allowed, bestMm: station.bestMm }, { down, band });
  return {
    ...zone,
    station: { ...station, allowed },
    freeStations: allowed ? freeStations(aircraft, item, twin, allowed) : [],
    marginAt: (stationMm, buttlineMm) => zoneMargin(input, stationMm, buttlineMm)!,
    standAt: (stationMm, buttlineMm) => zoneMargin(stand, stationMm, buttlineMm),
  };
}

/** Leads are followed so far along x to see what of them moves along, mm. */
const FOLLOWED_MM = 1;

/**
 * What of each lead moves with an item, as a mass at its origin, g: half of one that runs straight, and of one by waypoints
 * or by the wall as much as its moment changes by, here and now.
 */
function leadSharesG(aircraft: Aircraft, item: Item): { readonly id: string; readonly shareG: number }[] {
  const [x, y, z] = item.positionMm;
  return (aircraft.leads ?? []).flatMap((lead) => {
    if (![lead.from, lead.to].some((end) => end === item.id || end === item.twinId)) return [];
    const momentAt = (by: number) => {
      const { massG, cgMm } = leadBody(placeItem(aircraft, item.id, [x + by, y, z]), lead)?.mass ?? {};
      return massG && cgMm ? massG * cgMm[0] : 0;
    };
    const shareG = (momentAt(FOLLOWED_MM) - momentAt(-FOLLOWED_MM)) / (2 * FOLLOWED_MM);
    return [{ id: lead.id, shareG }];
  });
}

/** Where an item has room, and where the other one of a mirrored pair has it too: both stand at the same station. */
function freeStations(aircraft: Aircraft, item: Item, twin: Item | undefined, allowed: Stretch): Stretch[] {
  const free = freeWithin(aircraft, item, allowed);
  if (!twin) return free;
  return free.flatMap((stretch) => freeWithin(aircraft, twin, stretch));
}

function freeWithin(aircraft: Aircraft, item: Item, allowed: Stretch): Stretch[] {
  const { minMm, maxMm } = itemExtent(item);
  const at = item.positionMm[0];
  const bay = 'bayId' in item ? aircraft.bays?.find(({ id }) => id === item.bayId) : undefined;
  const rail = bay ? null : hullRail(aircraft, { minMm, maxMm });
  const room = bay ? bayBox(bay) : null;
  const front = room ? room.minMm[0] : (rail?.frontMm ?? Number.NEGATIVE_INFINITY);
  const rear = room ? room.maxMm[0] : (rail?.rearMm ?? Number.POSITIVE_INFINITY);
  const first: Stretch = {
    fromMm: Math.max(allowed.fromMm, front + at - minMm[0]),
    toMm: Math.min(allowed.toMm, rear + at - maxMm[0]),
  };
  let free = first.fromMm <= first.toMm ? [first] : [];
  const clashes = new Set(clashesOf(aircraft, item.id).map(({ otherId }) => otherId));
  for (const box of obstaclesOf(aircraft, (id) => id === item.id || id === item.twinId)) {
    // Boxes that overlap where the items themselves do not clash say nothing.
    const overlap = ([0, 1, 2] as const).every(
      (axis) => minMm[axis] < box.maxMm[axis] - TOUCH_MM && box.minMm[axis] < maxMm[axis] - TOUCH_MM,
    );
    if (overlap && !clashes.has(box.id) && !clashes.has(box.id.split(' ')[1] ?? '')) continue;
    const beside = ([1, 2] as const).some(
      (axis) => minMm[axis] >= box.maxMm[axis] - TOUCH_MM || box.minMm[axis] >= maxMm[axis] - TOUCH_MM,
    );
    if (beside) continue;
    const taken: Stretch = { fromMm: box.minMm[0] - (maxMm[0] - at), toMm: box.maxMm[0] + (at - minMm[0]) };
    free = free.flatMap((stretch) => cut(stretch, taken));
  }
  return free;
}

/** What is left of a stretch without the inside of another. */
const cut = (stretch: Stretch, taken: Stretch): Stretch[] =>
  taken.toMm <= stretch.fromMm || taken.fromMm >= stretch.toMm
    ? [stretch]
    : [
        { fromMm: stretch.fromMm, toMm: taken.fromMm },
        { fromMm: taken.toMm, toMm: stretch.toMm },
      ].filter(({ fromMm, toMm }) => fromMm <= toMm);
