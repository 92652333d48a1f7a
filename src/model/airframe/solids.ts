import { type Hull, hullHolds, hullOf } from '../../engine/fit/hull';
import { openTube, type PosedShape, type Solid, solidOf } from '../../engine/fit/solid';
import { mirrorPose } from '../../engine/geometry/rotation';
import type { Vec3 } from '../../engine/geometry/types';
import { mirroredShape } from '../../engine/mass/mirroredShape';
import { perObject } from '../../engine/memory/memory';
import type { Item } from '../document/edit';
import type { Aircraft, Fuselage, StructurePiece } from '../document/types';
import { elementPieces, hullLoft, type Piece } from './pieces';
import { poseOf } from './poses';

/** Something that stands in the aircraft and can be run into. */
export interface Standing {
  readonly what: 'part' | 'tank' | 'structure';
  /** The item's own id; of structure, the piece's. */
  readonly id: string;
  /** The id in the file. */
  readonly sourceId: string;
  readonly name: string;
  readonly solid: Solid;
}

/** A hull with a name. */
export interface NamedHull extends Hull {
  readonly id: string;
  readonly name: string;
}

/** A part or tank where it stands; the same object again while it does not change. */
export const itemSolid = perObject(
  (item: Item): Solid => solidOf({ shape: itemShape(item), pose: poseOf(item) }),
);

/** An item's shape in the frame that its pose is for. */
export const itemShape = (item: Item): Item['shape'] =>
  'mirrored' in item && item.mirrored ? mirroredShape(item.shape) : item.shape;

/** A piece of structure as a shape and a pose alone. Not for panels. */
export const posedPiece = ({ shape, pose, mirrored }: Piece): PosedShape =>
  mirrored ? { shape: mirroredShape(shape), pose: mirrorPose(pose) } : { shape, pose };

/** Everything that can be run into but hulls: parts, tanks and structure. */
export const standing = perObject((aircraft: Aircraft): readonly Standing[] => [
  ...standingItems(aircraft),
  ...standingStructure(aircraft),
]);

/** All parts and tanks. */
export const standingItems = ({ parts, tanks }: Aircraft): Standing[] => [
  ...parts.map((part) => standingItem('part', part)),
  ...tanks.map((tank) => standingItem('tank', tank)),
];

const standingItem = (what: 'part' | 'tank', item: Item): Standing => {
  const { id, name } = item;
  return { what, id, sourceId: id, name, solid: itemSolid(item) };
};

/**
 * The structure that things run into: blocks, booms, struts and wheels. A tube is open to its bore; a block
 * whose mass is a skin is a shell and not counted, nor is a cuttable one, nor are hulls and flying surfaces.
 */
export const standingStructure = ({ structure }: Aircraft): Standing[] =>
  structure.flatMap((element) => standingOf(element));

/** The same of one piece of structure. */
export const standingOf = perObject((element: StructurePiece): readonly Standing[] =>
  isObstacle(element) ? elementPieces(element).map((piece) => standingPiece(element, piece)) : [],
);

function isObstacle(element: StructurePiece): boolean {
  if (element.kind !== 'block') return element.kind === 'boom' || element.kind === 'leg';
  const { mass, cuttable } = element;
  return !cuttable && mass.by !== 'skin' && !(mass.by === 'weighed' && mass.spread === 'skin');
}

function standingPiece({ id: sourceId, name, kind }: StructurePiece, piece: Piece): Standing {
  const { shape, pose } = posedPiece(piece);
  const solid = shape.kind === 'tube' && kind === 'block' ? openTube(shape, pose) : solidOf({ shape, pose });
  return { what: 'structure', id: piece.id, sourceId, name, solid };
}

/** Every hull of the aircraft, pods and nacelles among them; the same list while the structure does not change. */
export const hulls = ({ structure }: Pick<Aircraft, 'structure'>): readonly NamedHull[] =>
  structureHulls(structure);

const structureHulls = perObject((structure: Aircraft['structure']): readonly NamedHull[] =>
  structure.flatMap((element) => (element.kind === 'fuselage' ? fuselageHulls(element) : [])),
);

const fuselageHulls = perObject((element: Fuselage): readonly NamedHull[] => {
  const open = {
    front: element.open === 'front' || element.open === 'both',
    rear: element.open === 'rear' || element.open === 'both',
  };
  return elementPieces(element).map((piece) => {
    const posed = posedPiece(piece);
    const { positionMm } = posed.pose;
    const hull = hullOf({
      shape: hullLoft(element),
      pose: { ...posed.pose, positionMm: [0, positionMm[1], 0] },
      ...(posed.shape.kind === 'mesh' && { mesh: { shape: posed.shape, pose: posed.pose } }),
      skinMm: element.skinMm,
      open,
    });
    return { ...hull, id: piece.id, name: element.name };
  });
});

/** The middle of the box around a solid, mm. */
export const middleOf = ({ minMm, maxMm }: Solid): Vec3 => [
  (minMm[0] + maxMm[0]) / 2,
  (minMm[1] + maxMm[1]) / 2,
  (minMm[2] + maxMm[2]) / 2,
];

/** The hulls that hold an item's middle. None: it stands outside, in the open or in a wing. */
export const hullsAround = (aircraft: Aircraft, solid: Solid): NamedHull[] =>
  hulls(aircraft).filter((hull) => hullHolds(hull, middleOf(solid)));
