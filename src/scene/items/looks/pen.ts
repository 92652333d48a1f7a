import type { Vec3 } from '../../../engine/geometry/types';
import { addScaled, cross, normalise, sub } from '../../../engine/geometry/vec3';

/** What a face is made of; the palette says how that looks. `role` is the colour of what the item is for. */
export type Stuff =
  | 'role'
  | 'shade'
  | 'pale'
  | 'black'
  | 'metal'
  | 'dark'
  | 'brass'
  | 'glass'
  | 'red'
  | 'lead';

/** Facets and drawn lines in the item's own frame, mm. */
export interface Drawing {
  /** Three corners to a facet, three figures to a corner. */
  readonly positions: number[];
  readonly normals: number[];
  /** One for each corner. */
  readonly stuffs: Stuff[];
  /** Pairs of points. */
  readonly lines: number[];
}

const emptyDrawing = (): Drawing => ({ positions: [], normals: [], stuffs: [], lines: [] });

/** A closed ring of points, all at one station along the pen's way. */
type Ring = readonly Vec3[];

/** Lines of rings smaller than this are left out, mm: they would only be a blot. */
const LEAST_RING_MM = 4;

export interface Pen {
  readonly drawing: Drawing;
  /** A facet, seen from where its corners go round to the left. */
  facet(a: Vec3, b: Vec3, c: Vec3, stuff: Stuff, normals?: readonly [Vec3, Vec3, Vec3]): void;
  line(points: readonly Vec3[]): void;
  /** A body through rings with the same number of points, closed at both ends; `drawn` rings get their line. */
  through(rings: readonly Ring[], stuff: Stuff | readonly Stuff[], drawn?: readonly number[]): void;
  /** A round bar from one point to another. */
  rod(from: Vec3, to: Vec3, fromMm: number, toMm: number, stuff: Stuff, facets?: number): void;
  /** A box with rounded corners along x, its ends a little drawn in. */
  bar(box: Bar, stuff: Stuff): void;
}

export interface Bar {
  readonly x: readonly [number, number];
  readonly y: readonly [number, number];
  readonly z: readonly [number, number];
  /** Of the corners seen along x, mm. */
  readonly radiusMm: number;
  /** How much smaller the very ends are, mm. */
  readonly endMm?: number;
}

function roundedRing(x: number, { y, z, radiusMm }: Bar, inMm: number): Vec3[] {
  const [cy, cz] = [(y[0] + y[1]) / 2, (z[0] + z[1]) / 2];
  const [hy, hz] = [(y[1] - y[0]) / 2 - inMm, (z[1] - z[0]) / 2 - inMm];
  const r = Math.max(0, Math.min(radiusMm, hy, hz));
  const ring: Vec3[] = [];
  for (let corner = 0; corner < 4; corner += 1) {
    const [sy, sz] = [corner === 0 || corner === 3 ? 1 : -1, corner < 2 ? 1 : -1];
    for (let step = 0; step <= 3; step += 1) {
      const angle = ((corner + step / 3) * Math.PI) / 2;
      ring.push([x, cy + sy * (hy - r) + r * Math.cos(angle), cz + sz * (hz - r) + r * Math.sin(angle)]);
    }
  }
  return ring;
}

/** A circle square to a way, mm. */
export function circleRing(at: Vec3, way: Vec3, radiusMm: number, facets: number): Vec3[] {
  const along = normalise(way) ?? [1, 0, 0];
  const help: Vec3 = Math.abs(along[2]) < 0.9 ? [0, 0, 1] : [0, 1, 0];
  const u = normalise(cross(help, along)) ?? [0, 1, 0];
  const v = cross(along, u);
  return Array.from({ length: facets }, (_, i) => {
    const angle = (2 * Math.PI * i) / facets;
    return addScaled(addScaled(at, u, radiusMm * Math.cos(angle)), v, radiusMm * Math.sin(angle));
  });
}

const middle = (ring: Ring): Vec3 => {
  const sum = ring.reduce<Vec3>((a, b) => addScaled(a, b, 1), [0, 0, 0]);
  return [sum[0] / ring.length, sum[1] / ring.length, sum[2] / ring.length];
};

