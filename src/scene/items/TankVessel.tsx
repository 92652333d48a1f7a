import { useMemo } from 'react';
import type { Vec3 } from '../../engine/geometry/types';
import { dot } from '../../engine/geometry/vec3';
import { downInShape } from '../../engine/liquid/liquidState';
import type { LiquidState, Tank } from '../../engine/liquid/types';
import { surfaceOutline } from '../../engine/liquid/wettedMesh';
import { engineTanks } from '../../model/airframe/tanks';
import { useAircraft, useBench, useLive, useView } from '../../store/react';
import { FatLines } from '../materials/FatLines';
import { createGlassMaterial } from '../materials/glassMaterial';
import { usePalette } from '../materials/palette';
import { shapeGeometry, shapeLinePairs } from '../materials/shapeGeometry';
import { useDisposed } from '../materials/useDisposed';
import { itemLook } from './itemLook';
import { createLiquidDrawing } from './liquidDrawing';

interface ItemProps {
  readonly id: string;
}

/** Facets to a full circle of the liquid, which is cut again at every fuel state. */
const SEGMENTS = 32;
/** A plane above everything: a tank filled to the brim has no free surface. */
const BRIM_MM = -1e9;

/** A tank: a clear shell, and in it the computed liquid at its true level and slope. */
export function TankVessel({ id }: ItemProps) {
  const palette = usePalette();
  const bench = useBench();
  const shape = useAircraft(({ tanks }) => tanks.find((tank) => tank.id === id)?.shape);
  const mirrored = useAircraft(({ tanks }) => tanks.find((tank) => tank.id === id)?.mirrored === true);
  const locked = useAircraft(({ tanks }) => tanks.find((tank) => tank.id === id)?.locked === true);
  const water = useAircraft(({ fuel }) => fuel?.kind === 'water');
  const selected = useView((state) => state.selectedId === id);
  const hovered = useView((state) => state.hoveredId === id);
  const geometry = useDisposed(() => shapeGeometry(shape ?? NO_TANK, 48), [shape]);
  const pairs = useMemo(() => shapeLinePairs(shape ?? NO_TANK), [shape]);
  const shell = useDisposed(createGlassMaterial, []);
  const liquid = useDisposed(() => createLiquidDrawing(geometry), [geometry]);
  const color = water ? palette.water : palette.role('fuel');
  const look = itemLook(palette, color, selected, locked);
  shell.uniforms.uColor?.value.set(palette.dark ? '#bfe0f5' : '#e4f3fb');
  shell.uniforms.uLit!.value = hovered || selected ? 0.1 : 0;
  liquid.paint(palette.liquid(water));

  useLive(({ document, balance }) => {
    const tank = engineTanks(document.current()).find((each) => each.id === id);
    const state = balance.get().liquids.find(({ tankId }) => tankId === id);
    const cut = tank && state && state.volumeMl > 0 ? cutOf(tank, state, bench.view.getState().down) : null;
    if (!tank || !cut) return liquid.hide();
    liquid.show(cut.down, cut.offsetMm, () => surfaceOutline(tank.shape, cut.down, cut.offsetMm, SEGMENTS));
  });

  return (
    <group scale={[1, mirrored ? -1 : 1, 1]}>
      <primitive object={liquid.group} dispose={null} />
      <mesh geometry={geometry} material={shell} renderOrder={21.8} />
      <FatLines
        pairs={pairs}
        color={look.edge}
        widthPx={Math.min(look.edgePx, 1.5)}
        opacity={selected ? 1 : 0.6}
        renderOrder={selected ? 24 : 21.9}
      />
    </group>
  );
}

const NO_TANK = { kind: 'sphere', diameterMm: 1 } as const;

/** The free surface in the tank's own shape; at the brim everything is wet. */
function cutOf(tank: Tank, { surface }: LiquidState, down: Vec3): { down: Vec3; offsetMm: number } {
  const downInTank = downInShape(tank, down);
  if (!surface) return { down: downInTank, offsetMm: BRIM_MM };
  return { down: downInTank, offsetMm: surface.offsetMm - dot(surface.down, tank.pose.positionMm) };
}
