import { useThree } from '@react-three/fiber';
import { useEffect } from 'react';
import { Plane, Vector3 } from 'three';
import { useView } from '../../store/react';

/** Keeps the right-hand half, a hair over the plane of symmetry so that what lies on it is whole. World axes. */
const CENTRE_PLANE = new Plane(new Vector3(0, 0, -1), 0.5);

/** For the materials of the airframe: at work only while the aircraft is shown cut. */
export const cutPlanes = [CENTRE_PLANE];

/** Takes off the left half of all that is clipped by it, while that is asked for. */
export function useCut(): void {
  const cut = useView(({ looking }) => looking.cut);
  const gl = useThree((state) => state.gl);
  const invalidate = useThree((state) => state.invalidate);
  useEffect(() => {
    gl.localClippingEnabled = cut;
    invalidate();
  }, [cut, gl, invalidate]);
}
