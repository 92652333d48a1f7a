import { BufferAttribute, BufferGeometry, Color, DynamicDrawUsage, Group, Mesh } from 'three';
import { poseRotation } from '../../engine/geometry/rotation';
import type { Vec3 } from '../../engine/geometry/types';
import { perObjects } from '../../engine/memory/memory';
import type { Part } from '../../model/document/types';
import { createCrispLines, sendLines } from '../materials/crispLines';
import type { Palette } from '../materials/palette';
import { shapeGeometry, shapeLinePairs } from '../materials/shapeGeometry';
import type { Drawing, Stuff } from './looks/pen';
import type { PartFacts } from './partFacts';
import type { PartMaterial } from './partMaterial';

/** How items look; null while that is still on its way, so that plain shapes stand in. */
export type LookBook = {
  readonly lookOf: (facts: PartFacts & { readonly aircraft: PartFacts['aircraft'] }) => Drawing | null;
  readonly plainStuff: (facts: PartFacts) => Stuff;
} | null;

/** Where a part's corners and lines lie in the shared buffers. */
interface Stretch {
  readonly corner: number;
  readonly corners: number;
  readonly line: number;
  readonly positions: Float32Array;
  readonly normals: Float32Array;
  readonly lines: Float32Array;
  placed: Part | null;
  liftMm: number;
}

export interface PartBatch {
  readonly group: Group;
  readonly indexOf: ReadonlyMap<string, number>;
  /** Hatches each part that does not fit, faintly or in full, 0 to 1. */
  hatch(strengthOf: (id: string) => number): void;
  /** Writes a part where it stands, if it is not there already. */
  place(index: number, part: Part, liftMm: number): void;
  dispose(): void;
}

interface Sketch {
  readonly positions: Float32Array;
  readonly normals: Float32Array;
  readonly lines: Float32Array;
  readonly stuffs: readonly Stuff[];
}

/** Drawn once for each shape and role, whoever has them. */
const sketchOf = (facts: PartFacts, book: LookBook): Sketch =>
  sketchIn(facts.shape, book !== null, facts.role, facts.pitchDeg, facts.aircraft)(facts, book);

const sketchIn = perObjects(
  (..._: [PartFacts['shape'], boolean, PartFacts['role'], PartFacts['pitchDeg'], PartFacts['aircraft']]) => {
    let sketch: Sketch | null = null;
    return (facts: PartFacts, book: LookBook): Sketch => {
      sketch ??= draw(facts, book);
      return sketch;
    };
  },
);

function draw(facts: PartFacts, book: LookBook): Sketch {
  const drawing = book?.lookOf(facts) ?? null;
  if (drawing) {
    const { positions, normals, lines, stuffs } = drawing;
    return {
      positions: new Float32Array(positions),
      normals: new Float32Array(normals),
      lines: new Float32Array(lines),
      stuffs,
    };
  }
  const geometry = shapeGeometry(facts.shape, 40);
  const positions = geometry.getAttribute('position').array as Float32Array;
  const normals = geometry.getAttribute('normal').array as Float32Array;
  const stuff = book?.plainStuff(facts) ?? 'role';
  return {
    positions,
    normals,
    lines: shapeLinePairs(facts.shape),
    stuffs: new Array(positions.length / 3).fill(stuff),
  };
}

const STUFF: Readonly<Record<Exclude<Stuff, 'role' | 'shade' | 'pale'>, string>> = {
  black: '#22282d',
  metal: '#b4bdc3',
  dark: '#3a4249',
  brass: '#c6a25a',
  glass: '#122c49',
  red: '#b8382c',
  lead: '#59646e',
};
/** How much of the studio light each mirrors. */
const GLOSS: Readonly<Record<Stuff, number>> = {
  role: 0.16,
  shade: 0.1,
  pale: 0.1,
  black: 0.22,
  metal: 0.62,
  dark: 0.4,
  brass: 0.6,
  glass: 1,
  red: 0.2,
  lead: 0.2,
};

function paintOf(facts: PartFacts, palette: Palette): (stuff: Stuff) => Color {
  const role = new Color(palette.role(facts.role));
  const faded = new Color(palette.dark ? '#5a6468' : '#c3c9c8');
  const made = new Map<Stuff, Color>();
  return (stuff) => {
    let color = made.get(stuff);
    if (!color) {
      color =
        stuff === 'role'
          ? role.clone()
          : stuff === 'shade'
            ? role.clone().lerp(new Color('#10161a'), 0.45)
            : stuff === 'pale'
              ? role.clone().lerp(new Color('#ffffff'), 0.68)
              : new Color(STUFF[stuff]);
      if (facts.locked) color.lerp(faded, 0.3);
      made.set(stuff, color);
    }
    return color;
  };
}

/**
 * All parts in two draw calls. They are written into shared buffers where they stand: moving one rewrites its own
 * stretch and nothing else, so a drag costs the same whether there are two parts or two hundred.
 */
