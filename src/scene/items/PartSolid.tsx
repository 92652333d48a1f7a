import { useMemo } from 'react';
import type { Part } from '../../model/document/types';
import { useAircraft, useLive, useView } from '../../store/react';
import { PICK_ITEM } from '../frame/picking';
import { FatLines } from '../materials/FatLines';
import { usePalette } from '../materials/palette';
import { createPartMaterial } from '../materials/partMaterial';
import { shapeGeometry, shapeLinePairs } from '../materials/shapeGeometry';
import { scaledPairs, unitShape } from '../materials/unitShape';
import { useDisposed } from '../materials/useDisposed';
import { itemLook } from './itemLook';

interface ItemProps {
  readonly id: string;
}

/** Hatching of what does not fit in another load state than the one shown, or only should not stand so. */
const FAINT = 0.35;

/** A part: a solid in its role's colour with drawn edges. */
export function PartSolid({ id }: ItemProps) {
  const palette = usePalette();
  const find = (parts: readonly Part[]) => parts.find((part) => part.id === id);
  const shape = useAircraft(({ parts }) => find(parts)?.shape);
  const role = useAircraft(({ parts }) => find(parts)?.role);
  const locked = useAircraft(({ parts }) => find(parts)?.locked === true);
  const selected = useView((state) => state.selectedId === id);
  const hovered = useView((state) => state.hoveredId === id);
  const unit = useMemo(() => (shape ? unitShape(shape) : null), [shape]);
  const own = useMemo(() => (shape && !unit ? shapeGeometry(shape, 48) : null), [shape, unit]);
  useDisposed(() => ({ dispose: () => own?.dispose() }), [own]);
  const pairs = useMemo(() => {
    if (unit) return scaledPairs(unit.linePairs, unit.scale);
    return shape ? shapeLinePairs(shape) : new Float32Array();
  }, [shape, unit]);
  const material = useDisposed(createPartMaterial, []);
  const look = itemLook(palette, palette.role(role ?? 'other'), selected, locked);
  material.color.set(look.fill);
  material.marks.uLift.value = hovered || selected ? 1 : 0;

  useLive(({ fit }) => {
    const mark = fit.mark(id);
    material.marks.uClash.value = mark === null ? 0 : mark.now && mark.severity === 'bad' ? 1 : FAINT;
  });

  const geometry = unit?.geometry ?? own;
  if (!geometry) return null;
  return (
    <>
      <mesh
        geometry={geometry}
        material={material}
        scale={[...(unit?.scale ?? [1, 1, 1])]}
        userData={{ itemId: id }}
        ref={(mesh) => mesh?.layers.enable(PICK_ITEM)}
      />
      <FatLines
        pairs={pairs}
        color={look.edge}
        widthPx={shape?.kind === 'box' ? look.edgePx : Math.min(look.edgePx, 1.7)}
        opacity={selected ? 1 : 0.8}
        renderOrder={selected ? 24 : 4}
      />
    </>
  );
}
