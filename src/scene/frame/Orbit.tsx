import { OrbitControls } from '@react-three/drei';
import { useThree } from '@react-three/fiber';
import { type ComponentRef, type RefObject, useEffect } from 'react';
import { MOUSE, type PerspectiveCamera, TOUCH } from 'three';

export type OrbitRef = RefObject<ComponentRef<typeof OrbitControls> | null>;

const MOUSE_BUTTONS = { LEFT: MOUSE.ROTATE, MIDDLE: MOUSE.PAN, RIGHT: MOUSE.PAN };
const FINGERS = { ONE: TOUCH.ROTATE, TWO: TOUCH.DOLLY_PAN };
/** How near the horizon the eye may come, rad from upright. */
const LOWEST_EYE = (87 * Math.PI) / 180;

interface OrbitProps {
  readonly orbit: OrbitRef;
  readonly camera: PerspectiveCamera;
  readonly enabled: boolean;
  /** It is there and can be told what to look at. */
  readonly onReady: () => void;
  /** Somebody takes hold of it. */
  readonly onStart: () => void;
  readonly onChange: () => void;
}

/** The orbit of the free view: turn, move, zoom. */
export default function Orbit({ orbit, camera, enabled, onReady, onStart, onChange }: OrbitProps) {
  const gl = useThree((state) => state.gl);
  useEffect(onReady, [onReady]);
  return (
    <OrbitControls
      ref={orbit}
      camera={camera}
      domElement={gl.domElement}
      enabled={enabled}
      enableDamping={!matchMedia('(prefers-reduced-motion: reduce)').matches}
      dampingFactor={0.12}
      maxPolarAngle={LOWEST_EYE}
      minDistance={250}
      maxDistance={12_000}
      zoomToCursor
      mouseButtons={MOUSE_BUTTONS}
      touches={FINGERS}
      onStart={onStart}
      onChange={onChange}
    />
  );
}
