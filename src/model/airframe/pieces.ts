import type { Pose, Vec3 } from '../../engine/geometry/types';
import type { LoftShape, Shape } from '../../engine/mass/shapes';
import { perObject } from '../../engine/memory/memory';
import type { Aircraft, Boom, Fuselage, Leg, StructurePiece, Surface } from '../document/types';
import { poseBetween, poseOf, surfacePose } from './poses';

/** Which of a pair: `right` as the file gives it, `left` its mirror image; `centre` for a piece alone. */
export type Side = 'centre' | 'right' | 'left';

export type PieceKind = 'hull' | 'panel' | 'boom' | 'strut' | 'wheel' | 'block';

/**
 * One solid of the airframe, as both the mass engine and the scene take it.
 * The shape is posed first; then, if `mirrored`, the posed body is reflected in the plane of symmetry
 * (aircraft frame, y → −y). The two of a pair share one shape and one pose.
 */
export interface Piece {
  /** Unique in the aircraft and stable: "wing.right.2", "main-gear.left.wheel", "fuselage". */
  readonly id: string;
  /** The structure element in the file that it comes from. */
  readonly sourceId: string;
  readonly kind: PieceKind;
  readonly side: Side;
  readonly shape: Shape;
  readonly pose: Pose;
  readonly mirrored: boolean;
}

interface Member {
  readonly kind: PieceKind;
  /** What distinguishes it from the others of its element: "2", "wheel"; none when there is only one. */
  readonly suffix?: string;
  readonly shape: Shape;
  readonly pose: Pose;
}

/** Every solid of the airframe. An element that did not change gives the very same objects again. */
export const pieces = (aircraft: Aircraft): readonly Piece[] => structurePieces(aircraft.structure);

const structurePieces = perObject((structure: Aircraft['structure']): readonly Piece[] =>
  structure.flatMap((element) => elementPieces(element)),
);

/** The solids of one structure element: of a pair the right-hand ones first, then the left-hand ones. */
export const elementPieces = perObject((element: StructurePiece): readonly Piece[] => {
  const members = membersOf(element);
  const sides: readonly Side[] = element.sides === 'both' ? ['right', 'left'] : ['centre'];
  return sides.flatMap((side) => members.map((member) => piece(element.id, member, side)));
});

function piece(sourceId: string, member: Member, side: Side): Piece {
  const { kind, suffix, shape, pose } = member;
  const id = [sourceId, side === 'centre' ? undefined : side, suffix].filter(Boolean).join('.');
  return { id, sourceId, kind, side, shape, pose, mirrored: side === 'left' };
}

function membersOf(element: StructurePiece): readonly Member[] {
  switch (element.kind) {
    case 'fuselage':
      return [hull(element)];
    case 'surface':
      return panels(element);
    case 'boom':
      return [boom(element)];
    case 'leg':
      return leg(element);
    case 'block':
      return [{ kind: 'block', shape: element.shape, pose: poseOf(element) }];
  }
}

function hull(element: Fuselage): Member {
  const { mesh, buttlineMm } = element;
  return mesh
    ? { kind: 'hull', shape: mesh.shape, pose: upright([mesh.stationMm, buttlineMm, mesh.waterlineMm]) }
    : { kind: 'hull', shape: hullLoft(element), pose: upright([0, buttlineMm, 0]) };
}

const upright = (positionMm: Vec3): Pose => ({ positionMm, yawDeg: 0, pitchDeg: 0, rollDeg: 0 });

/** A hull through its sections, stations and waterlines as in the file, its middle line at the hull's buttline. */
export const hullLoft = perObject(
  ({ sections }: Fuselage): LoftShape => ({
    kind: 'loft',
    sections: sections.map((section) => ({
      xMm: section.stationMm,
      widthMm: section.widthMm,
      heightMm: section.heightMm,
      centreYMm: 0,
      centreZMm: section.waterlineMm,
      roundness: section.roundness,
    })),
  }),
);

/** Panel by panel outwards; each begins where the one before it ends, with that one's twist and thickness. */
function panels(surface: Surface): readonly Member[] {
  const members: Member[] = [];
  let rootLeMm: readonly [number, number, number] = [0, 0, 0];
  let rootChordMm = surface.rootChordMm;
  let rootTwistDeg = 0;
  let rootThicknessPct = surface.rootThicknessPct;
  for (const [index, panel] of surface.panels.entries()) {
    const riseMm = panel.spanMm * Math.tan((panel.dihedralDeg * Math.PI) / 180);
    members.push({
      kind: 'panel',
      suffix: String(index + 1),
      shape: {
        kind: 'panel',
        spanMm: panel.spanMm,
        rootChordMm,
        tipChordMm: panel.tipChordMm,
        sweepMm: panel.sweepMm,
        riseMm,
        rootTwistDeg,
        tipTwistDeg: panel.twistDeg,
        rootThickness: rootThicknessPct / 100,
        tipThickness: panel.tipThicknessPct / 100,
      },
      pose: surfacePose(surface, rootLeMm),
    });
    rootLeMm = [rootLeMm[0] + panel.sweepMm, rootLeMm[1] + panel.spanMm, rootLeMm[2] + riseMm];
    rootChordMm = panel.tipChordMm;
    rootTwistDeg = panel.twistDeg;
    rootThicknessPct = panel.tipThicknessPct;
  }
  return members;
}

function boom({ frontMm, rearMm, frontDiameterMm, rearDiameterMm }: Boom): Member {
  const { pose, lengthMm } = poseBetween(frontMm, rearMm);
  return { kind: 'boom', shape: { kind: 'frustum', lengthMm, frontDiameterMm, rearDiameterMm }, pose };
}

function leg(element: Leg): readonly Member[] {
  const { topMm, axleMm, spindle, strutDiameterMm, wheelDiameterMm, wheelWidthMm } = element;
  const { pose, lengthMm } = poseBetween(topMm, axleMm);
  return [
    {
      kind: 'strut',
      suffix: 'strut',
      shape: { kind: 'cylinder', lengthMm, diameterMm: strutDiameterMm },
      pose,
    },
    {
      kind: 'wheel',
      suffix: 'wheel',
      shape: { kind: 'cylinder', lengthMm: wheelWidthMm, diameterMm: wheelDiameterMm },
      pose: spindle
        ? { ...poseBetween([0, 0, 0], spindle).pose, positionMm: axleMm }
        : { positionMm: axleMm, yawDeg: 90, pitchDeg: 0, rollDeg: 0 },
    },
  ];
}
