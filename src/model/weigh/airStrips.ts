import { lerp, mirrorY } from '../../engine/geometry/vec3';
import type { AirStrip } from '../../engine/weigh/airSwungAlong';
import { panelEdges } from '../../engine/wing/panelEdges';
import type { LiftingSurface } from '../../engine/wing/types';
import type { Aircraft } from '../document/types';
import { liftingSurfaces } from '../stability/liftingSurfaces';

/** So many strips for each panel: the chord runs straight, so that few will do. */
const STRIPS = 12;

/** Wings, tails and fins as strips that push air before them; hulls and booms push little and are left out. */
export const airStrips = (aircraft: Aircraft): readonly AirStrip[] =>
  liftingSurfaces(aircraft).flatMap(stripsOf);

function stripsOf(surface: LiftingSurface): readonly AirStrip[] {
  const right = panelEdges(surface).flatMap(({ panel, rootMm, tipMm, slopeRad, lengthMm }) =>
    Array.from({ length: STRIPS }, (_, at): AirStrip => {
      const share = (at + 0.5) / STRIPS;
      const chordMm = panel.rootChordMm + (panel.tipChordMm - panel.rootChordMm) * share;
      const [x, y, z] = lerp(rootMm, tipMm, share);
      return {
        centreMm: [x + chordMm / 2, y, z],
        along: [0, Math.cos(slopeRad), Math.sin(slopeRad)],
        normal: [0, -Math.sin(slopeRad), Math.cos(slopeRad)],
        spanMm: lengthMm / STRIPS,
        chordMm,
      };
    }),
  );
  return surface.sides === 'both' ? [...right, ...right.map(mirrored)] : right;
}

const mirrored = (strip: AirStrip): AirStrip => ({
  ...strip,
  centreMm: mirrorY(strip.centreMm),
  along: mirrorY(strip.along),
  normal: mirrorY(strip.normal),
});
