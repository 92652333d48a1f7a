import { useMemo } from 'react';
import type { Piece } from '../../model/airframe/pieces';
import { Posed } from '../frame/Posed';
import { PICK_STRUCTURE } from '../frame/picking';
import { FatLines } from '../materials/FatLines';
import { usePalette } from '../materials/palette';
import { scaledPairs, unitShape } from '../materials/unitShape';

interface PieceProps {
  readonly piece: Piece;
}

/** A dark tyre on a pale hub. */
export function Wheel({ piece }: PieceProps) {
  const { pencil } = usePalette();
  const unit = useMemo(() => unitShape(piece.shape), [piece.shape]);
  const pairs = useMemo(() => unit && scaledPairs(unit.linePairs, unit.scale), [unit]);
  if (!unit || !pairs) return null;
  const [wide, tall] = unit.scale;
  return (
    <Posed piece={piece}>
      <mesh
        geometry={unit.geometry}
        scale={[...unit.scale]}
        userData={{ structureId: piece.sourceId }}
        ref={(mesh) => mesh?.layers.enable(PICK_STRUCTURE)}
      >
        <meshStandardMaterial color="#272c31" roughness={0.9} />
      </mesh>
      <mesh geometry={unit.geometry} scale={[wide * 1.03, tall * 0.5, tall * 0.5]}>
        <meshStandardMaterial color="#c9cfd2" roughness={0.5} />
      </mesh>
      <FatLines pairs={pairs} color={pencil} widthPx={0.8} opacity={0.35} />
    </Posed>
  );
}

/** A metal leg. */
export function Strut({ piece }: PieceProps) {
  const unit = unitShape(piece.shape);
  if (!unit) return null;
  return (
    <Posed piece={piece}>
      <mesh
        geometry={unit.geometry}
        scale={[...unit.scale]}
        userData={{ structureId: piece.sourceId }}
        ref={(mesh) => mesh?.layers.enable(PICK_STRUCTURE)}
      >
        <meshStandardMaterial color="#8d979d" roughness={0.45} metalness={0.2} />
      </mesh>
    </Posed>
  );
}
