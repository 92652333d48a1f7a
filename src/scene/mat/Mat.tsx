import { useEffect, useLayoutEffect, useMemo, useRef } from 'react';
import { type Color, type Group, PlaneGeometry, Quaternion } from 'three';
import type { Extent } from '../../interaction/snap';
import { pieces } from '../../model/airframe/pieces';
import type { Aircraft } from '../../model/document/types';
import type { Bench } from '../../store/bench';
import {
  useAircraft,
  useAxis,
  useBench,
  useCommitted,
  useLive,
  useSteadyList,
  useView,
} from '../../store/react';
import { type Rect, silhouetteShadow } from '../airframe/silhouetteShadow';
import { drawingPlane } from '../frame/drawingPlane';
import { useIsTilted, useTilt } from '../frame/tilt';
import { extentOnce, useExtent } from '../frame/useGround';
import { usePalette } from '../materials/palette';
import { useDisposed } from '../materials/useDisposed';
import { graduation, type RuleRun } from './graduation';
import { createMatMaterial } from './matMaterial';
import { matRect } from './matRect';
import { RuleFigures } from './RuleFigures';
import { ruleRun } from './ruleRun';

const NO_TURN = new Quaternion();
/** In the elevations the mat is the whole backdrop, mm. */
const ENDLESS_MM = 60_000;

/** Around the mat, where it shades the bench it lies on, mm. */
const AROUND_MM = 150;

/** The cutting mat with its grid, its printed rule, the band's strip and the shadow of the airframe. */
export function Mat() {
  const palette = usePalette();
  const view = useView((state) => state.view);
  const units = useView((state) => state.units);
  const extent = useExtent();
  // The shadow follows once a reshaped piece is let go: it is too slow to paint with every move.
  const structure = useCommitted(pieces);
  const zeroMm = useZero(view === 'front');
  const rect = useCommitted(useSteadyList((aircraft: Aircraft) => matRect(extentOnce(aircraft)))) as Rect;
  const shadow = useDisposed(() => silhouetteShadow(structure, rect), [structure, rect]);
  const material = useDisposed(createMatMaterial, []);
  const plane = useMemo(() => drawingPlane(view, extent.minMm[2]), [view, extent.minMm[2]]);
  const mat = view === 'free';
  const tilt = useTilt();
  const bench = useBench();
  const world = useRef<Group>(null);
  // Stations stand over the rule only while the aircraft is level: held otherwise, the mat is just the ground.
  const printed = !useIsTilted() || !mat;
  const quad = useDisposed(() => {
    const [x0, y0, x1, y1] = mat ? rect : [-ENDLESS_MM, -ENDLESS_MM, ENDLESS_MM, ENDLESS_MM];
    return new PlaneGeometry(x1 - x0 + 2 * AROUND_MM, y1 - y0 + 2 * AROUND_MM).translate(
      (x0 + x1) / 2,
      (y0 + y1) / 2,
      0,
    );
  }, [mat, rect]);
  // Printed upright even where the span has a scale of its own.
  const stretch = useAxis(({ spanStretch }) => (view === 'top' ? spanStretch : 1));
  const run = useRule(extent, zeroMm);

  useLayoutEffect(() => {
    const set = material.uniforms;
    const color = (name: string, value: string) => (set[name]!.value as Color).set(value);
    set.uShadow!.value = shadow;
    color('uMat', palette.mat);
    color('uLine', palette.matLine);
    color('uRule', palette.matRule);
    color('uBand', palette.band);
    set.uRect?.value.set(...rect);
    set.uShadowRect?.value.set(...rect);
    set.uMasked!.value = mat ? 1 : 0;
    set.uShadowDepth!.value = mat ? (printed ? 0.66 : 0.3) : view === 'top' ? 0.3 : 0;
    set.uSteps?.value.set(...graduation(units));
    set.uOrigin!.value = zeroMm;
    set.uRuleAt?.value.set(run.fromMm, printed ? run.toMm : run.fromMm, run.atMm, run.figureMm * stretch);
  });

  const lightBand = ({ balance, view: looking }: Bench) => {
    const { band } = balance.get();
    const now = looking.getState().view;
    const along = now !== 'front' && (now !== 'free' || tilt.getState().level);
    material.uniforms.uLimitsOn!.value = band && along ? 1 : 0;
    if (band) material.uniforms.uLimits?.value.set(band.forwardMm, band.aftMm);
  };
  useLive(lightBand);

  useEffect(() => {
    const stand = () => {
      if (!world.current) return;
      const { turn, aboutMm, groundMm } = tilt.getState();
      const held = mat ? turn : NO_TURN;
      const [x, y, z] = mat ? aboutMm : [0, 0, 0];
      const lowered = mat ? groundMm - extent.minMm[2] : 0;
      world.current.quaternion.copy(held);
      // About a point: there, turned, and back; and down under the lowest point.
      world.current.position.set(-x, -y, -z + lowered).applyQuaternion(held);
      world.current.position.x += x;
      world.current.position.y += y;
      world.current.position.z += z;
      lightBand(bench);
    };
    stand();
    return tilt.subscribe(stand);
  });

  return (
    <group ref={world}>
      <group matrix={plane} matrixAutoUpdate={false}>
        <mesh geometry={quad} material={material} renderOrder={-20} frustumCulled={false} />
        {printed && (
          <group position-y={run.atMm * (1 - stretch)} scale-y={stretch}>
            <RuleFigures run={run} units={units} color={palette.matRule} />
          </group>
        )}
      </group>
    </group>
  );
}

/** The rule under the aircraft as it is fitted into the picture; a zoom leaves it as it is printed. */
function useRule(extent: Extent, zeroMm: number): RuleRun {
  const bench = useBench();
  const view = useView((state) => state.view);
  const wholeSpan = useView((state) => state.wholeSpan);
  const widthPx = useAxis((axes) => axes.widthPx);
  const heightPx = useAxis((axes) => axes.heightPx);
  // With it the length of the band has changed, as far as it matters to the fit.
  const fittedFor = useAxis((axes) => axes.wholeSpanStretch);
  return useMemo(() => {
    const { band } = bench.balance.get();
    const fit = { bandMm: band && band.aftMm - band.forwardMm, wholeSpan };
    return ruleRun({ view, extent, zeroMm, picture: { widthPx, heightPx }, fit });
  }, [bench, view, extent, zeroMm, widthPx, heightPx, wholeSpan, fittedFor]);
}

/** The station that the rule reads 0 at: the chosen reference point's, or the datum. */
function useZero(onCentreLine: boolean): number {
  const fromId = useView((state) => state.measureFromId);
  const stationMm = useAircraft(
    ({ referencePoints }) => referencePoints.find(({ id }) => id === fromId)?.positionMm[0] ?? 0,
  );
  return onCentreLine ? 0 : stationMm;
}