const girth = (ring: Ring): number => {
  const first: Vec3 = ring[0] ?? [0, 0, 0];
  return Math.hypot(...sub(first, middle(ring)));
};

export function createPen(): Pen {
  const drawing = emptyDrawing();
  const facet: Pen['facet'] = (a, b, c, stuff, normals) => {
    const flat = normalise(cross(sub(b, a), sub(c, a)));
    if (!flat) return;
    const [na, nb, nc] = normals ?? [flat, flat, flat];
    drawing.positions.push(...a, ...b, ...c);
    drawing.normals.push(...na, ...nb, ...nc);
    drawing.stuffs.push(stuff, stuff, stuff);
  };
  const line: Pen['line'] = (points) => {
    for (let i = 1; i < points.length; i += 1) drawing.lines.push(...points[i - 1]!, ...points[i]!);
  };
  const cap = (ring: Ring, stuff: Stuff, ends: 'first' | 'last') => {
    const centre = middle(ring);
    ring.forEach((point, i) => {
      const next = ring[(i + 1) % ring.length]!;
      if (ends === 'first') facet(centre, next, point, stuff);
      else facet(centre, point, next, stuff);
    });
  };
  /** Smooth round, crisp along: each band has the normals of its own slope. */
  const band = (from: Ring, to: Ring, stuff: Stuff) => {
    const [ca, cb] = [middle(from), middle(to)];
    const way = sub(cb, ca);
    const outward = (ring: Ring, centre: Vec3, other: Ring, i: number): Vec3 => {
      const before = ring[(i + ring.length - 1) % ring.length]!;
      const after = ring[(i + 1) % ring.length]!;
      const slope = sub(other[i]!, ring[i]!);
      const along = ring === from ? slope : sub(ring[i]!, other[i]!);
      const normal = normalise(cross(sub(after, before), along));
      return normal ?? normalise(sub(ring[i]!, centre)) ?? way;
    };
    from.forEach((a, i) => {
      const k = (i + 1) % from.length;
      const [b, c, d] = [from[k]!, to[k]!, to[i]!];
      const [na, nb] = [outward(from, ca, to, i), outward(from, ca, to, k)];
      const [nc, nd] = [outward(to, cb, from, k), outward(to, cb, from, i)];
      facet(a, b, c, stuff, [na, nb, nc]);
      facet(a, c, d, stuff, [na, nc, nd]);
    });
  };
  const through: Pen['through'] = (rings, stuff, drawn = [0, rings.length - 1]) => {
    const of = (i: number): Stuff => (typeof stuff === 'string' ? stuff : (stuff[i] ?? 'role'));
    const [first, last] = [rings[0], rings.at(-1)];
    if (!first || !last) return;
    cap(first, of(0), 'first');
    for (let i = 1; i < rings.length; i += 1) band(rings[i - 1]!, rings[i]!, of(i - 1));
    cap(last, of(rings.length - 2), 'last');
    for (const i of drawn) {
      const ring = rings[i];
      if (ring && girth(ring) >= LEAST_RING_MM) line([...ring, ring[0]!]);
    }
  };
  return {
    drawing,
    facet,
    line,
    through,
    rod: (from, to, fromMm, toMm, stuff, facets = 16) => {
      const way = sub(to, from);
      through([circleRing(from, way, fromMm, facets), circleRing(to, way, toMm, facets)], stuff);
    },
    bar: (box, stuff) => {
      const { x, endMm = 0 } = box;
      const soft = Math.min(endMm, (x[1] - x[0]) / 4);
      const rings =
        soft > 0
          ? [
              roundedRing(x[0], box, soft),
              roundedRing(x[0] + soft, box, 0),
              roundedRing(x[1] - soft, box, 0),
              roundedRing(x[1], box, soft),
            ]
          : [roundedRing(x[0], box, 0), roundedRing(x[1], box, 0)];
      through(rings, stuff, soft > 0 ? [1, 2] : [0, 1]);
    },
  };
}
