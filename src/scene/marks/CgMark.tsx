import { useEffect, useMemo, useRef } from 'react';
import { type Group, type Sprite, Vector3 } from 'three';
import type { LineSegments2 } from 'three/examples/jsm/lines/LineSegments2.js';
import { MOST_FUEL_STATES } from '../../model/balance/balance';
import type { Bench } from '../../store/bench';
import { useBench, useLive } from '../../store/react';
import { layerShown } from '../../store/viewStore';
import { mmPerPixel, stretchOf } from '../frame/mmPerPixel';
import { useTilt } from '../frame/tilt';
import { useEachFrame } from '../frame/useEachFrame';
import { FatLines, moveLines } from '../materials/FatLines';
import { usePalette } from '../materials/palette';
import { useDisposed } from '../materials/useDisposed';
import { cgDiscTexture } from './cgDisc';
import { plumbLine } from './plumbLine';

/** The disc's diameter on screen, CSS pixels. */
const DISC_PX = 29;
const UP = new Vector3(0, 0, 1);
/** Half the bob's height, mm. */
const BOB_MM = 11;

/** The quartered disc of engineering drawings where the CG is, its plumb line, and its travel from full to dry. */
export function CgMark() {
  const palette = usePalette();
  const bench = useBench();
  const tilt = useTilt();
  const mark = useRef<Group>(null);
  const disc = useRef<Sprite>(null);
  const ghost = useRef<Sprite>(null);
  const bob = useRef<Group>(null);
  const plumb = useRef<LineSegments2>(null);
  const halo = useRef<LineSegments2>(null);
  const trail = useRef<LineSegments2>(null);
  const texture = useDisposed(() => cgDiscTexture('#101a22', '#ffffff'), []);
  const two = useMemo(() => new Float32Array(18), []);
  const path = useMemo(() => new Float32Array(MOST_FUEL_STATES * 6), []);

  const place = ({ balance, view }: Bench) => {
    const { cgMm, travel } = balance.get();
    if (!mark.current || !plumb.current || !halo.current || !trail.current || !bob.current) return;
    const { view: looking, down } = view.getState();
    mark.current.visible = cgMm !== null && layerShown(view.getState(), 'cg');
    if (!cgMm) return;
    const [x, y, z] = cgMm;
    disc.current?.position.set(x, y, z);
    ghost.current?.position.set(x, y, z);
    const { pairs, footMm } = plumbLine(cgMm, looking, down, tilt.getState());
    bob.current.visible = footMm !== null;
    if (footMm) {
      const downward = new Vector3(...down).normalize();
      bob.current.position.set(...footMm).addScaledVector(downward, -BOB_MM);
      bob.current.quaternion.setFromUnitVectors(UP, downward);
    }
    moveLines(plumb.current, pairs);
    moveLines(halo.current, pairs);
    trail.current.visible = travel.length > 1;
    if (travel.length > 1)
      moveLines(
        trail.current,
        travel.slice(1).flatMap((point, i) => [...(travel[i]?.cgMm ?? point.cgMm), ...point.cgMm]),
      );
  };
  useLive(place);
  useEffect(() => tilt.subscribe(() => place(bench)));

  const at = useMemo(() => new Vector3(), []);
  useEachFrame(({ camera, size }) => {
    if (!disc.current || !ghost.current) return;
    const scale = DISC_PX * mmPerPixel(camera, size, disc.current.getWorldPosition(at));
    const stretch = stretchOf(camera, size);
    for (const sprite of [disc.current, ghost.current]) sprite.scale.set(scale, scale * stretch, 1);
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
      <group ref={bob}>
        <mesh rotation={[Math.PI / 2, 0, 0]} renderOrder={43}>
          <coneGeometry args={[6.5, 2 * BOB_MM, 24]} />
          <meshStandardMaterial color={palette.band} roughness={0.35} metalness={0.35} transparent />
        </mesh>
      </group>
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
