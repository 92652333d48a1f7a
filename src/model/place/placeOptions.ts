import { solidOf } from '../../engine/fit/solid';
import { poseRotation } from '../../engine/geometry/rotation';
import type { Vec3 } from '../../engine/geometry/types';
import { fitsRegion, sizeOf } from '../../engine/place/regions';
import { SAME_MM } from '../../engine/place/tolerances';
import type { PlaceBox, PlaceOption } from '../../engine/place/types';
import { partBody, tankBody } from '../airframe/bodies';
import { itemExtent } from '../airframe/extent';
import { poseOf } from '../airframe/poses';
import { hulls, hullsAround, itemShape, itemSolid } from '../airframe/solids';
import type { Item } from '../document/edit';
import type { Aircraft, Bay } from '../document/types';
import { placeFit } from '../fit/placeFit';
import { bayFloorMm } from './bayFloor';
import { hullRooms, hullStations, roomsInHulls } from './hullRoom';
import { leadEndsOn } from './placeLeads';
import type { PlaceRule } from './placeSettings';
import { type Turn, turned, turnsOf } from './turns';

/** A part's box, square to the axes: middle and size, and where its CG is from the middle, mm. */
export interface PartBox extends PlaceBox {
  readonly centreMm: Vec3;
  readonly sizeMm: Vec3;
  readonly cgFromCentreMm: Vec3;
}

/** The box of a part or tank where it stands. A tank's CG is that of its shell: what is in it moves along. */
export function partBox(item: Item): PartBox {
  const { minMm, maxMm } = itemExtent(item);
  const centreMm: Vec3 = [(minMm[0] + maxMm[0]) / 2, (minMm[1] + maxMm[1]) / 2, (minMm[2] + maxMm[2]) / 2];
  const body = 'feeds' in item ? tankBody(item) : partBody(item);
  // Something without mass pulls nowhere.
  const cg = body.mass.cgMm ?? centreMm;
  return {
    minMm,
    maxMm,
    centreMm,
    sizeMm: sizeOf({ minMm, maxMm }),
    cgFromCentreMm: [cg[0] - centreMm[0], cg[1] - centreMm[1], cg[2] - centreMm[2]],
  };
}

/** Air under a part that stands on something: the clearance that is kept all round. */
const UNDER_MM = 1;
/** What stands so near to the floor, mm, stands on it. */
const PACKING_MM = 4;

/** All ways to place a part or tank under a rule, each as the box it is there, turned as it says that it may be. */
export const placeOptions = (aircraft: Aircraft, item: Item, rule: PlaceRule): PlaceOption[] =>
  distinctTurns(aircraft, item).flatMap(({ turn, there, box, leadEndsMm }) =>
    regionsTurned(aircraft, item, there, rule).flatMap(({ id, name, region }) => {
      const option: PlaceOption = {
        id: turn.angles ? `${id} ${turn.name}` : id,
        name,
        region,
        sizeMm: box.sizeMm,
        cgFromCentreMm: box.cgFromCentreMm,
        leadEndsMm,
        ...(turn.angles ? { turnedTo: turn.angles } : {}),
      };
      return fitsRegion(option) ? [option] : [];
    }),
  );

/**
 * The regions of a part that is turned: standing as high as it stood, or where there is no room so, about its origin. Along
 * the inside of a wing only where no bay and no hull has room at either height.
 */
function regionsTurned(aircraft: Aircraft, item: Item, there: Item, rule: PlaceRule): NamedRegion[] {
  const [x, y, z] = there.positionMm;
  const byMm = itemExtent(item).minMm[2] - itemExtent(there).minMm[2];
  const raised = byMm === 0 ? [] : [{ ...there, positionMm: [x, y, z + byMm] as const }];
  const heights: readonly Item[] = [...raised, there];
  const first = (regionsAt: (at: Item) => NamedRegion[]) =>
    heights.reduce<NamedRegion[]>((found, at) => (found.length > 0 ? found : regionsAt(at)), []);
  const regions = first((at) => regionsOf(aircraft, at, rule, partBox(at)));
  if (regions.length > 0 || rule.by !== 'rail' || rule.stations !== 'hull') return regions;
  return first((at) => railInWing(aircraft, at, partBox(at)));
}

