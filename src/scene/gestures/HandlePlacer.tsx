import { useThree } from '@react-three/fiber';
import { type RefObject, useEffect, useMemo } from 'react';
import { type Camera, Vector3 } from 'three';
import type { Vec3 } from '../../engine/geometry/types';
import { addScaled } from '../../engine/geometry/vec3';
import { toWorld } from '../frame/frame';
import { mmPerPixel } from '../frame/mmPerPixel';
import { pointerRay } from '../frame/picking';
import { useEachFrame } from '../frame/useEachFrame';
import type { HandlePlace, Knob } from './handlePlace';

/** So far from its place a knob stands, and no two nearer to each other than this, px. */
const LEAN_PX = 20;
const APART_PX = 30;
/** A line that is seen shorter than this share of its length runs too nearly towards the eye to be dragged along. */
const LEAST_SEEN = 0.25;
/** The field beside a knob, as its style sheet has it, px. */
const FIELD = { width: 226, height: 40, beside: 22 } as const;

interface Size {
  readonly width: number;
  readonly height: number;
}

/** Writes where each knob stands with each frame, and tells the knobs where a pointer leads. */
export function HandlePlacer({ place }: { readonly place: RefObject<HandlePlace> }) {
  const get = useThree((state) => state.get);
  const invalidate = useThree((state) => state.invalidate);
  const point = useMemo(() => new Vector3(), []);
  useEffect(() => {
    const here = place.current;
    here.ray = (clientX, clientY) => {
      const { left, top, width, height } = get().gl.domElement.getBoundingClientRect();
      return pointerRay(get().camera, [
        ((clientX - left) / width) * 2 - 1,
        1 - ((clientY - top) / height) * 2,
      ]);
    };
    here.mmPerPx = ({ atMm }) => mmPerPixel(get().camera, get().size, toWorld(atMm, new Vector3()));
    here.refresh = () => invalidate();
    return () => {
      here.ray = null;
      here.mmPerPx = null;
      here.refresh = null;
    };
  }, [place, get, invalidate]);

  useEachFrame(({ camera, size }) => {
    const { knobs, field } = place.current;
    if (knobs.length === 0) return;
    const taken: (readonly [number, number])[] = [];
    for (const knob of knobs) {
      const stands = standing(knob, camera, size, point, taken);
      const { style } = knob.element;
      style.visibility = stands ? 'visible' : 'hidden';
      if (!stands) continue;
      taken.push(stands.at);
      style.transform = `translate(${stands.at[0]}px, ${stands.at[1]}px)`;
      style.setProperty('--turn', `${stands.turnDeg}deg`);
      if (field?.handleId === knob.handle.id) putBeside(field.element, stands.at, size);
    }
  });
  return null;
}

/** Where a knob stands in the picture, px, and which way its line runs; null where it cannot be dragged. */
function standing(
  { handle }: Knob,
  camera: Camera,
  size: Size,
  into: Vector3,
  taken: readonly (readonly [number, number])[],
): { readonly at: readonly [number, number]; readonly turnDeg: number } | null {
  const { atMm, axis, lean = 1 } = handle;
  const from = project(atMm, camera, size, into);
  const mm = mmPerPixel(camera, size, toWorld(atMm, into)) * 100;
  const to = project(addScaled(atMm, axis, mm), camera, size, into);
  if (!from || !to) return null;
  const [dx, dy] = [to[0] - from[0], to[1] - from[1]];
  const seen = Math.hypot(dx, dy);
  if (seen < 100 * LEAST_SEEN) return null;
  const [ux, uy] = [dx / seen, dy / seen];
  const side = lean === 0 ? 1 : lean;
  let off = LEAN_PX * lean;
  const at = (): [number, number] => [from[0] + off * ux, from[1] + off * uy];
  const crowded = () => taken.some(([x, y]) => Math.hypot(x - at()[0], y - at()[1]) < APART_PX);
  // What marks a place stays at it, or waits until one looks nearer.
  for (let turn = 0; lean !== 0 && turn < 6 && crowded(); turn += 1) off += side * APART_PX;
  if (crowded()) return null;
  const [x, y] = at();
  if (x < 0 || y < 0 || x > size.width || y > size.height) return null;
  return { at: [x, y], turnDeg: (Math.atan2(uy, ux) * 180) / Math.PI };
}

function project(atMm: Vec3, camera: Camera, size: Size, into: Vector3): [number, number] | null {
  toWorld(atMm, into).project(camera);
  if (Math.abs(into.z) > 1) return null;
  return [((into.x + 1) / 2) * size.width, ((1 - into.y) / 2) * size.height];
}

/** The field stands to the right of its knob, or to the left where the stage ends. */
function putBeside(element: HTMLElement, [x, y]: readonly [number, number], { width, height }: Size): void {
  const right = x + FIELD.beside + FIELD.width <= width;
  const left = right ? x + FIELD.beside : Math.max(4, x - FIELD.beside - FIELD.width);
  const top = Math.min(height - FIELD.height - 4, Math.max(4, y - FIELD.height / 2));
  element.style.transform = `translate(${left}px, ${top}px)`;
}
