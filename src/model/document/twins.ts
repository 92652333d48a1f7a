import type { Vec3 } from '../../engine/geometry/types';
import { mirroredShape } from '../../engine/mass/mirroredShape';
import type { Tensor } from '../../engine/mass/types';
import type { Aircraft, Part, TankItem } from './types';

/**
 * A mirrored pair: two parts or two tanks, each the image of the other in the plane of symmetry. What is true here is
 * the pair's; name, notes, bay, plumbing and a person's own keys are each one's own. The compiler asks about a new field.
 */
const sharedByParts = sharedOf<Part>({
  id: false,
  name: false,
  role: true,
  shape: true,
  massG: true,
  plusMinusG: true,
  plusMinusMm: true,
  inertiaGmm2: true,
  positionMm: true,
  yawDeg: true,
  pitchDeg: true,
  rollDeg: true,
  locked: true,
  inTheOpen: true,
  bayId: false,
  mayTurn: false,
  gyro: true,
  massFrom: true,
  sizeFrom: true,
  twinId: false,
  weighedOn: true,
  notes: false,
  power: false,
});

const sharedByTanks = sharedOf<TankItem>({
  id: false,
  name: false,
  shape: true,
  positionMm: true,
  yawDeg: true,
  pitchDeg: true,
  rollDeg: true,
  mirrored: true,
  emptyMassG: true,
  plusMinusG: true,
  plusMinusMm: true,
  startMl: true,
  unusableMl: true,
  feeds: false,
  rank: false,
  locked: true,
  inTheOpen: true,
  massFrom: true,
  sizeFrom: true,
  twinId: false,
  weighedOn: true,
});

function sharedOf<T>(shared: Readonly<Record<keyof T, boolean>>): readonly (keyof T)[] {
  return (Object.keys(shared) as (keyof T)[]).filter((field) => shared[field]);
}

/** Left for right: of what is 0, 0 and not −0. */
const flipped = (value: number): number => 0 - value;

const flippedAcross = ([x, y, z]: Vec3): Vec3 => [x, flipped(y), z];

/** The tensor of the mirror image, y → −y: the two products that y is in change sign. */
const mirroredTensor = (tensor: Tensor): Tensor => ({
  ...tensor,
  xy: flipped(tensor.xy),
  yz: flipped(tensor.yz),
});

/** A part's mirror image in the plane of symmetry: shape, inertia, place and turn. */
export const mirroredPart = <P extends Part>(part: P): P => ({
  ...part,
  shape: mirroredShape(part.shape),
  ...(part.inertiaGmm2 && { inertiaGmm2: mirroredTensor(part.inertiaGmm2) }),
  positionMm: flippedAcross(part.positionMm),
  yawDeg: flipped(part.yawDeg),
  rollDeg: flipped(part.rollDeg),
});

/** A tank's mirror image; its shape is turned by its own mark. */
export const mirroredTank = <T extends TankItem>(tank: T): T => ({
  ...tank,
  positionMm: flippedAcross(tank.positionMm),
  yawDeg: flipped(tank.yawDeg),
  rollDeg: flipped(tank.rollDeg),
  mirrored: !tank.mirrored,
});

/** What was changed in one of a pair, carried over to the other; all else of the other one stays the very same. */
export const partFollowing = (twin: Part, before: Part, after: Part): Part =>
  following(twin, before, after, sharedByParts, mirroredPart);

export const tankFollowing = (twin: TankItem, before: TankItem, after: TankItem): TankItem =>
  following(twin, before, after, sharedByTanks, mirroredTank);

function following<T extends Part | TankItem>(
  twin: T,
  before: T,
  after: T,
  shared: readonly (keyof T)[],
  mirrored: (item: T) => T,
): T {
  const changed = shared.filter((key) => before[key] !== after[key]);
  return changed.length === 0 ? twin : imageFor(twin, after, changed, mirrored);
}

/** A thing with some of its fields as the mirror image of another has them. */
function imageFor<T extends Part | TankItem>(
  twin: T,
  of: T,
  fields: readonly (keyof T)[],
  mirrored: (item: T) => T,
): T {
  const image = mirrored(of);
  const follower = { ...twin };
  for (const key of fields) {
    if (image[key] === undefined) delete follower[key];
    else follower[key] = image[key];
  }
  return follower;
}

/** What keeps two things from being a pair, in words that end a sentence; null when they are one. */
export function unlikeTwins(a: Part | TankItem, b: Part | TankItem): string | null {
  if ('role' in a && 'role' in b) return unlike(a, mirroredPart(b), sharedByParts);
  if ('feeds' in a && 'feeds' in b) return unlike(a, mirroredTank(b), sharedByTanks);
  return 'is a part and the other one is a tank, or the other way round';
}

function unlike<T extends Part | TankItem>(a: T, image: T, shared: readonly (keyof T)[]): string | null {
  const key = shared.find((name) => !alike(a[name] || false, image[name] || false));
  return key === undefined ? null : `differs from the mirror image of the other one in ${String(key)}`;
}

