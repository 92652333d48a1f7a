import type { Vec3 } from '../../../engine/geometry/types';
import { circleRing, createPen, type Drawing, type Stuff } from './pen';

const AXIS: Vec3 = [1, 0, 0];
const at = (x: number): Vec3 => [x, 0, 0];

/** A jet engine: flared intake with its nose cone, the case, and a short cone of exhaust. */
export function turbine(l: number, d: number): Drawing {
  const pen = createPen();
  const [h, r] = [l / 2, d / 2];
  const ring = (x: number, radius: number) => circleRing(at(x), AXIS, radius, 36);
  // The intake is hollow: outside forward over the lip, then in and back to the compressor.
  const lip = -h + l * 0.03;
  const hollow: Vec3[][] = [
    ring(-h + l * 0.2, r * 0.52),
    ring(-h + l * 0.08, r * 0.6),
    ring(-h, r * 0.74),
    ring(lip, r * 0.82),
    ring(-h + l * 0.1, r * 0.8),
    ring(-h + l * 0.22, r * 0.9),
    ring(-h + l * 0.25, r),
    ring(-h + l * 0.68, r),
    ring(-h + l * 0.72, r * 0.93),
    ring(-h + l * 0.88, r * 0.86),
    ring(h - l * 0.02, r * 0.62),
    ring(h, r * 0.6),
    ring(h - l * 0.1, r * 0.54),
  ];
  const stuffs: Stuff[] = [
    'dark',
    'dark',
    'metal',
    'metal',
    'metal',
    'role',
    'role',
    'role',
    'dark',
    'metal',
    'metal',
    'black',
  ];
  pen.through(hollow, stuffs, [2, 6, 7, 9, 11]);
  pen.rod(at(-h + l * 0.2), at(-h + l * 0.06), r * 0.2, r * 0.04, 'metal', 24);
  for (let i = 0; i < 9; i += 1) {
    const angle = (i * 2 * Math.PI) / 9;
    const blade = (radius: number, x: number, lag: number): Vec3 => [
      x,
      radius * Math.cos(angle + lag),
      radius * Math.sin(angle + lag),
    ];
    const [a, b, c] = [
      blade(r * 0.18, -h + l * 0.14, 0),
      blade(r * 0.5, -h + l * 0.1, 0.12),
      blade(r * 0.5, -h + l * 0.17, 0.5),
    ];
    pen.facet(a, b, c, 'pale');
    pen.facet(a, c, b, 'pale');
  }
  // Glow plug and fittings on the case, within its own circle.
  pen.rod([-h + l * 0.5, 0, r * 0.9], [-h + l * 0.5, 0, r * 0.994], r * 0.08, r * 0.08, 'brass', 10);
  return pen.drawing;
}

/** A cylinder with cooling fins along its axis, the head with its plug at the aft end of its own frame. */
export function finned(l: number, d: number, headAft: boolean): Drawing {
  const pen = createPen();
  const [h, r] = [l / 2, d / 2];
  const way = headAft ? 1 : -1;
  const x = (share: number) => at(way * (-h + l * share));
  pen.rod(x(0), x(0.14), r * 0.92, r * 0.92, 'role', 28);
  pen.rod(x(0.14), x(0.86), r * 0.66, r * 0.66, 'shade', 28);
  const fins = Math.max(5, Math.min(10, Math.round(l / 8)));
  for (let i = 0; i < fins; i += 1) {
    const from = 0.2 + (0.56 * i) / fins;
    pen.rod(x(from), x(from + 0.24 / fins), r, r * 0.98, 'role', 28);
  }
  pen.rod(x(0.76), x(0.86), r * 0.9, r * 0.7, 'metal', 28);
  pen.rod(x(0.86), x(0.91), r * 0.22, r * 0.22, 'brass', 6);
  pen.rod(x(0.91), x(1), r * 0.16, r * 0.13, 'pale', 14);
  return pen.drawing;
}

