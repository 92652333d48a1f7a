import { useLayoutEffect, useMemo } from 'react';
import { BackSide, FrontSide, type ShaderMaterial, type Vector2 } from 'three';
import { type Piece, pieces } from '../../model/airframe/pieces';
import { useBalance, useLive, useView } from '../../store/react';
import { FatLines } from '../materials/FatLines';
import { type Palette, usePalette } from '../materials/palette';
import { createSkinMaterial } from '../materials/skinMaterial';
import { useDisposed } from '../materials/useDisposed';
import { linesOf, skinGeometry } from './airframeBatch';
import { Undercarriage } from './Undercarriage';

/** Where the selected item may sit; hatched too, so that colour is not alone. */
const ROOM = '#7fe0b0';
const NO_STRETCH = { fromMm: 1, toMm: 0 };
/** How far the skin gives way to its lines where much of it stands edge on: wings and tails, and the hull. */
const FLATTENED = { free: 0, side: 0.95, top: 0, front: 0.45 } as const;
const FLATTENED_HULL = { free: 0, side: 0, top: 0, front: 0.45 } as const;

/** The airframe: a translucent skin with the draughtsman's lines on it, and the wheels it stands on. */
export function Airframe() {
  const palette = usePalette();
  const all = useBalance(({ loaded }) => pieces(loaded));
  const hidden = useView((state) => state.hiddenIds);
  const shown = useMemo(() => all.filter(({ sourceId }) => !hidden.includes(sourceId)), [all, hidden]);
  const skins = useMemo(() => shown.filter(({ kind }) => kind !== 'wheel' && kind !== 'strut'), [shown]);
  const wheels = useMemo(() => shown.filter(({ kind }) => kind === 'wheel' || kind === 'strut'), [shown]);
  return (
    <>
      <Skin pieces={skins} palette={palette} />
      <Undercarriage pieces={wheels} />
    </>
  );
}

interface SkinProps {
  readonly pieces: readonly Piece[];
  readonly palette: Palette;
}

/** The far side of the skin lies behind what is inside, the near side gleams over it. */
function Skin({ pieces: skins, palette }: SkinProps) {
  const selectedId = useView((state) => state.selectedId);
  const litId = skins.some(({ sourceId }) => sourceId === selectedId) ? selectedId : null;
  const xray = useView(({ looking }) => looking.xray);
  const hasHull = skins.some(({ kind }) => kind === 'hull');
  const far = useDisposed(() => createSkinMaterial(BackSide), []);
  const near = useDisposed(() => createSkinMaterial(FrontSide), []);
  const geometry = useDisposed(
    () =>
      skinGeometry(skins, ({ kind, sourceId }) => ({
        lit: sourceId === litId,
        showsRoom: kind === 'hull' || (!hasHull && kind === 'panel'),
        isHull: kind === 'hull',
      })),
    [skins, litId, hasHull],
  );
  const outer = useMemo(() => linesOf(skins.filter(({ kind }) => kind !== 'block')), [skins]);
  const inner = useMemo(() => linesOf(skins.filter(({ kind }) => kind === 'block')), [skins]);

  useLayoutEffect(() => {
    for (const { uniforms } of [far, near]) {
      uniforms.uVellum?.value.set(palette.vellum);
      uniforms.uBand?.value.set(palette.band);
      uniforms.uRoom?.value.set(ROOM);
      uniforms.uThere!.value = xray ? 0.3 : 1;
      uniforms.uDark!.value = palette.dark ? 1 : 0;
    }
  });

  useLive(({ balance, view, place }) => {
    const now = balance.get();
    const { selectedId: id, view: looking } = view.getState();
    const zone = id ? place.zone(id) : null;
    for (const material of [far, near]) {
      const { uniforms } = material;
      uniforms.uLimitsOn!.value = now.band && looking !== 'front' ? 1 : 0;
      if (now.band) uniforms.uLimits?.value.set(now.band.forwardMm, now.band.aftMm);
      uniforms.uFlat?.value.set(FLATTENED[looking], FLATTENED_HULL[looking]);
      writeRoom(material, zone);
    }
  });

  const drawn = { geometry, frustumCulled: false } as const;
  return (
    <>
      <mesh {...drawn} material={far} renderOrder={5} />
      <mesh {...drawn} material={near} renderOrder={20} />
      <FatLines
        pairs={outer}
        color={palette.pencil}
        widthPx={1}
        opacity={xray ? 0.22 : 0.36}
        renderOrder={22}
        moving
        cut
      />
      {inner.length > 0 && (
        <FatLines
          pairs={inner}
          color={palette.pencil}
          widthPx={0.8}
          opacity={0.24}
          renderOrder={22}
          moving
          cut
        />
      )}
    </>
  );
}

interface RoomStretches {
  readonly station: { readonly allowed: { readonly fromMm: number; readonly toMm: number } | null };
  readonly freeStations: readonly { readonly fromMm: number; readonly toMm: number }[];
}

function writeRoom({ uniforms }: ShaderMaterial, zone: RoomStretches | null): void {
  const allowed = zone?.station.allowed ?? null;
  uniforms.uRoomOn!.value = allowed ? 1 : 0;
  if (allowed) uniforms.uRoomAt?.value.set(allowed.fromMm, allowed.toMm);
  const free: readonly Vector2[] = uniforms.uFree!.value;
  free.forEach((stretch, i) => {
    const { fromMm, toMm } = zone?.freeStations[i] ?? NO_STRETCH;
    stretch.set(fromMm, toMm);
  });
}