/** Whether two values of a file are the same, lists and objects by what they hold; 0 is −0. */
function alike(a: unknown, b: unknown): boolean {
  if (a === b) return true;
  if (typeof a !== 'object' || typeof b !== 'object' || a === null || b === null) return false;
  const keys = Object.keys(a);
  return (
    keys.length === Object.keys(b).length &&
    keys.every((key) => alike((a as Record<string, unknown>)[key], (b as Record<string, unknown>)[key]))
  );
}

/** The other one of a pair; undefined for what is in none, or where the other one is not aboard. */
export function twinOf(aircraft: Aircraft, id: string): Part | TankItem | undefined {
  const item = byId(aircraft, id);
  return item?.twinId === undefined ? undefined : byId(aircraft, item.twinId);
}

/** Of things that are moved together, each but those whose twin comes before them: they follow it. */
export const eachPairOnce = (aircraft: Aircraft, ids: readonly string[]): readonly string[] =>
  ids.filter((id, at) => {
    const twinId = twinOf(aircraft, id)?.id;
    return twinId === undefined || !ids.slice(0, at).includes(twinId);
  });

const byId = ({ parts, tanks }: Aircraft, id: string) =>
  parts.find((part) => part.id === id) ?? tanks.find((tank) => tank.id === id);

/** How alike two things must be to be taken for the two of a pair: share of the mass, and mm. */
const ALIKE = { mass: 0.1, alongMm: 15, acrossMm: 10, upMm: 10, apartMm: 10 } as const;

/** Whether two things stand mirrored as near as builders build, whether or not anybody said that they are a pair. */
export function standMirrored(a: Part | TankItem, b: Part | TankItem): boolean {
  const [[ax, ay, az], [bx, by, bz]] = [a.positionMm, b.positionMm];
  const [aG, bG] = [massOf(a), massOf(b)];
  return (
    roleOf(a) === roleOf(b) &&
    a.shape.kind === b.shape.kind &&
    Math.abs(aG - bG) <= ALIKE.mass * Math.max(aG, bG) &&
    Math.abs(ax - bx) <= ALIKE.alongMm &&
    Math.abs(az - bz) <= ALIKE.upMm &&
    Math.abs(ay + by) <= ALIKE.acrossMm &&
    Math.abs(ay - by) > ALIKE.apartMm
  );
}

const massOf = (item: Part | TankItem) => ('massG' in item ? item.massG : item.emptyMassG);
const roleOf = (item: Part | TankItem) => ('role' in item ? item.role : 'tank');

/** What a thing could be made a mirrored pair with: the nearest of its kind that stands mirrored and is in no pair. */
export function pairableWith(aircraft: Aircraft, id: string): Part | TankItem | undefined {
  const item = byId(aircraft, id);
  if (!item || item.twinId !== undefined || item.positionMm[1] === 0) return undefined;
  const others: readonly (Part | TankItem)[] = 'feeds' in item ? aircraft.tanks : aircraft.parts;
  const offMm = ({ positionMm: [x, y, z] }: Part | TankItem) =>
    Math.hypot(x - item.positionMm[0], y + item.positionMm[1], z - item.positionMm[2]);
  return others
    .filter((other) => other !== item && other.twinId === undefined && standMirrored(item, other))
    .sort((a, b) => offMm(a) - offMm(b))[0];
}

/** Makes two things a mirrored pair: the second becomes the mirror image of the first, but for what is each one's own. */
export function makePair(aircraft: Aircraft, id: string, twinId: string): Aircraft {
  const first = byId(aircraft, id);
  const second = byId(aircraft, twinId);
  if (!first || !second || 'feeds' in first !== 'feeds' in second) return aircraft;
  const paired = <T extends Part | TankItem>(
    list: readonly T[],
    image: (twin: T, of: T) => T,
  ): readonly T[] => {
    const of = list.find((item) => item.id === id);
    return of
      ? list.map((item) => {
          if (item === of) return { ...item, twinId };
          return item.id === twinId ? { ...image(item, of), twinId: id } : item;
        })
      : list;
  };
  return {
    ...aircraft,
    parts: paired(aircraft.parts, (twin, of) => imageFor(twin, of, sharedByParts, mirroredPart)),
    tanks: paired(aircraft.tanks, (twin, of) => imageFor(twin, of, sharedByTanks, mirroredTank)),
  };
}

/** The parts and tanks with nothing paired with a thing any more: a broken pair stays where it stands. */
export function withoutTwin({ parts, tanks }: Aircraft, id: string): Pick<Aircraft, 'parts' | 'tanks'> {
  return { parts: unpaired(parts, id), tanks: unpaired(tanks, id) };
}

function unpaired<T extends Part | TankItem>(list: readonly T[], id: string): readonly T[] {
  if (!list.some(({ twinId }) => twinId === id)) return list;
  return list.map((item) => {
    if (item.twinId !== id) return item;
    const { twinId: _, ...alone } = item;
    return alone as unknown as T;
  });
}
