import type { Vec3 } from '../../../engine/geometry/types';
import { createPen, type Drawing, type Pen } from './pen';

/** Length, width and height of the box that an item keeps within, mm. */
export type Size = Vec3;

/** A battery in its shrink wrap: drawn-in ends of bare sleeve, a printed band, and the lead that leaves at the rear. */
export function pack([l, w, h]: Size): Drawing {
  const pen = createPen();
  const [hl, hw, hh] = [l / 2, w / 2, h / 2];
  const sleeve = Math.min(l * 0.07, 7);
  const lead = Math.min(h * 0.16, 2.4);
  const top = hh - lead;
  const radiusMm = Math.min(w, h) * 0.16;
  const y = [-hw * 0.985, hw * 0.985] as const;
  const z = [-hh * 0.985, top] as const;
  pen.bar({ x: [-hl, -hl + sleeve], y, z, radiusMm, endMm: sleeve * 0.5 }, 'shade');
  pen.bar({ x: [hl - sleeve * 1.6, hl - sleeve * 0.6], y, z, radiusMm, endMm: sleeve * 0.4 }, 'shade');
  pen.bar({ x: [-hl + sleeve, hl - sleeve * 1.6], y, z, radiusMm }, 'role');
  const printed = [-hl + l * 0.3, hl - l * 0.3] as const;
  pen.bar({ x: printed, y: [-hw, hw], z: [-hh, top + lead * 0.12], radiusMm }, 'pale');
  // Two wires rise at the rear and lie along the top.
  for (const [side, stuff] of [
    [-1, 'red'],
    [1, 'black'],
  ] as const) {
    const at = side * Math.min(w * 0.1, lead * 1.3);
    const up = top + lead * 0.5;
    pen.rod([hl - l * 0.26, at, up], [hl - lead, at, up], lead * 0.5, lead * 0.5, stuff, 8);
    pen.rod(
      [hl - lead * 0.7, at, up],
      [hl - lead * 0.7, at, top - h * 0.3],
      lead * 0.5,
      lead * 0.5,
      stuff,
      8,
    );
  }
  pen.bar(
    {
      x: [hl - l * 0.34, hl - l * 0.24],
      y: [-Math.min(w * 0.2, 8), Math.min(w * 0.2, 8)],
      z: [top, hh],
      radiusMm: 1,
    },
    'black',
  );
  return pen.drawing;
}

/** A servo with its length along a, its height along b and its thickness along c: ears, gear boss and arm. */
export function servo([a, b, c]: Size): Drawing {
  const pen = createPen();
  const [ha, hb, hc] = [a / 2, b / 2, c / 2];
  const radiusMm = c * 0.06;
  const body = ha * 0.76;
  const level = (share: number) => -hb + b * share;
  // Drawn with its thickness up, then the whole is turned to the box it stands in.
  const slab = (x: number, from: number, to: number, thick: number, stuff: Parameters<Pen['bar']>[1]) =>
    pen.bar({ x: [-x, x], y: [level(from), level(to)], z: [-thick, thick], radiusMm }, stuff);
  slab(body, 0, 0.26, hc, 'black');
  slab(body, 0.27, 0.6, hc, 'role');
  slab(ha, 0.6, 0.66, hc * 0.94, 'role');
  slab(body, 0.66, 0.76, hc, 'black');
  const reach = Math.min(hc, body * 0.5);
  const shaft = -body + reach;
  const boss = reach * 0.82;
  pen.rod([shaft, level(0.76), 0], [shaft, level(0.85), 0], boss, boss * 0.92, 'black');
  pen.rod([shaft, level(0.85), 0], [shaft, level(0.9), 0], boss * 0.35, boss * 0.35, 'brass', 10);
  const arm = reach * 0.42;
  const tip = Math.min(ha - arm * 0.5, shaft + a * 0.55);
  pen.rod([shaft, level(0.9), 0], [shaft, level(0.98), 0], arm, arm, 'pale', 14);
  pen.bar(
    { x: [shaft, tip], y: [level(0.91), level(0.97)], z: [-arm * 0.55, arm * 0.55], radiusMm: arm * 0.2 },
    'pale',
  );
  const screw = Math.min(hc * 0.14, (ha - body) * 0.4);
  for (const end of [-1, 1]) {
    for (const side of [-0.5, 0.5]) {
      const x = end * (ha + body) * 0.5;
      pen.rod([x, level(0.66), side * hc], [x, level(0.69), side * hc], screw, screw * 0.85, 'metal', 8);
    }
  }
  return pen.drawing;
}

