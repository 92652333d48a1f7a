import { BufferAttribute, BufferGeometry, Quaternion, Vector3 } from 'three';
import type { Shape } from '../../engine/mass/shapes';
import { perObject } from '../../engine/memory/memory';
import type { Piece } from '../../model/airframe/pieces';
import { writePoseTurn } from '../frame/frame';
import { shapeGeometry, shapeLinePairs } from '../materials/shapeGeometry';

/** Facets and lines of a piece where it stands in the aircraft, mirrored and all. */
interface Baked {
  readonly positions: Float32Array;
  readonly normals: Float32Array;
  readonly lines: Float32Array;
}

/** Worked out once for each piece: reshaping a piece works out that piece alone. */
export const bakedPiece = perObject((piece: Piece): Baked => {
  const solid = ownFigures(piece.shape);
  const made = {
    positions: posed(piece, solid.positions, true),
    normals: posed(piece, solid.normals, false),
    lines: posed(piece, solid.lines, true),
  };
  if (piece.mirrored) for (const figures of [made.positions, made.normals]) turnRound(figures);
  return made;
});

/** Facets and lines of a shape in its own frame: a piece that is moved only is not cut into facets again. */
const ownFigures = perObject((shape: Shape): Baked => {
  const geometry = shapeGeometry(shape, 64);
  const figures = {
    positions: geometry.getAttribute('position').array as Float32Array,
    normals: geometry.getAttribute('normal').array as Float32Array,
    lines: shapeLinePairs(shape),
  };
  geometry.dispose();
  return figures;
});

/** Turned, moved if asked, and reflected for the left-hand one of a pair. */
function posed({ pose, mirrored }: Piece, local: Float32Array, moved: boolean): Float32Array {
  const turn = writePoseTurn(pose, new Quaternion());
  const point = new Vector3();
  const into = new Float32Array(local.length);
  for (let i = 0; i < local.length; i += 3) {
    point.fromArray(local, i).applyQuaternion(turn);
    if (moved) point.add(new Vector3(...pose.positionMm));
    if (mirrored) point.y = -point.y;
    point.toArray(into, i);
  }
  return into;
}

/** A reflected facet is seen from behind until two of its corners change places. */
function turnRound(figures: Float32Array): void {
  for (let i = 0; i < figures.length; i += 9) {
    const second = figures.slice(i + 3, i + 6);
    figures.copyWithin(i + 3, i + 6, i + 9);
    figures.set(second, i + 6);
  }
}

/** What the skin's material asks of each corner: lit as the selected piece, and whether the room of a part shows on it. */
export interface SkinTags {
  readonly lit: boolean;
  readonly showsRoom: boolean;
  /** In front elevation the hull gives way to its lines too; a wing in every one it is seen edge on. */
  readonly isHull: boolean;
}

const joined = (all: readonly Float32Array[]): Float32Array => {
  const into = new Float32Array(all.reduce((sum, { length }) => sum + length, 0));
  let at = 0;
  for (const figures of all) {
    into.set(figures, at);
    at += figures.length;
  }
  return into;
};

/** The airframe's skins in one geometry. */
export function skinGeometry(pieces: readonly Piece[], tagsOf: (piece: Piece) => SkinTags): BufferGeometry {
  const parts = pieces.map(bakedPiece);
  const geometry = new BufferGeometry();
  geometry.setAttribute('position', new BufferAttribute(joined(parts.map(({ positions }) => positions)), 3));
  geometry.setAttribute('normal', new BufferAttribute(joined(parts.map(({ normals }) => normals)), 3));
  const tags = pieces.map((piece, i) => {
    const { lit, showsRoom, isHull } = tagsOf(piece);
    const corners = (parts[i]?.positions.length ?? 0) / 3;
    const figures = new Float32Array(corners * 3);
    for (let k = 0; k < corners; k += 1) {
      figures[3 * k] = lit ? 1 : 0;
      figures[3 * k + 1] = showsRoom ? 1 : 0;
      figures[3 * k + 2] = isHull ? 1 : 0;
    }
    return figures;
  });
  geometry.setAttribute('aTags', new BufferAttribute(joined(tags), 3));
  return geometry;
}

export const linesOf = (pieces: readonly Piece[]): Float32Array =>
  joined(pieces.map((piece) => bakedPiece(piece).lines));
