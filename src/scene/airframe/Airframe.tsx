import { useLayoutEffect, useMemo } from 'react';
import type { ShaderMaterial, Vector2 } from 'three';
import { type Piece, pieces } from '../../model/airframe/pieces';
import { useBalance, useLive, useView } from '../../store/react';
import { Posed } from '../frame/Posed';
import { PICK_STRUCTURE } from '../frame/picking';
import { FatLines } from '../materials/FatLines';
import { type Palette, usePalette } from '../materials/palette';
import { shapeGeometry, shapeLinePairs } from '../materials/shapeGeometry';
import { createSkinMaterial } from '../materials/skinMaterial';
import { useDisposed } from '../materials/useDisposed';
import { Strut, Wheel } from './Undercarriage';

/** Where the selected thing may sit; hatched too, so that colour is not alone. */
const ROOM = '#7fe0b0';
const NO_STRETCH = { fromMm: 1, toMm: 0 };
/** How far the skin gives way to its lines where much of it stands edge on. */
const FLATTENED = { free: 0, side: 0.95, top: 0, front: 0.45 } as const;

/** The airframe: a translucent skin with the draughtsman's lines on it, and the wheels it stands on. */
export function Airframe() {
  const palette = usePalette();
  const all = useBalance(({ loaded }) => pieces(loaded));
  const selectedId = useView((state) => state.selectedId);
  const hidden = useView((state) => state.hiddenIds);
  const skin = useDisposed(createSkinMaterial, []);
  const hullSkin = useDisposed(createSkinMaterial, []);
  const litSkin = useDisposed(createSkinMaterial, []);
  const hasHull = all.some((piece) => piece.kind === 'hull');

  useLayoutEffect(() => {
    for (const { uniforms } of [skin, hullSkin, litSkin]) {
      uniforms.uVellum?.value.set(palette.vellum);
      uniforms.uBand?.value.set(palette.band);
      uniforms.uRoom?.value.set(ROOM);
    }
    litSkin.uniforms.uLit!.value = 0.2;
  });

  useLive(({ balance, view, place }) => {
    const now = balance.get();
    const { selectedId: id, view: looking } = view.getState();
    const zone = id ? place.zone(id) : null;
    const allowed = zone?.station.allowed ?? null;
    for (const { uniforms } of [skin, hullSkin, litSkin]) {
      uniforms.uLimitsOn!.value = now.band && looking !== 'front' ? 1 : 0;
      if (now.band) uniforms.uLimits?.value.set(now.band.forwardMm, now.band.aftMm);
    }
    skin.uniforms.uFlat!.value = FLATTENED[looking];
    hullSkin.uniforms.uFlat!.value = looking === 'front' ? FLATTENED.front : 0;
    hullSkin.uniforms.uRoomOn!.value = allowed ? 1 : 0;
    if (allowed) hullSkin.uniforms.uRoomAt?.value.set(allowed.fromMm, allowed.toMm);
    const free: readonly Vector2[] = hullSkin.uniforms.uFree!.value;
    free.forEach((stretch, i) => {
      const { fromMm, toMm } = zone?.freeStations[i] ?? NO_STRETCH;
      stretch.set(fromMm, toMm);
    });
  });

  const shown = all.filter(({ sourceId }) => !hidden.includes(sourceId));
  return shown.map((piece) => {
    if (piece.kind === 'wheel') return <Wheel key={piece.id} piece={piece} />;
    if (piece.kind === 'strut') return <Strut key={piece.id} piece={piece} />;
    const shows = piece.kind === 'hull' || (!hasHull && piece.kind === 'panel');
    const lit = piece.sourceId === selectedId;
    return (
      <Skin
        key={piece.id}
        piece={piece}
        palette={palette}
        material={lit ? litSkin : shows ? hullSkin : skin}
      />
    );
  });
}

interface SkinProps {
  readonly piece: Piece;
  readonly palette: Palette;
  readonly material: ShaderMaterial;
}

function Skin({ piece, palette, material }: SkinProps) {
  const geometry = useDisposed(() => shapeGeometry(piece.shape, 64), [piece.shape]);
  const pairs = useMemo(() => shapeLinePairs(piece.shape), [piece.shape]);
  const inner = piece.kind === 'block';
  return (
    <Posed piece={piece}>
      <mesh
        geometry={geometry}
        material={material}
        renderOrder={20}
        userData={{ structureId: piece.sourceId }}
        ref={(mesh) => mesh?.layers.enable(PICK_STRUCTURE)}
      />
      <FatLines
        pairs={pairs}
        color={palette.pencil}
        widthPx={inner ? 0.8 : 1}
        opacity={inner ? 0.28 : 0.42}
        renderOrder={22}
      />
    </Posed>
  );
}