/** A receiver: a small case, a row of sockets at the rear, and two aerials at the front, apart. */
export function receiver([l, w, h]: Size): Drawing {
  const pen = createPen();
  const [hl, hw, hh] = [l / 2, w / 2, h / 2];
  const radiusMm = Math.min(w, h) * 0.14;
  const front = -hl + l * 0.2;
  pen.bar({ x: [front, hl], y: [-hw, hw], z: [-hh, hh * 0.86], radiusMm, endMm: h * 0.07 }, 'role');
  pen.bar(
    { x: [front + l * 0.1, hl - l * 0.26], y: [-hw * 0.72, hw * 0.72], z: [hh * 0.5, hh], radiusMm: 1 },
    'pale',
  );
  pen.bar(
    { x: [hl - l * 0.18, hl - l * 0.05], y: [-hw * 0.8, hw * 0.8], z: [hh * 0.4, hh * 0.98], radiusMm: 0.6 },
    'black',
  );
  const wire = Math.min(h * 0.09, 1.3);
  for (const side of [-1, 1]) {
    const root: Vec3 = [front, side * hw * 0.35, 0];
    const bend: Vec3 = [front - l * 0.07, side * hw * 0.55, hh * 0.2];
    pen.rod(root, bend, wire, wire, 'black', 8);
    pen.rod(bend, [-hl + wire, side * (hw - wire), hh - wire], wire, wire, 'metal', 8);
  }
  return pen.drawing;
}

/** A controller: a case with cooling fins on top and wires at either end. */
export function controller([l, w, h]: Size): Drawing {
  const pen = createPen();
  const [hl, hw, hh] = [l / 2, w / 2, h / 2];
  const end = l * 0.1;
  const radiusMm = Math.min(w, h) * 0.14;
  const x = [-hl + end, hl - end] as const;
  pen.bar({ x, y: [-hw, hw], z: [-hh, hh * 0.5], radiusMm, endMm: h * 0.08 }, 'role');
  const fins = Math.max(4, Math.min(9, Math.round(w / 6)));
  for (let i = 0; i < fins; i += 1) {
    const at = -hw * 0.8 + (1.6 * hw * i) / (fins - 1);
    const half = (0.55 * hw) / fins;
    pen.bar(
      { x: [x[0] + l * 0.1, x[1] - l * 0.1], y: [at - half, at + half], z: [hh * 0.45, hh], radiusMm: 0 },
      'metal',
    );
  }
  const wire = Math.min(h * 0.13, w * 0.08, 2.2);
  for (const [at, stuff] of [
    [-0.4, 'red'],
    [0.4, 'black'],
  ] as const) {
    pen.rod([-hl, at * hw, -hh * 0.2], [x[0], at * hw, -hh * 0.2], wire, wire, stuff, 8);
  }
  for (const at of [-0.55, 0, 0.55]) {
    pen.rod([x[1], at * hw, -hh * 0.2], [hl, at * hw, -hh * 0.2], wire, wire, 'lead', 8);
  }
  return pen.drawing;
}

