import type { Vec3 } from '../../engine/geometry/types';
import { lastOnly } from '../../engine/memory/memory';
import {
  type AllowedZone,
  allowedZone,
  type ZoneInput,
  type ZoneMargin,
  zoneMargin,
} from '../../engine/place/allowedZone';
import { itemExtent } from '../airframe/extent';
import { balanceAt } from '../balance/balance';
import { type Item, itemById } from '../document/edit';
import type { Aircraft } from '../document/types';
import { hullRail } from './hullRail';
import { aircraftCases } from './loadCases';
import { bayBox } from './placeOptions';

/** The zone of a part or tank, in terms of its own position (its origin), mm. */
export interface ItemZone extends AllowedZone {
  /**
   * The stations of its origin that are allowed at its present height and buttline and where it also has room: within its
   * bay, or the hull around it, and clear of the boxes of everything else. From fore to aft; empty when there is none.
   */
  readonly freeStations: readonly { readonly fromMm: number; readonly toMm: number }[];
  /** The margins with its origin at a station and a buttline. */
  marginAt(stationMm: number, buttlineMm: number): ZoneMargin;
}

/**
 * The exact zone over every load state and the whole burn, everything else where it is. Null without a band or a mass. It
 * takes the liquid to move with a tank as it stands. The very same answer again for the same aircraft.
 */
export const itemZone = lastOnly(zoneOf);

function zoneOf(aircraft: Aircraft, itemId: string, down: Vec3): ItemZone | null {
  const item = itemById(aircraft, itemId);
  const { band } = balanceAt(aircraft, { fuelFraction: 1, down });
  if (!item || !band) return null;
  const [x, y] = item.positionMm;
  // The item is taken out as if all of it stood at its origin: what it adds elsewhere moves along with it.
  const cases = aircraftCases(aircraft, down);
  const massesG = cases.map((one) => one.massOf(itemId));
  const input: ZoneInput = {
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
  const zone = allowedZone(input);
  if (!zone) return null;
  return {
    ...zone,
    freeStations: zone.station.allowed ? freeWithin(aircraft, item, zone.station.allowed) : [],
    marginAt: (stationMm, buttlineMm) => zoneMargin(input, stationMm, buttlineMm)!,
  };
}

interface Stretch {
  readonly fromMm: number;
  readonly toMm: number;
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
  for (const other of [...aircraft.parts, ...aircraft.tanks]) {
    if (other.id === item.id) continue;
    const box = itemExtent(other);
    const beside = ([1, 2] as const).some(
      (axis) => minMm[axis] >= box.maxMm[axis] - 1e-9 || box.minMm[axis] >= maxMm[axis] - 1e-9,
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