/** Where it stands, as the one place it has. */
export function itsPlace(aircraft: Aircraft, item: Item, id = 'here'): PlaceOption {
  const { minMm, maxMm, sizeMm, cgFromCentreMm, centreMm } = partBox(item);
  const region = { minMm, maxMm };
  return {
    id,
    name: 'its place',
    region,
    sizeMm,
    cgFromCentreMm,
    leadEndsMm: leadEndsOn(aircraft, item, centreMm),
  };
}

/** A part turned, with what that makes of it. */
interface Turned {
  readonly turn: Turn;
  readonly there: Item;
  readonly box: PartBox;
  readonly leadEndsMm: Readonly<Record<string, Vec3>>;
}

/** Turns that make a difference: to the box, to where its CG is, or to where its leads leave it. */
function distinctTurns(aircraft: Aircraft, item: Item): Turned[] {
  const seen: Turned[] = [];
  for (const turn of turnsOf(item)) {
    const there = turned(item, turn.angles);
    const box = partBox(there);
    const leadEndsMm = leadEndsOn(aircraft, there, box.centreMm);
    const alike = seen.some(
      (other) =>
        near(box.sizeMm, other.box.sizeMm) &&
        near(box.cgFromCentreMm, other.box.cgFromCentreMm) &&
        Object.entries(leadEndsMm).every(([id, end]) => near(end, other.leadEndsMm[id]!)),
    );
    if (!alike) seen.push({ turn, there, box, leadEndsMm });
  }
  return seen;
}

const near = (a: Vec3, b: Vec3) => a.every((value, i) => Math.abs(value - b[i as 0 | 1 | 2]) < 0.1);

interface NamedRegion {
  readonly id: string;
  readonly name: string;
  readonly region: PlaceBox;
}

function regionsOf(aircraft: Aircraft, item: Item, rule: PlaceRule, box: PartBox): NamedRegion[] {
  if (rule.by === 'stay') return [];
  if (rule.by === 'bays') {
    return (aircraft.bays ?? [])
      .filter(({ id }) => rule.bayIds.includes(id))
      .flatMap((bay) => regionsInBay(aircraft, bay, box));
  }
  if (rule.stations !== 'hull') return [railBetween(item, rule.stations, box)];
  return regionsInHull(aircraft, item, box);
}

/** What of a bay lies in the hull, standing on its floor. A bay in no hull is taken as it is. */
function regionsInBay(aircraft: Aircraft, bay: Bay, box: PartBox): NamedRegion[] {
  const { sizeMm } = box;
  const { minMm, maxMm } = bayBox(bay);
  const named = (region: PlaceBox, k: number): NamedRegion => ({
    id: k === 0 ? `bay ${bay.id}` : `bay ${bay.id} room ${k + 1}`,
    name: bay.name,
    region,
  });
  const inHull = hulls(aircraft).some((hull) => {
    const { fromMm, toMm } = hullStations(hull);
    return minMm[0] < toMm && maxMm[0] > fromMm && roughlyAround(hull.pose.positionMm[1], minMm[1], maxMm[1]);
  });
  // In the open nothing is known to stand on but the bay's own side.
  let floorMm = bayFloorMm(aircraft, bay, { minMm, maxMm }) + (inHull ? UNDER_MM : 0);
  // One that stands there keeps its tape and its thickness of foam.
  const standsThere = ([0, 1] as const).every((axis) => {
    return box.centreMm[axis] > minMm[axis] && box.centreMm[axis] < maxMm[axis];
  });
  if (standsThere && Math.abs(box.minMm[2] - floorMm) <= PACKING_MM) floorMm = box.minMm[2];
  const within = {
    stationMm: { fromMm: minMm[0], toMm: maxMm[0] },
    buttlineMm: { fromMm: minMm[1], toMm: maxMm[1] },
  };
  // Where the hull is too narrow down there, it stands on something higher: as low as it goes.
  for (; floorMm + sizeMm[2] <= maxMm[2] + SAME_MM; floorMm += 2) {
    const height = { fromMm: floorMm, toMm: floorMm + sizeMm[2] };
    const rooms = inHull
      ? roomsInHulls(aircraft, { lengthMm: sizeMm[0], widthMm: sizeMm[1], waterlineMm: height, within })
      : [within];
    if (rooms.length > 0) {
      return rooms.map(({ stationMm: x, buttlineMm: y }, k) =>
        named({ minMm: [x.fromMm, y.fromMm, height.fromMm], maxMm: [x.toMm, y.toMm, height.toMm] }, k),
      );
    }
  }
  return [];
}