/** A camera that looks ahead: body, lens barrel with its glass, and a shoe on top. */
export function camera([l, w, h]: Size): Drawing {
  const pen = createPen();
  const [hl, hw, hh] = [l / 2, w / 2, h / 2];
  const front = -hl + l * 0.36;
  const lens = Math.min(hw, hh) * 0.78;
  const at = -hh * 0.06;
  pen.bar(
    { x: [front, hl], y: [-hw, hw], z: [-hh, hh * 0.88], radiusMm: Math.min(w, h) * 0.1, endMm: l * 0.02 },
    'role',
  );
  pen.bar(
    { x: [front + l * 0.16, hl - l * 0.14], y: [-hw * 0.4, hw * 0.4], z: [hh * 0.8, hh], radiusMm: 1 },
    'dark',
  );
  const p = (x: number): Vec3 => [x, 0, at];
  pen.rod(p(front), p(front - l * 0.06), lens * 1.02, lens, 'dark', 28);
  pen.rod(p(front - l * 0.06), p(-hl + l * 0.05), lens * 0.88, lens * 0.88, 'metal', 28);
  pen.rod(p(-hl + l * 0.05), p(-hl), lens * 0.94, lens * 0.9, 'dark', 28);
  pen.rod(p(-hl + 0.6), p(-hl), lens * 0.72, lens * 0.66, 'glass', 28);
  pen.bar(
    { x: [front - 0.5, front], y: [hw * 0.62, hw * 0.82], z: [hh * 0.5, hh * 0.68], radiusMm: 1 },
    'red',
  );
  return pen.drawing;
}

/** Plates of lead with a bolt through them. */
export function ballast([l, w, h]: Size): Drawing {
  const pen = createPen();
  const [hl, hw, hh] = [l / 2, w / 2, h / 2];
  const plates = Math.max(2, Math.min(5, Math.round(h / 4)));
  const thick = (h * 0.9) / plates;
  for (let i = 0; i < plates; i += 1) {
    const inMm = i % 2 === 0 ? 0 : Math.min(l, w) * 0.02;
    pen.bar(
      {
        x: [-hl + inMm, hl - inMm],
        y: [-hw + inMm, hw - inMm],
        z: [-hh + i * thick, -hh + (i + 0.94) * thick],
        radiusMm: thick * 0.2,
      },
      'role',
    );
  }
  const bolt = Math.min(l, w) * 0.14;
  pen.rod([0, 0, -hh + h * 0.85], [0, 0, hh], bolt, bolt, 'brass', 6);
  return pen.drawing;
}

/** A case with its lid, for what has no look of its own. */
export function plainCase([l, w, h]: Size): Drawing {
  const pen = createPen();
  const [hl, hw, hh] = [l / 2, w / 2, h / 2];
  const radiusMm = Math.min(w, h) * 0.1;
  const lid = hh - h * 0.22;
  pen.bar({ x: [-hl, hl], y: [-hw, hw], z: [-hh, lid], radiusMm, endMm: h * 0.05 }, 'role');
  pen.bar(
    { x: [-hl * 0.97, hl * 0.97], y: [-hw * 0.97, hw * 0.97], z: [lid, hh], radiusMm, endMm: h * 0.05 },
    'pale',
  );
  return pen.drawing;
}

type Axis = 0 | 1 | 2;

/** A drawing made along (a, b, c), turned to lie along other axes of its own frame; it stays the right way round. */
export function laidAlong(drawing: Drawing, [a, b, c]: readonly [Axis, Axis, Axis]): Drawing {
  const odd = (a + 1) % 3 !== b;
  const turned = (figures: readonly number[]) => {
    const out: number[] = new Array(figures.length);
    for (let i = 0; i < figures.length; i += 3) {
      out[i + a] = figures[i]!;
      out[i + b] = figures[i + 1]!;
      out[i + c] = odd ? -figures[i + 2]! : figures[i + 2]!;
    }
    return out;
  };
  return {
    positions: turned(drawing.positions),
    normals: turned(drawing.normals),
    stuffs: drawing.stuffs,
    lines: turned(drawing.lines),
  };
}
