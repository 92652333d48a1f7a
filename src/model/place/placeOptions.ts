import { poseRotation } from '../../engine/geometry/rotation';
import type { Vec3 } from '../../engine/geometry/types';
import { fitsRegion, sizeOf } from '../../engine/place/regions';
import type { PlaceBox, PlaceOption } from '../../engine/place/types';
import { partBody } from '../airframe/bodies';
import { itemExtent } from '../airframe/extent';
import { poseOf } from '../airframe/poses';
import type { Aircraft, Bay, Part } from '../document/types';
import { hullRail } from './hullRail';
import type { PlaceRule } from './placeSettings';

/** A part's box, square to the axes: middle and size, and where its CG is from the middle, mm. */
export interface PartBox extends PlaceBox {
  readonly centreMm: Vec3;
  readonly sizeMm: Vec3;
  readonly cgFromCentreMm: Vec3;
}

/** The box of a part where it stands. */
export function partBox(part: Part): PartBox {
  const { minMm, maxMm } = itemExtent(part);
  const centreMm: Vec3 = [(minMm[0] + maxMm[0]) / 2, (minMm[1] + maxMm[1]) / 2, (minMm[2] + maxMm[2]) / 2];
  // Something without mass pulls nowhere.
  const cg = partBody(part).mass.cgMm ?? centreMm;
  return {
    minMm,
    maxMm,
    centreMm,
    sizeMm: sizeOf({ minMm, maxMm }),
    cgFromCentreMm: [cg[0] - centreMm[0], cg[1] - centreMm[1], cg[2] - centreMm[2]],
  };
}

/** The part with yaw added about its own origin. */
export const turned = (part: Part, turnDeg: number): Part =>
  turnDeg === 0 ? part : { ...part, yawDeg: turnedYaw(part.yawDeg + turnDeg) };

/** Within ±180°, so that turning again and again stays within what a file may say. */
const turnedYaw = (deg: number) => deg - 360 * Math.round(deg / 360);

/** All ways to place a part under a rule, each as the box it is there. */
export function placeOptions(
  aircraft: Aircraft,
  part: Part,
  rule: PlaceRule,
  mayTurn: boolean,
): PlaceOption[] {
  const turns = mayTurn ? distinctTurns(part) : [0];
  return turns.flatMap((turnDeg) => {
    const box = partBox(turned(part, turnDeg));
    return regionsOf(aircraft, part, rule, box).flatMap(({ id, name, region }) => {
      const option: PlaceOption = {
        id: turnDeg === 0 ? id : `${id} turned ${turnDeg}`,
        name,
        region,
        sizeMm: box.sizeMm,
        cgFromCentreMm: box.cgFromCentreMm,
        turnDeg,
      };
      return fitsRegion(option) ? [option] : [];
    });
  });
}

/** Right angles that make a difference: to the box, or to where its CG is. */
function distinctTurns(part: Part): number[] {
  const seen: PartBox[] = [];
  return [0, 90, 180, 270].filter((turnDeg) => {
    const box = partBox(turned(part, turnDeg));
    const alike = seen.some(
      (other) => near(box.sizeMm, other.sizeMm) && near(box.cgFromCentreMm, other.cgFromCentreMm),
    );
    if (!alike) seen.push(box);
    return !alike;
  });
}

const near = (a: Vec3, b: Vec3) => a.every((value, i) => Math.abs(value - b[i as 0 | 1 | 2]) < 0.1);

interface NamedRegion {
  readonly id: string;
  readonly name: string;
  readonly region: PlaceBox;
}

function regionsOf(aircraft: Aircraft, part: Part, rule: PlaceRule, box: PartBox): NamedRegion[] {
  if (rule.by === 'stay') return [];
  if (rule.by === 'bays') {
    return (aircraft.bays ?? [])
      .filter(({ id }) => rule.bayIds.includes(id))
      .map((bay) => ({ id: `bay ${bay.id}`, name: bay.name, region: bayBox(bay) }));
  }
  const along = (fromMm: number, toMm: number): NamedRegion => ({
    id: 'rail',
    name: 'its rail',
    region: {
      minMm: [fromMm, box.minMm[1], box.minMm[2]],
      maxMm: [toMm, box.maxMm[1], box.maxMm[2]],
    },
  });
  if (rule.stations === 'hull') {
    const rail = hullRail(aircraft, box);
    return rail ? [along(rail.frontMm, rail.rearMm)] : [];
  }
  const at = part.positionMm[0];
  const { fromMm, toMm } = rule.stations;
  return [along(box.minMm[0] + fromMm - at, box.maxMm[0] + toMm - at)];
}

/** The largest box square to the aircraft's axes, in the bay's own proportions along them, that lies inside the bay. */
export function bayBox(bay: Bay): PlaceBox {
  const { positionMm: c } = bay;
  const r = poseRotation(poseOf(bay));
  const own: Vec3 = [bay.lengthMm / 2, bay.widthMm / 2, bay.heightMm / 2];
  // Seen from the aircraft the bay reaches so far along each axis; a box of that shape is shrunk until it is inside.
  const reach = [0, 1, 2].map((row) =>
    own.reduce((sum, half, column) => sum + Math.abs(r[row * 3 + column]!) * half, 0),
  );
  const share = Math.min(
    ...own.map(
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
