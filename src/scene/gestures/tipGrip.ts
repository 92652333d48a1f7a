import { type Camera, Vector3 } from 'three';
import type { Vec3 } from '../../engine/geometry/types';
import { dragNormal, rayOnPlane } from '../../interaction/dragPlane';
import { distanceToLine, sweepingPanel, sweepTip, type TipChord, tipChords } from '../../interaction/wingTip';
import { structureById } from '../../model/document/edit';
import type { Surface } from '../../model/document/types';
import { macSurface } from '../../model/stability/band';
import { formatLength } from '../../model/units';
import type { Bench } from '../../store/bench';
import { toWorld } from '../frame/frame';
import { pointerRay } from '../frame/picking';
import type { StageDrag } from './itemDrag';

/** Without snap the sweep comes to tenths of a mm. */
const FREE_STEP_MM = 0.1;

/**
 * The tips that can be taken hold of: seen from above those of the wing, and in every view but the front
 * those of the surface that is selected.
 */
export function grips({ document, view }: Bench): readonly TipChord[] {
  const { view: looking, selectedId } = view.getState();
  if (looking === 'front') return [];
  const aircraft = document.current();
  const wing = looking === 'top' ? macSurface(aircraft) : null;
  const selected = selectedId ? structureById(aircraft, selectedId) : undefined;
  const surfaces = new Set<Surface>();
  if (wing) surfaces.add(wing);
  if (selected?.kind === 'surface') surfaces.add(selected);
  return [...surfaces].flatMap(tipChords);
}

export interface TipLens {
  readonly camera: () => Camera;
  readonly sizePx: () => { readonly width: number; readonly height: number };
}

const point = new Vector3();

/** The tip within reach of a place on the stage, px from its top left. */
export function tipAt(
  bench: Bench,
  { camera, sizePx }: TipLens,
  at: readonly [number, number],
  reachPx: number,
): TipChord | null {
  const { width, height } = sizePx();
  const toPx = (mm: Vec3): [number, number] => {
    toWorld(mm, point).project(camera());
    return [((point.x + 1) / 2) * width, ((1 - point.y) / 2) * height];
  };
  let nearest: TipChord | null = null;
  let nearestPx = reachPx;
  for (const chord of grips(bench)) {
    const awayPx = distanceToLine(at, toPx(chord.frontMm), toPx(chord.rearMm));
    if (awayPx <= nearestPx) [nearest, nearestPx] = [chord, awayPx];
  }
  return nearest;
}

/** Takes a tip in hand where it was grabbed; null when something is in hand already. */
export function startTipDrag(
  bench: Bench,
  chord: TipChord,
  at: readonly [number, number],
  camera: () => Camera,
): StageDrag | null {
  const surface = bench.reshape.pickUp(chord.surfaceId);
  if (!surface || !('kind' in surface) || surface.kind !== 'surface') return null;
  const { view, units } = bench.view.getState();
  const normal = dragNormal(view, false);
  const station = (place: readonly [number, number]) =>
    rayOnPlane(pointerRay(camera(), place), chord.frontMm, normal)?.[0] ?? null;
  const fromMm = station(at);
  const panel = sweepingPanel(surface);
  return {
    moveTo: (place, { free }) => {
      const toMm = station(place);
      if (fromMm === null || toMm === null) return null;
      const { gridMm } = bench.document.current();
      const swept = sweepTip(surface, toMm - fromMm, free ? FREE_STEP_MM : gridMm);
      bench.reshape.show(swept);
      const sweepMm = swept.panels[panel]?.sweepMm ?? 0;
      return `${surface.name} · sweep of panel ${panel + 1} ${formatLength(sweepMm, units)}`;
    },
    end: (how) => {
      if (how === 'cancel') return bench.reshape.cancel();
      const text = bench.reshape.setDown(`Sweep ${surface.name}`);
      if (text !== null) bench.notice.tell({ about: 'edit', tone: 'bad', text });
    },
  };
}
