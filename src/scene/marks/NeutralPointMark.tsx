import { type RefObject, useMemo, useRef } from 'react';
import { type Camera, Vector3 } from 'three';
import type { LineSegments2 } from 'three/examples/jsm/lines/LineSegments2.js';
import type { Vec3 } from '../../engine/geometry/types';
import type { LabelBox } from '../../interaction/labelPlaces';
import { wingPlanform } from '../../model/stability/band';
import type { Bench } from '../../store/bench';
import { useBench, useLive } from '../../store/react';
import { toWorld } from '../frame/frame';
import { useEachFrame } from '../frame/useEachFrame';
import { useGroundMm } from '../frame/useGround';
import { FatLines, moveLines } from '../materials/FatLines';
import type { StabilityElements } from './StabilityOverlay';

/** Beyond the picture's edge, mm. */
const FAR_MM = 30_000;
/** Half the tick across the rule, mm. */
const TICK_MM = 34;
/** What the words beside a mark take up, px. */
const WORDS_PX = 120;
/** The sign's ring stands so far above its place, clear of the CG's disc, px. */
const STEM_PX = 32;

/** Its station is all that the neutral point has; it is drawn as high as the CG, so that the gap between them shows. */
function placeOf({ stability, balance }: Bench): Vec3 | null {
  const { estimate } = stability.get();
  return estimate && [estimate.neutralPointMm, 0, balance.get().cgMm?.[2] ?? 0];
}

interface NeutralPointMarkProps {
  readonly elements: RefObject<StabilityElements>;
}

/** The estimated neutral point: its line down to the rule, and its sign over the picture with each frame. */
export function NeutralPointMark({ elements }: NeutralPointMarkProps) {
  const bench = useBench();
  const groundMm = useGroundMm();
  const line = useRef<LineSegments2>(null);
  const halo = useRef<LineSegments2>(null);
  const spare = useMemo(() => new Float32Array(12), []);
  const point = useMemo(() => new Vector3(), []);

  useLive((live) => {
    const at = placeOf(live);
    const { view } = live.view.getState();
    for (const one of [line.current, halo.current]) {
      if (!one) continue;
      one.visible = at !== null && view !== 'front';
      one.material.opacity = (one === line.current ? 0.95 : 0.35) * (live.stability.get().fresh ? 1 : 0.4);
      if (!at) continue;
      const [x, y, z] = at;
      const free = view === 'free';
      const foot = view === 'top' ? [x, -FAR_MM, z] : [x, y, free ? groundMm : -FAR_MM];
      const tick = free ? [x, -TICK_MM, groundMm, x, TICK_MM, groundMm] : [x, y, z, x, y, z];
      moveLines(one, [x, y, z, ...foot, ...tick]);
    }
  });

  useEachFrame(({ camera, size }) => {
    const { neutralPoint, mac } = elements.current;
    const { view } = bench.view.getState();
    const boxes: LabelBox[] = [];
    elements.current.boxes = boxes;
    const put = (element: HTMLElement | null, at: Vec3 | null, leftward: boolean, upPx: number) => {
      if (!element) return;
      const seen = at && inPicture(at, camera, point);
      element.style.visibility = seen ? 'visible' : 'hidden';
      if (!seen) return;
      const [x, y] = [((point.x + 1) / 2) * size.width, ((1 - point.y) / 2) * size.height];
      element.style.transform = `translate(${x}px, ${y}px)`;
      const flip = leftward || x > size.width - WORDS_PX;
      element.dataset.flip = String(flip);
      boxes.push({
        left: flip ? x - WORDS_PX : x - 12,
        top: y - upPx - 12,
        width: WORDS_PX + 12,
        height: 24,
      });
    };
    put(neutralPoint, view === 'front' ? null : placeOf(bench), false, STEM_PX);
    const wing = view === 'top' || view === 'free' ? wingPlanform(bench.document.current()) : null;
    put(mac, wing && [wing.lemacMm, -wing.macButtlineMm, wing.macWaterlineMm], true, 0);
  });

  return (
    <>
      <FatLines
        ref={halo}
        pairs={spare}
        moving
        color="#0b1218"
        widthPx={3.4}
        opacity={0.35}
        depthTest={false}
        renderOrder={36}
      />
      <FatLines
        ref={line}
        pairs={spare}
        moving
        color="#ffffff"
        widthPx={1.2}
        opacity={0.95}
        depthTest={false}
        renderOrder={37}
      />
    </>
  );
}

/** Projects a point of the aircraft; false when it lies behind the eye or off the picture. */
function inPicture(atMm: Vec3, camera: Camera, into: Vector3): boolean {
  toWorld(atMm, into).project(camera);
  return Math.abs(into.x) < 1 && Math.abs(into.y) < 1 && Math.abs(into.z) < 1;
}
