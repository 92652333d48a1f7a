import { massMirror, massPlace, massRemove, massSum, noMass } from '../../engine/mass/massProperties';
import { shellMass, shellOfMass, surfaceProperties } from '../../engine/mass/surfaceProperties';
import type { MassProperties } from '../../engine/mass/types';
import { solidMass, solidOfMass, volumeProperties } from '../../engine/mass/volumeProperties';
import { lastPerObject, perObject } from '../../engine/memory/memory';
import type { Aircraft, MassSource, Role, StructurePiece } from '../document/types';
import { type CutOut, cutOuts } from './cutOuts';
import { elementPieces, type Piece, type Side } from './pieces';

/** What a body is for: a part's role, or the airframe, or what holds the fuel. */
export type BodyRole = Role | 'airframe' | 'fuel';

/** One item with mass aboard, liquid apart. */
export interface Body {
  /** Unique in the aircraft; of a structure element, its piece's id. */
  readonly id: string;
  /** The structure element, tank or part in the file, or `bare-airframe`. */
  readonly sourceId: string;
  readonly name: string;
  readonly group: 'structure' | 'part' | 'tank' | 'lead';
  readonly role: BodyRole;
  readonly side: Side;
  /** Aircraft frame. */
  readonly mass: MassProperties;
}

/** The structure as the shapes give it, whatever the scales say. */
export const structureBodies = perObject((structure: Aircraft['structure']): readonly Body[] =>
  structure.flatMap((element) => elementBodies(element)),
);

/** The sum of the shapes: the airframe as the dimensions give it, nothing cut out of it. */
export const structureMass = perObject(
  (structure: Aircraft['structure']): MassProperties =>
    massSum(structureBodies(structure).map(({ mass }) => mass)),
);

/**
 * The same less the pockets that the parts of an aircraft need in it, whichever of its elements are asked for. The very
 * same object again while neither the elements nor the pockets change.
 */
export const cutStructureMass = (structure: Aircraft['structure'], aircraft: Aircraft): MassProperties => {
  const cuts = cutOuts(aircraft);
  return cuts.length === 0 ? structureMass(structure) : massLessCuts(structure, ...cuts);
};

/** Bodies of structure less what the cut-outs of an aircraft take out of them. */
export const withCutOuts = (structure: readonly Body[], aircraft: Aircraft): readonly Body[] =>
  lessCuts(structure, cutOuts(aircraft));

function lessCuts(structure: readonly Body[], cuts: readonly CutOut[]): readonly Body[] {
  if (cuts.length === 0) return structure;
  return structure.map((body) => {
    const inBody = cuts.filter(({ pieceId }) => pieceId === body.id);
    return inBody.length === 0 ? body : cutBody(body, ...inBody);
  });
}

const cutBody = lastPerObject((body: Body, ...cuts: readonly CutOut[]): Body => {
  const left = cuts.reduce(
    (rest, { massRemoved }) => (massRemoved.massG < rest.massG ? massRemove(rest, massRemoved) : noMass),
    body.mass,
  );
  return { ...body, mass: left };
}, sameCuts);

const massLessCuts = lastPerObject(
  (structure: Aircraft['structure'], ...cuts: readonly CutOut[]): MassProperties =>
    massSum(lessCuts(structureBodies(structure), cuts).map(({ mass }) => mass)),
  sameCuts,
);

/** The bodies of one element, less what is cut out of it; the same ones while nothing of that changes. */
export const cutElementBodies = (aircraft: Aircraft, element: StructurePiece): readonly Body[] =>
  element.kind === 'block' && element.cuttable
    ? withCutOuts(elementBodies(element), aircraft)
    : elementBodies(element);

function sameCuts(before: readonly CutOut[], now: readonly CutOut[]): boolean {
  const same = (a: CutOut, b: CutOut) => a.removed === b.removed && a.massRemovedG === b.massRemovedG;
  return before.length === now.length && before.every((cut, i) => same(cut, now[i]!));
}

/** The bodies of one structure element, one for each of its pieces. */
export const elementBodies = perObject((element: StructurePiece): readonly Body[] => {
  const masses = elementMasses(element, elementPieces(element));
  return elementPieces(element).map((piece, index) => ({
    id: piece.id,
    sourceId: element.id,
    name: element.name,
    group: 'structure',
    role: element.kind === 'leg' ? 'undercarriage' : 'airframe',
    side: piece.side,
    mass: posed(masses[index] ?? noMass, piece),
  }));
});

/** Mass properties of each piece in its own frame, before it is posed and mirrored. */
function elementMasses(element: StructurePiece, pieces: readonly Piece[]): readonly MassProperties[] {
  if (element.kind === 'leg') {
    return pieces.map((piece) =>
      solidOfMass(piece.shape, piece.kind === 'wheel' ? element.wheelMassG : element.strutMassG),
    );
  }
  const { mass } = element;
  if (mass.by === 'skin') return pieces.map(({ shape }) => shellMass(shape, mass.gPerM2));
  if (mass.by === 'foam') return pieces.map(({ shape }) => solidMass(shape, mass.gPerMl));
  const hollow = element.kind === 'fuselage' || element.kind === 'boom';
  const spread = mass.spread ?? (hollow ? 'skin' : 'solid');
  return pieces.map((piece) => {
    const side = pieces.filter((other) => other.side === piece.side);
    const massG = weighedG(mass, piece.side) * shareOf(piece, side, spread);
    return spread === 'skin' ? shellOfMass(piece.shape, massG) : solidOfMass(piece.shape, massG);
  });
}

function weighedG(mass: Extract<MassSource, { by: 'weighed' }>, side: Side): number {
  return side === 'left' ? (mass.leftMassG ?? mass.massG) : mass.massG;
}

/** A piece's share of its side's weighed mass: by skin area or by volume. */
function shareOf(piece: Piece, side: readonly Piece[], spread: 'solid' | 'skin'): number {
  const size = ({ shape }: Piece) =>
    spread === 'skin' ? surfaceProperties(shape).areaMm2 : volumeProperties(shape).volumeMm3;
  const total = side.reduce((sum, other) => sum + size(other), 0);
  return total > 0 ? size(piece) / total : 0;
}

function posed(mass: MassProperties, piece: Piece): MassProperties {
  const placed = massPlace(mass, piece.pose);
  return piece.mirrored ? massMirror(placed) : placed;
}
