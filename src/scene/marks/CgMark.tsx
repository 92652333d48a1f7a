import { useMemo, useRef } from 'react';
import { type Group, type Mesh, type Sprite, Vector3 } from 'three';
import type { LineSegments2 } from 'three/examples/jsm/lines/LineSegments2.js';
import { MOST_FUEL_STATES } from '../../model/balance/balance';
import { useLive } from '../../store/react';
import { mmPerPixel } from '../frame/mmPerPixel';
import { useEachFrame } from '../frame/useEachFrame';
import { useGroundMm } from '../frame/useGround';
import { FatLines, moveLines } from '../materials/FatLines';
import { usePalette } from '../materials/palette';
import { useDisposed } from '../materials/useDisposed';
import { cgDiscTexture } from './cgDisc';

/** The disc's diameter on screen, CSS pixels. */
const DISC_PX = 29;
/** Beyond the picture's edge, mm. */
const FAR_MM = 30_000;

/** The quartered disc of engineering drawings where the CG is, its plumb line, and its travel from full to dry. */
export function CgMark() {
  const palette = usePalette();
  const groundMm = useGroundMm();
  const mark = useRef<Group>(null);
  const disc = useRef<Sprite>(null);
  const ghost = useRef<Sprite>(null);
  const bob = useRef<Mesh>(null);
  const plumb = useRef<LineSegments2>(null);
  const halo = useRef<LineSegments2>(null);
  const trail = useRef<LineSegments2>(null);
  const texture = useDisposed(() => cgDiscTexture('#101a22', '#ffffff'), []);
  const two = useMemo(() => new Float32Array(12), []);
  const path = useMemo(() => new Float32Array(MOST_FUEL_STATES * 6), []);

  useLive(({ balance, view }) => {
    const { cgMm, travel } = balance.get();
    if (!mark.current || !plumb.current || !halo.current || !trail.current) return;
    mark.current.visible = cgMm !== null;
    if (!cgMm) return;
    const [x, y, z] = cgMm;
    disc.current?.position.set(x, y, z);
    ghost.current?.position.set(x, y, z);
    bob.current?.position.set(x, y, groundMm + 11);
    const { view: looking } = view.getState();
    const free = looking === 'free';
    if (bob.current) bob.current.visible = free;
    const foot = looking === 'top' ? [x, -FAR_MM, z] : [x, y, free ? groundMm : -FAR_MM];
    const toRule = free ? [x, y, groundMm, x, 0, groundMm] : [x, y, z, x, y, z];
    const pairs = [x, y, z, ...foot, ...toRule];
    moveLines(plumb.current, pairs);
    moveLines(halo.current, pairs);
    moveLines(
      trail.current,
      travel.slice(1).flatMap((point, i) => [...(travel[i]?.cgMm ?? point.cgMm), ...point.cgMm]),
    );
  });

  const at = useMemo(() => new Vector3(), []);
  useEachFrame(({ camera, size }) => {
    if (!disc.current || !ghost.current) return;
    const scale = DISC_PX * mmPerPixel(camera, size.height, disc.current.getWorldPosition(at));
    disc.current.scale.setScalar(scale);
    ghost.current.scale.setScalar(scale);
  });

  return (
    <group ref={mark}>
      <FatLines
        ref={trail}
        pairs={path}
        moving
        color="#ffffff"
        widthPx={4}
        opacity={0.85}
        depthTest={false}
        renderOrder={40}
      />
      <FatLines
        ref={halo}
        pairs={two}
        moving
        color="#0b1218"
        widthPx={4}
        opacity={0.4}
        depthTest={false}
        renderOrder={41}
      />
      <FatLines
        ref={plumb}
        pairs={two}
        moving
        color="#ffffff"
        widthPx={1.8}
        depthTest={false}
        renderOrder={42}
      />
      <mesh ref={bob} rotation={[-Math.PI / 2, 0, 0]} renderOrder={43}>
        <coneGeometry args={[6, 22, 24]} />
        <meshStandardMaterial color={palette.band} roughness={0.35} metalness={0.35} />
      </mesh>
      {/* Once through everything, faintly, and once where nothing solid is before it. */}
      <sprite ref={ghost} renderOrder={44}>
        <spriteMaterial map={texture} transparent opacity={0.72} depthTest={false} depthWrite={false} />
      </sprite>
      <sprite ref={disc} renderOrder={45}>
        <spriteMaterial map={texture} transparent depthWrite={false} />
      </sprite>
    </group>
  );
}
