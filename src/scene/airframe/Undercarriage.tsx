import { useMemo } from 'react';
import { BufferAttribute, BufferGeometry, Color, MeshStandardMaterial } from 'three';
import { poseRotation, turn } from '../../engine/geometry/rotation';
import type { Vec3 } from '../../engine/geometry/types';
import { add, addScaled, dot, mirrorY, scale, sub } from '../../engine/geometry/vec3';
import type { Piece } from '../../model/airframe/pieces';
import { FatLines } from '../materials/FatLines';
import { usePalette } from '../materials/palette';
import { useDisposed } from '../materials/useDisposed';
import { bakedPiece, linesOf } from './airframeBatch';

const TYRE = new Color('#23282d');
const HUB = new Color('#cdd3d6');
const LEG = new Color('#939da3');
/** Of a wheel's radius, so much is hub. */
const HUB_SHARE = 0.52;

interface UndercarriageProps {
  readonly pieces: readonly Piece[];
}

/** Metal legs, and dark tyres on pale hubs, in one draw call. */
export function Undercarriage({ pieces }: UndercarriageProps) {
  const { pencil } = usePalette();
  const geometry = useDisposed(() => wheelsGeometry(pieces), [pieces]);
  const material = useDisposed(() => new MeshStandardMaterial({ roughness: 0.6, vertexColors: true }), []);
  const lines = useMemo(() => linesOf(pieces.filter(({ kind }) => kind === 'wheel')), [pieces]);
  if (pieces.length === 0) return null;
  return (
    <>
      <mesh geometry={geometry} material={material} />
      {lines.length > 0 && <FatLines pairs={lines} color={pencil} widthPx={0.8} opacity={0.35} moving />}
    </>
  );
}

/** A wheel is drawn twice: the tyre, and within it a narrower, slightly wider disc of hub. */
function wheelsGeometry(pieces: readonly Piece[]): BufferGeometry {
  const positions: number[] = [];
  const normals: number[] = [];
  const colors: number[] = [];
  const put = (piece: Piece, color: Color, shape: (at: Vec3) => Vec3) => {
    const baked = bakedPiece(piece);
    for (let i = 0; i < baked.positions.length; i += 3) {
      const [x = 0, y = 0, z = 0] = baked.positions.subarray(i, i + 3);
      positions.push(...shape([x, y, z]));
      colors.push(color.r, color.g, color.b);
    }
    for (const figure of baked.normals) normals.push(figure);
  };
  for (const piece of pieces) {
    put(piece, piece.kind === 'strut' ? LEG : TYRE, (at) => at);
    if (piece.kind === 'wheel') put(piece, HUB, hubOf(piece));
  }
  const geometry = new BufferGeometry();
  geometry.setAttribute('position', new BufferAttribute(new Float32Array(positions), 3));
  geometry.setAttribute('normal', new BufferAttribute(new Float32Array(normals), 3));
  geometry.setAttribute('color', new BufferAttribute(new Float32Array(colors), 3));
  return geometry;
}

/** Draws the points of a wheel in towards its axle, and a touch out along it. */
function hubOf({ pose, mirrored }: Piece): (at: Vec3) => Vec3 {
  const axle = turn(poseRotation(pose), [1, 0, 0]);
  const [middle, along] = mirrored ? [mirrorY(pose.positionMm), mirrorY(axle)] : [pose.positionMm, axle];
  return (at) => {
    const away = sub(at, middle);
    const out = dot(away, along);
    return add(middle, add(scale(addScaled(away, along, -out), HUB_SHARE), scale(along, out * 1.03)));
  };
}