export function createPartBatch(
  all: readonly PartFacts[],
  palette: Palette,
  book: LookBook,
  material: PartMaterial,
): PartBatch {
  const drawn = all.map((facts) => sketchOf(facts, book));
  const corners = drawn.reduce((sum, { positions }) => sum + positions.length, 0);
  const lineFigures = drawn.reduce((sum, { lines }) => sum + lines.length, 0);
  const positions = new BufferAttribute(new Float32Array(corners), 3).setUsage(DynamicDrawUsage);
  const normals = new BufferAttribute(new Float32Array(corners), 3).setUsage(DynamicDrawUsage);
  const colors = new Float32Array(corners);
  const tags = new Float32Array((corners / 3) * 2);
  const lineColors = new Float32Array(lineFigures);
  const hatches = new BufferAttribute(new Float32Array(corners / 3), 1).setUsage(DynamicDrawUsage);
  const hatched = new Map<string, number>();
  const stretches: Stretch[] = [];
  const edge = new Color();
  let [corner, line] = [0, 0];
  all.forEach((facts, index) => {
    const sketch = drawn[index]!;
    const paint = paintOf(facts, palette);
    sketch.stuffs.forEach((stuff, i) => {
      paint(stuff).toArray(colors, corner + 3 * i);
      tags[((corner / 3 + i) * 2) | 0] = index;
      tags[(corner / 3 + i) * 2 + 1] = GLOSS[stuff];
    });
    edge.copy(paint('role')).lerp(new Color('#0a1014'), palette.dark ? 0.7 : 0.62);
    for (let i = 0; i < sketch.lines.length; i += 3) edge.toArray(lineColors, line + i);
    stretches.push({
      corner,
      corners: sketch.positions.length,
      line,
      positions: sketch.positions,
      normals: sketch.normals,
      lines: sketch.lines,
      placed: null,
      liftMm: 0,
    });
    corner += sketch.positions.length;
    line += sketch.lines.length;
  });

  const geometry = new BufferGeometry();
  geometry.setAttribute('position', positions);
  geometry.setAttribute('normal', normals);
  geometry.setAttribute('color', new BufferAttribute(colors, 3));
  geometry.setAttribute('aHatch', hatches);
  geometry.setAttribute('aTag', new BufferAttribute(tags, 2));
  const mesh = new Mesh(geometry, material);
  mesh.frustumCulled = false;
  const lines = createCrispLines(new Float32Array(lineFigures), lineColors, {
    widthPx: 1,
    opacity: 0.55,
    renderOrder: 11,
  });
  const group = new Group().add(mesh, lines.object);

  return {
    group,
    indexOf: new Map(all.map(({ id }, index) => [id, index])),
    hatch: (strengthOf) => {
      all.forEach(({ id }, index) => {
        const strength = strengthOf(id);
        const stretch = stretches[index];
        if (!stretch || (hatched.get(id) ?? 0) === strength) return;
        hatched.set(id, strength);
        const [from, count] = [stretch.corner / 3, stretch.corners / 3];
        (hatches.array as Float32Array).fill(strength, from, from + count);
        send(hatches, from, count);
      });
    },
    place: (index, part, liftMm) => {
      const stretch = stretches[index];
      if (!stretch || (stretch.placed === part && stretch.liftMm === liftMm)) return;
      const turned = !stretch.placed || !sameTurn(stretch.placed, part);
      const [x, y, z] = part.positionMm;
      const at: Vec3 = [x, y, z + liftMm];
      write(stretch.positions, positions.array as Float32Array, stretch.corner, part, at);
      send(positions, stretch.corner, stretch.corners);
      if (turned) {
        write(stretch.normals, normals.array as Float32Array, stretch.corner, part, [0, 0, 0]);
        send(normals, stretch.corner, stretch.corners);
      }
      if (stretch.lines.length > 0) {
        write(stretch.lines, lines.ends, stretch.line, part, at);
        sendLines(lines.object, stretch.line, stretch.lines.length);
      }
      stretch.placed = part;
      stretch.liftMm = liftMm;
    },
    dispose: () => {
      geometry.dispose();
      lines.dispose();
    },
  };
}

const sameTurn = (a: Part, b: Part): boolean =>
  a.yawDeg === b.yawDeg && a.pitchDeg === b.pitchDeg && a.rollDeg === b.rollDeg;

function send(attribute: BufferAttribute, from: number, count: number): void {
  attribute.addUpdateRange(from, count);
  attribute.needsUpdate = true;
}

/** Points or directions of a part's own frame, turned and moved into the aircraft's; nothing is made for a point. */
function write(local: Float32Array, into: Float32Array, from: number, part: Part, [x, y, z]: Vec3): void {
  const r = poseRotation(part);
  for (let i = 0; i < local.length; i += 3) {
    const u = local[i]!;
    const v = local[i + 1]!;
    const w = local[i + 2]!;
    into[from + i] = r[0] * u + r[1] * v + r[2] * w + x;
    into[from + i + 1] = r[3] * u + r[4] * v + r[5] * w + y;
    into[from + i + 2] = r[6] * u + r[7] * v + r[8] * w + z;
  }
}
