import { type ReactNode, useMemo } from 'react';
import { Quaternion } from 'three';
import type { Piece } from '../../model/airframe/pieces';
import { writePoseTurn } from './frame';

interface PosedProps {
  readonly piece: Piece;
  readonly children: ReactNode;
}

/** A piece's own frame in the aircraft's: posed, then mirrored in the plane of symmetry where it is the left-hand one. */
export function Posed({ piece: { pose, mirrored }, children }: PosedProps) {
  const turn = useMemo(() => writePoseTurn(pose, new Quaternion()), [pose]);
  return (
    <group scale={[1, mirrored ? -1 : 1, 1]}>
      <group position={[...pose.positionMm]} quaternion={turn}>
        {children}
      </group>
    </group>
  );
}
