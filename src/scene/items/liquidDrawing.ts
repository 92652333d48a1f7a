import {
  BufferAttribute,
  BufferGeometry,
  Color,
  DoubleSide,
  DynamicDrawUsage,
  Group,
  ShaderMaterial,
  Mesh as Solid,
  Vector3,
} from 'three';
import { LineMaterial } from 'three/examples/jsm/lines/LineMaterial.js';
import { LineSegments2 } from 'three/examples/jsm/lines/LineSegments2.js';
import { LineSegmentsGeometry } from 'three/examples/jsm/lines/LineSegmentsGeometry.js';
import { polygonArea } from '../../engine/geometry/polygon';
import { triangulate } from '../../engine/geometry/triangulate';
import type { Vec3 } from '../../engine/geometry/types';
import { moveLines } from '../materials/FatLines';

/**
 * The liquid of one tank, in the tank's own frame: the inside of the tank shown only where it is wet, the
 * free surface as its lid, and the dark line where the two meet.
 */
export interface LiquidDrawing {
  readonly group: Group;
  paint(color: string): void;
  /** Draws the liquid below a plane; asks for the surface only when the plane is another. */
  show(down: Vec3, offsetMm: number, surface: () => readonly (readonly Vec3[])[]): void;
  hide(): void;
  dispose(): void;
}

const vertexShader = /* glsl */ `
  varying vec3 vOwn;
  varying vec3 vNormal;
  void main() {
    vOwn = position;
    vNormal = normalMatrix * normal;
    gl_Position = projectionMatrix * modelViewMatrix * vec4(position, 1.0);
  }
`;

/** A point is wet where down · p is at least the offset. */
const fragmentShader = /* glsl */ `
  varying vec3 vOwn;
  varying vec3 vNormal;
  uniform vec3 uColor, uDown;
  uniform float uOffset, uLid;
  void main() {
    if (uLid < 0.5 && dot(vOwn, uDown) < uOffset) discard;
    if (uLid > 0.5) {
      gl_FragColor = vec4(mix(uColor, vec3(1.0), 0.34), 0.94);
    } else {
      // Deeper is darker, and so is the glass seen along its wall.
      float facing = abs(normalize(vNormal).z);
      float deep = clamp((dot(vOwn, uDown) - max(uOffset, -1e6)) / 90.0, 0.0, 1.0);
      gl_FragColor = vec4(uColor * mix(0.62, 1.0, facing) * mix(1.0, 0.82, deep), 0.9);
    }
    #include <colorspace_fragment>
  }
`;

/** Corners of the free surface's edge that there is room for. */
const MOST_CORNERS = 512;

const liquidMaterial = (lid: 0 | 1) =>
  new ShaderMaterial({
    vertexShader,
    fragmentShader,
    transparent: true,
    depthWrite: lid === 1,
    side: DoubleSide,
    uniforms: {
      uColor: { value: new Color() },
      uDown: { value: new Vector3(0, 0, -1) },
      uOffset: { value: 0 },
      uLid: { value: lid },
    },
  });

/** Triangles of one polygon of the free surface, laid flat along the axis that down is nearest to. */
function lidCorners(polygon: readonly Vec3[], down: Vec3): number[] {
  const steepest = [0, 1, 2].reduce((a, b) => (Math.abs(down[b]!) > Math.abs(down[a]!) ? b : a));
  const [u, v] = [(steepest + 1) % 3, (steepest + 2) % 3];
  const flat = polygon.map((p) => [p[u]!, p[v]!] as const);
  const clockwise = polygonArea(flat) < 0;
  const order = clockwise ? polygon.toReversed() : polygon;
  return triangulate(clockwise ? flat.toReversed() : flat).flatMap((triangle) =>
    triangle.flatMap((i) => order[i] ?? []),
  );
}

/** @param inside the tank's inside, owned by the caller */
export function createLiquidDrawing(inside: BufferGeometry): LiquidDrawing {
  const wet = liquidMaterial(0);
  const lid = liquidMaterial(1);
  const body = new Solid(inside, wet);
  body.renderOrder = 21.6;
  const surface = new BufferGeometry();
  const places = new BufferAttribute(new Float32Array(MOST_CORNERS * 9), 3).setUsage(DynamicDrawUsage);
  surface.setAttribute('position', places);
  const top = new Solid(surface, lid);
  top.renderOrder = 21.55;
  const edge = new LineSegmentsGeometry().setPositions(new Float32Array(MOST_CORNERS * 6));
  const line = new LineMaterial({ linewidth: 2.6, transparent: true, depthWrite: false, side: DoubleSide });
  const meniscus = new LineSegments2(edge, line);
  meniscus.renderOrder = 21.7;
  for (const drawn of [top, meniscus]) drawn.frustumCulled = false;
  const group = new Group().add(body, top, meniscus);
  let shown = '';

  const write = (down: Vec3, polygons: readonly (readonly Vec3[])[]) => {
    const corners = polygons.flatMap((polygon) => lidCorners(polygon, down));
    const drawn = corners.slice(0, MOST_CORNERS * 9);
    places.array.set(drawn);
    places.needsUpdate = true;
    surface.setDrawRange(0, drawn.length / 3);
    // A tank filled to the brim has no surface: nothing is drawn of it.
    top.visible = polygons.length > 0;
    meniscus.visible = polygons.length > 0;
    const pairs = polygons.flatMap((polygon) =>
      polygon.flatMap((point, k) => [...point, ...(polygon[(k + 1) % polygon.length] ?? point)]),
    );
    moveLines(meniscus, pairs.slice(0, MOST_CORNERS * 6));
  };

  return {
    group,
    paint: (color) => {
      for (const { uniforms } of [wet, lid]) uniforms.uColor?.value.set(color);
      line.color = new Color(color).lerp(new Color('#04121f'), 0.78);
    },
    show: (down, offsetMm, cut) => {
      group.visible = true;
      const key = [...down, offsetMm.toFixed(3)].join(' ');
      if (key === shown) return;
      shown = key;
      wet.uniforms.uDown?.value.set(...down);
      wet.uniforms.uOffset!.value = offsetMm;
      write(down, cut());
    },
    hide: () => {
      group.visible = false;
    },
    dispose: () => {
      for (const held of [surface, edge, wet, lid, line]) held.dispose();
    },
  };
}