const roughlyAround = (middleMm: number, low: number, high: number) =>
  middleMm > low - 50 && middleMm < high + 50;

/** Along and across at its own height, inside the hulls that hold it. */
function regionsInHull(aircraft: Aircraft, item: Item, { minMm, maxMm, sizeMm }: PartBox): NamedRegion[] {
  return hullsAround(aircraft, itemSolid(item)).flatMap((hull) =>
    hullRooms(hull, {
      lengthMm: sizeMm[0],
      widthMm: sizeMm[1],
      waterlineMm: { fromMm: minMm[2], toMm: maxMm[2] },
      within: {
        stationMm: hullStations(hull),
        buttlineMm: { fromMm: Number.NEGATIVE_INFINITY, toMm: Number.POSITIVE_INFINITY },
      },
    }).map(({ stationMm: x, buttlineMm: y }, k) => ({
      id: k === 0 ? 'rail' : `rail ${k + 1}`,
      name: 'its rail',
      region: { minMm: [x.fromMm, y.fromMm, minMm[2]] as const, maxMm: [x.toMm, y.toMm, maxMm[2]] as const },
    })),
  );
}

/** A wing is felt along so many mm at a time, and no farther than this either way. */
const FELT_MM = 4;
const FARTHEST_MM = 400;

/** Along x at its own height and buttline, as far as it stays inside a wing: in its own place there at least. */
function railInWing(aircraft: Aircraft, item: Item, { minMm, maxMm }: PartBox): NamedRegion[] {
  const [x, y, z] = item.positionMm;
  const shape = itemShape(item);
  const fitsAt = (by: number) => {
    const solid = solidOf({ shape, pose: { ...poseOf(item), positionMm: [x + by, y, z] } });
    const place = placeFit(aircraft.structure, solid);
    return place !== null && place.where !== 'outside' && place.outMm === 0;
  };
  if (!fitsAt(0)) return [];
  const reach = (way: 1 | -1) => {
    let by = 0;
    while (by < FARTHEST_MM && fitsAt(way * (by + FELT_MM))) by += FELT_MM;
    return by;
  };
  const [ahead, behind] = [reach(-1), reach(1)];
  if (ahead + behind === 0) return [];
  const region = {
    minMm: [minMm[0] - ahead, minMm[1], minMm[2]] as const,
    maxMm: [maxMm[0] + behind, maxMm[1], maxMm[2]] as const,
  };
  return [{ id: 'rail', name: 'its rail', region }];
}

function railBetween(
  { positionMm }: Item,
  { fromMm, toMm }: { readonly fromMm: number; readonly toMm: number },
  { minMm, maxMm }: PartBox,
): NamedRegion {
  const at = positionMm[0];
  return {
    id: 'rail',
    name: 'its rail',
    region: {
      minMm: [minMm[0] + fromMm - at, minMm[1], minMm[2]],
      maxMm: [maxMm[0] + toMm - at, maxMm[1], maxMm[2]],
    },
  };
}

/** The largest box square to the aircraft's axes, in the bay's own proportions along them, that lies inside the bay. */
export function bayBox(bay: Bay): PlaceBox {
  const { positionMm: c } = bay;
  const r = poseRotation(poseOf(bay));
  const half: Vec3 = [bay.lengthMm / 2, bay.widthMm / 2, bay.heightMm / 2];
  // Seen from the aircraft the bay reaches so far along each axis; a box of that shape is shrunk until it is inside.
  const reach = [0, 1, 2].map((row) =>
    half.reduce((sum, half, column) => sum + Math.abs(r[row * 3 + column]!) * half, 0),
  );
  const share = Math.min(
    ...half.map(
      (half, column) => half / reach.reduce((sum, far, row) => sum + Math.abs(r[row * 3 + column]!) * far, 0),
    ),
  );
  const corner = (side: 1 | -1): Vec3 => [
    c[0] + side * share * reach[0]!,
    c[1] + side * share * reach[1]!,
    c[2] + side * share * reach[2]!,
  ];
  return { minMm: corner(-1), maxMm: corner(1) };
}
