import { useThree } from '@react-three/fiber';
import { useEffect, useMemo } from 'react';
import { DoubleSide, PlaneGeometry, SRGBColorSpace, TextureLoader } from 'three';
import { asSeen, type ViewPlace } from '../../interaction/trace';
import { headOf } from '../../model/document/traces';
import { useBench, useTrace, useView } from '../../store/react';
import { drawingPlane } from '../frame/drawingPlane';
import { useIsTilted } from '../frame/tilt';
import { useGroundMm } from '../frame/useGround';
import { useDisposed } from '../materials/useDisposed';

/** On the mat and its rule, and under all else. */
const ON_THE_MAT = -18;
/** In front of the mat, mm. */
const OVER_MAT_MM = 0.5;

/** The drawing under the elevation shown; none while the aircraft is held otherwise than level, or the stage is quiet. */
export function TracePlane() {
  const there = useTrace((trace) => trace.shown() !== null);
  const tilted = useIsTilted();
  const quiet = useView(({ looking }) => looking.quiet);
  return there && !tilted && !quiet ? <Laid /> : null;
}

function Laid() {
  const bench = useBench();
  const laid = useTrace((trace) => trace.shown());
  const image = laid?.picture.image ?? '';
  const groundMm = useGroundMm();
  const invalidate = useThree((state) => state.invalidate);
  const texture = useDisposed(() => {
    const damaged = () =>
      bench.notice.tell({
        about: 'drawing',
        tone: 'bad',
        text: 'The drawing under this view cannot be shown: its image is damaged. Lay it anew from its own file.',
      });
    const made = new TextureLoader().load(image, () => invalidate(), undefined, damaged);
    made.colorSpace = SRGBColorSpace;
    return made;
  }, [image]);
  // One by one, hung by its upper left corner.
  const geometry = useDisposed(() => new PlaneGeometry(1, 1).translate(0.5, -0.5, 0), []);
  const view = laid?.trace.view ?? 'side';
  const plane = useMemo(() => drawingPlane(view, groundMm), [view, groundMm]);
  useEffect(() => invalidate());
  const size = laid && headOf(laid.picture);
  if (!laid || !size) return null;
  const { trace } = laid;
  const [right, up]: ViewPlace = asSeen(view, trace.cornerMm);
  const [wide, high] = [size.widthPx * trace.mmPerPx, size.heightPx * trace.mmPerPx];
  return (
    <group matrix={plane} matrixAutoUpdate={false}>
      <mesh
        geometry={geometry}
        position={[right, up, OVER_MAT_MM]}
        rotation={[0, 0, (trace.turnDeg * Math.PI) / 180]}
        scale={[trace.mirrored ? -wide : wide, high, 1]}
        renderOrder={ON_THE_MAT}
        frustumCulled={false}
      >
        <meshBasicMaterial
          key={texture.uuid}
          map={texture}
          opacity={trace.opacity}
          transparent
          depthWrite={false}
          side={DoubleSide}
        />
      </mesh>
    </group>
  );
}
