import { OrbitControls } from '@react-three/drei';
import { useThree } from '@react-three/fiber';
import { type ComponentRef, type Ref, useImperativeHandle, useRef } from 'react';
import { MOUSE, type PerspectiveCamera, TOUCH, type Vector3 } from 'three';
import { useView } from '../../store/react';
import { lessMotion } from './eased';
import { FARTHEST_MM, LOWEST_EYE, NEAREST_MM } from './freeCamera';

const MOUSE_BUTTONS = { LEFT: MOUSE.ROTATE, MIDDLE: MOUSE.PAN, RIGHT: MOUSE.PAN };
const FINGERS = { ONE: TOUCH.ROTATE, TWO: TOUCH.DOLLY_PAN };

export interface OrbitHandle {
  readonly target: Vector3;
  update(): void;
}

interface OrbitProps {
  readonly ref: Ref<OrbitHandle>;
  readonly camera: PerspectiveCamera;
  /** What is looked at when the orbit comes. */
  readonly homeMm: Vector3;
  readonly onStart: () => void;
  readonly onChange: () => void;
}

/** The free view is turned about what it looks at. */
export default function Orbit({ ref, camera, homeMm, onStart, onChange }: OrbitProps) {
  const enabled = useView((state) => state.view === 'free');
  const gl = useThree((state) => state.gl);
  const orbit = useRef<ComponentRef<typeof OrbitControls>>(null);
  useImperativeHandle(ref, () => {
    const controls = orbit.current;
    if (!controls) throw new Error('the orbit is there before its handle');
    controls.target.copy(homeMm);
    controls.update();
    return { target: controls.target, update: () => controls.update() };
  }, [homeMm]);
  return (
    <OrbitControls
      ref={orbit}
      camera={camera}
      domElement={gl.domElement}
      enabled={enabled}
      enableDamping={!lessMotion()}
      dampingFactor={0.12}
      maxPolarAngle={LOWEST_EYE}
      minDistance={NEAREST_MM}
      maxDistance={FARTHEST_MM}
      zoomToCursor
      mouseButtons={MOUSE_BUTTONS}
      touches={FINGERS}
      onStart={onStart}
      onChange={onChange}
    />
  );
}
