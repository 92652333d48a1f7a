import { BufferAttribute, BufferGeometry, Group, Mesh, MeshStandardMaterial } from 'three';
import { pointToAircraft } from '../../engine/geometry/rotation';
import type { Pose, Vec3 } from '../../engine/geometry/types';
import { mirrorY } from '../../engine/geometry/vec3';
import type { Shape } from '../../engine/mass/shapes';
import { tessellate } from '../../engine/mass/tessellate';
import { elementPieces } from '../../model/airframe/pieces';
import { poseOf } from '../../model/airframe/poses';
import { shownText } from '../../model/document/names';
import type { Aircraft } from '../../model/document/types';
import type { Palette } from '../materials/palette';

/** Facets to a full circle: fine enough for a print, and small enough to send. */
const SEGMENTS = 32;

/**
 * A place of the aircraft, mm, in the frame of glTF 2.0: metres, y up, z forward, so that the right wing is at −x (glTF 2.0
 * specification, section 3.4).
 */
export const inGltf = ([x, y, z]: Vec3): Vec3 => [-y / 1000, z / 1000, -x / 1000];

/** Colours by what a thing is, as CSS. */
export type ModelColours = Pick<Palette, 'role' | 'liquid'>;

/** One solid of the model where it stands. */
interface Placed {
  readonly shape: Shape;
  readonly pose: Pose;
  /** Turned left for right in its own frame, before it is posed. */
  readonly flipped: boolean;
  /** Left for right as it stands. */
  readonly mirrored: boolean;
}

/** The aircraft as meshes with the names of the file, the structure half seen through. Free with `disposeModel`. */
export function modelScene(aircraft: Aircraft, { role, liquid }: ModelColours): Group {
  const { structure, tanks, parts, name } = aircraft;
  const root = named(new Group(), name);
  const add = (title: string, colour: string, seen: number, solids: readonly Placed[]) => {
    const material = new MeshStandardMaterial({ color: colour, roughness: 0.8, metalness: 0 });
    material.name = title;
    if (seen < 1) Object.assign(material, { transparent: true, opacity: seen, depthWrite: false });
    for (const solid of solids) root.add(named(new Mesh(geometryOf(solid), material), title));
  };
  for (const piece of structure) {
    const solids = elementPieces(piece).map(({ shape, pose, mirrored = false }) => ({
      shape,
      pose,
      flipped: false,
      mirrored,
    }));
    add(piece.name, role('airframe'), piece.kind === 'block' ? 1 : 0.45, solids);
  }
  for (const tank of tanks) {
    const solid = { shape: tank.shape, pose: poseOf(tank), flipped: tank.mirrored === true, mirrored: false };
    add(tank.name, liquid(aircraft.fuel?.kind === 'water'), 0.7, [solid]);
  }
  for (const part of parts) {
    const solid = { shape: part.shape, pose: poseOf(part), flipped: false, mirrored: false };
    add(part.name, role(part.role), 1, [solid]);
  }
  return root;
}

function named<T extends Group | Mesh>(thing: T, name: string): T {
  thing.name = shownText(name);
  return thing;
}

/** Triangles of their own corners, so that edges stay sharp. A solid turned left for right turns its triangles about. */
function geometryOf({ shape, pose, flipped, mirrored }: Placed): BufferGeometry {
  const { verticesMm, triangles } = tessellate(shape, { segments: SEGMENTS });
  const placed = verticesMm.map((each) => {
    const at = pointToAircraft(pose, flipped ? mirrorY(each) : each);
    return inGltf(mirrored ? mirrorY(at) : at);
  });
  const turned = flipped !== mirrored;
  const positions = triangles.flatMap(([a, b, c]) => {
    const corners = (turned ? [a, c, b] : [a, b, c]).map((corner) => placed[corner]!);
    return hasArea(corners) ? corners.flat() : [];
  });
  const geometry = new BufferGeometry();
  geometry.setAttribute('position', new BufferAttribute(Float32Array.from(positions), 3));
  geometry.computeVertexNormals();
  return geometry;
}

/** Whether a triangle has a normal in single precision; one without is no triangle to glTF. */
function hasArea([a, b, c]: readonly Vec3[]): boolean {
  const [p, q, r] = [a!, b!, c!].map((corner) => corner.map(Math.fround) as unknown as Vec3);
  const [u, v] = [q!, r!].map((corner) => corner.map((value, axis) => value - p![axis]!) as unknown as Vec3);
  const [x, y, z] = [
    u![1] * v![2] - u![2] * v![1],
    u![2] * v![0] - u![0] * v![2],
    u![0] * v![1] - u![1] * v![0],
  ];
  return Math.hypot(x!, y!, z!) > 1e-12;
}

/** Frees what `modelScene` made. */
export function disposeModel(root: Group): void {
  root.traverse((thing) => {
    if (!(thing instanceof Mesh)) return;
    thing.geometry.dispose();
    (thing.material as MeshStandardMaterial).dispose();
  });
}