/** A crankcase: stepped, with a ring of bolts ahead and a hub behind. */
export function crankcase(l: number, d: number): Drawing {
  const pen = createPen();
  const [h, r] = [l / 2, d / 2];
  const x = (share: number) => at(-h + l * share);
  pen.rod(x(0), x(0.1), r, r, 'shade', 32);
  pen.rod(x(0.1), x(0.55), r * 0.88, r * 0.92, 'role', 32);
  pen.rod(x(0.55), x(0.65), r, r * 0.96, 'role', 32);
  pen.rod(x(0.65), x(0.9), r * 0.6, r * 0.42, 'role', 28);
  pen.rod(x(0.9), x(1), r * 0.3, r * 0.3, 'metal', 20);
  for (let i = 0; i < 6; i += 1) {
    const angle = (i * Math.PI) / 3;
    const [y, z] = [r * 0.84 * Math.cos(angle), r * 0.84 * Math.sin(angle)];
    pen.rod([-h + l * 0.1, y, z], [-h + l * 0.15, y, z], r * 0.09, r * 0.09, 'brass', 6);
  }
  return pen.drawing;
}

/** A motor that turns its can: slotted ends, magnets' can, shaft. */
export function motor(l: number, d: number): Drawing {
  const pen = createPen();
  const [h, r] = [l / 2, d / 2];
  const x = (share: number) => at(-h + l * share);
  pen.rod(x(0), x(0.06), r * 0.12, r * 0.12, 'metal', 12);
  pen.rod(x(0.06), x(0.2), r * 0.55, r * 0.9, 'metal', 30);
  pen.rod(x(0.2), x(0.76), r, r, 'role', 36);
  pen.rod(x(0.76), x(0.84), r * 0.92, r * 0.8, 'brass', 30);
  pen.rod(x(0.84), x(1), r * 0.6, r * 0.56, 'dark', 30);
  return pen.drawing;
}

/** A small pump: motor can, coloured head and two nozzles in line. */
export function pump(l: number, d: number): Drawing {
  const pen = createPen();
  const [h, r] = [l / 2, d / 2];
  const x = (share: number) => at(-h + l * share);
  pen.rod(x(0), x(0.12), r * 0.2, r * 0.16, 'brass', 12);
  pen.rod(x(0.12), x(0.42), r, r, 'role', 28);
  pen.rod(x(0.42), x(0.92), r * 0.88, r * 0.88, 'metal', 28);
  pen.rod(x(0.92), x(1), r * 0.5, r * 0.4, 'dark', 20);
  pen.rod([-h + l * 0.26, 0, r * 0.6], [-h + l * 0.26, 0, r * 0.98], r * 0.18, r * 0.15, 'brass', 12);
  return pen.drawing;
}

/** Two twisted blades and their hub; the disc lies square to x, the blades along the wider way. */
export function propeller(thick: number, wide: number, high: number): Drawing {
  const pen = createPen();
  const along = wide >= high;
  const [reach, chord] = [Math.max(wide, high) / 2, Math.min(wide, high) / 2];
  const half = thick / 2;
  for (const side of [1, -1]) {
    const rings = [0.06, 0.2, 0.4, 0.65, 0.85, 0.97, 1].map((share) => {
      // Inside the ellipsoid that the part is given by, everywhere.
      const room = Math.sqrt(Math.max(0, 1 - share * share));
      const c = chord * Math.min(room, 0.3 + share * 1.1, 1) * 0.94;
      const t = half * Math.min(room, 1 - 0.75 * share) * 0.7;
      const twist = (0.9 - 0.65 * share) * Math.min(1, (half * room) / Math.max(c * 0.8, 1e-6));
      return Array.from({ length: 12 }, (_, i): Vec3 => {
        const angle = (i * Math.PI) / 6;
        const [u, v] = [c * Math.cos(angle), t * Math.sin(angle)];
        const x = v * Math.cos(twist) + side * u * Math.sin(twist) * 0.5;
        const across = side * u * Math.cos(twist);
        return along ? [x, side * share * reach, across] : [x, -across, side * share * reach];
      });
    });
    const ordered = rings.map((ring) => ring);
    pen.through(ordered, ['black', 'black', 'black', 'black', 'pale', 'pale'], []);
    pen.line(ordered.map((ring) => ring[0]!));
    pen.line(ordered.map((ring) => ring[6]!));
  }
  const hub = Math.min(chord, reach * 0.1);
  pen.rod(at(-half), at(half), hub, hub, 'metal', 20);
  return pen.drawing;
}
