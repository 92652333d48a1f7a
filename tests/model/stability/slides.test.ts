import { describe, expect, test } from 'vitest';
import type { Fuselage, StructurePiece, Surface } from '../../../src/model/document/types';
import { wingPlanform } from '../../../src/model/stability/band';
import { estimateStability } from '../../../src/model/stability/estimateStability';
import { stabilityInput } from '../../../src/model/stability/stability';
import { aircraftOf } from '../aircraft';

/** A sport aircraft: the wing's roots at the hull's sides, a tailplane on the boom, fins at its tips. */
const section = (stationMm: number, widthMm: number, heightMm: number) => ({
  stationMm,
  widthMm,
  heightMm,
  waterlineMm: 0,
  roundness: 1,
});
const hull: Fuselage = {
  id: 'hull',
  kind: 'fuselage',
  name: 'Hull',
  sides: 'centre',
  buttlineMm: 0,
  sections: [section(-250, 60, 60), section(-50, 120, 140), section(300, 110, 130), section(900, 40, 40)],
  skinMm: 2,
  mass: { by: 'weighed', massG: 300 },
};
const surface = (id: string, given: Partial<Surface>): Surface => ({
  id,
  kind: 'surface',
  name: id,
  role: 'wing',
  sides: 'both',
  rootMm: [0, 0, 0],
  cantDeg: 0,
  incidenceDeg: 0,
  rootChordMm: 200,
  rootThicknessPct: 10,
  panels: [panel(500, 160, 20)],
  mass: { by: 'weighed', massG: 100 },
  ...given,
});
const panel = (spanMm: number, tipChordMm: number, sweepMm: number, dihedralDeg = 2) => ({
  spanMm,
  tipChordMm,
  sweepMm,
  dihedralDeg,
  twistDeg: 0,
  tipThicknessPct: 10,
});
const wing = (given: Partial<Surface> = {}) =>
  surface('wing', { rootMm: [0, 58, 20], panels: [panel(450, 180, 10), panel(300, 120, 40)], ...given });
const tail = (given: Partial<Surface> = {}) =>
  surface('tail', { rootMm: [760, 25, 0], rootChordMm: 130, panels: [panel(260, 100, 25, 0)], ...given });
const fins = (given: Partial<Surface> = {}) =>
  surface('fins', {
    rootMm: [785, 285, 0],
    rootChordMm: 100,
    cantDeg: 85,
    panels: [panel(110, 70, 20, 0)],
    ...given,
  });

const pointOf = (structure: readonly StructurePiece[]): number => {
  const answer = estimateStability(stabilityInput(aircraftOf(structure)), 'coarse');
  if (!answer || 'fault' in answer) throw new Error('expected an estimate');
  return answer.neutralPointMm;
};

/** mm of neutral point for each mm that an input is moved: more than any of these has to be. */
const STEEPEST = 5;
const STEP_MM = 0.05;

/**
 * Looks for the worst place of a slide: coarsely, then the interval with the greatest change halved until it
 * is one step of 0.05 mm. A jump stays whole however often its interval is halved.
 */
function worstStep(slide: (mm: number) => readonly StructurePiece[], from: number, to: number): number {
  const pieces = 40;
  const at = (mm: number) => pointOf(slide(mm));
  const grid = Array.from({ length: pieces + 1 }, (_, k) => from + ((to - from) * k) / pieces);
  const points = grid.map(at);
  const changes = points.slice(1).map((point, k) => Math.abs(point - (points[k] ?? 0)));
  const suspects = [...changes.keys()].sort((a, b) => (changes[b] ?? 0) - (changes[a] ?? 0)).slice(0, 3);
  const worst = suspects.map((k) => {
    let [low, high] = [grid[k] ?? 0, grid[k + 1] ?? 0];
    let [below, above] = [points[k] ?? 0, points[k + 1] ?? 0];
    while (Math.abs(high - low) > STEP_MM) {
      const middle = (low + high) / 2;
      const point = at(middle);
      if (Math.abs(point - below) > Math.abs(above - point)) [high, above] = [middle, point];
      else [low, below] = [middle, point];
    }
    return Math.abs(above - below);
  });
  return Math.max(...worst);
}

describe('the neutral point moves smoothly while', () => {
  const slides: Record<string, [from: number, to: number, slide: (mm: number) => readonly StructurePiece[]]> =
    {
      'the wing’s roots are slid out of the hull': [
        0,
        240,
        (y) => [hull, wing({ rootMm: [0, y, 20] }), tail()],
      ],
      'the wing is raised off the hull': [-160, 160, (z) => [hull, wing({ rootMm: [0, 58, z] }), tail()]],
      'the wing is slid along, past nose and tail': [
        -700,
        1100,
        (x) => [hull, wing({ rootMm: [x, 45, 20] }), tail()],
      ],
      'the root chord grows': [60, 500, (rootChordMm) => [hull, wing({ rootChordMm }), tail()]],
      'the wing is swept': [
        -300,
        300,
        (sweep) => [hull, wing({ panels: [panel(450, 180, sweep), panel(300, 120, sweep)] }), tail()],
      ],
      'the wing is bent up': [
        -20,
        40,
        (deg) => [hull, wing({ panels: [panel(450, 180, 10, deg), panel(300, 120, 40, deg)] }), tail()],
      ],
      'the wing is set nose up': [-10, 20, (incidenceDeg) => [hull, wing({ incidenceDeg }), tail()]],
      'the outer panel grows': [
        1,
        600,
        (span) => [hull, wing({ panels: [panel(450, 180, 10), panel(span, 120, 40)] }), tail()],
      ],
      'the tail is raised through the wing’s wake': [
        -150,
        250,
        (z) => [hull, wing(), tail({ rootMm: [760, 25, z] })],
      ],
      'the tail’s roots are slid out': [0, 150, (y) => [hull, wing(), tail({ rootMm: [760, y, 0] })]],
      'the tail is slid along, through the wing': [
        -600,
        1000,
        (x) => [hull, wing(), tail({ rootMm: [x, 25, 20] })],
      ],
      'fins are slid along past the tail’s tips': [
        600,
        950,
        (x) => [hull, wing(), tail(), fins({ rootMm: [x, 285, 0] })],
      ],
      'fins are slid out past the tail’s tips': [
        200,
        350,
        (y) => [hull, wing(), tail(), fins({ rootMm: [785, y, 0] })],
      ],
      'fins are raised past the tail’s tips': [
        -150,
        80,
        (z) => [hull, wing(), tail(), fins({ rootMm: [785, 285, z] })],
      ],
      'a piece of wing is slid away from the other': [
        508,
        600,
        (y) => [
          hull,
          wing({ panels: [panel(450, 180, 10, 0)] }),
          surface('tip', { rootMm: [10, y, 20], rootChordMm: 180, panels: [panel(300, 120, 40, 0)] }),
          tail(),
        ],
      ],
      'a canard is slid back over the wing': [
        -600,
        300,
        (x) => [
          hull,
          wing(),
          surface('canard', { rootMm: [x, 40, 0], rootChordMm: 100, panels: [panel(200, 80, 20)] }),
        ],
      ],
    };

  test.each(Object.entries(slides))(
    '%s',
    (_, [from, to, slide]) => {
      expect(worstStep(slide, from, to)).toBeLessThan(STEEPEST * STEP_MM);
    },
    60_000,
  );
});

test.each([0, 8])('a wing entered half by half is the pair that it is, bent up by %d°', (deg) => {
  const panels = [panel(450, 180, 10, deg), panel(300, 120, 40, deg)];
  const half = (id: string, given: Partial<Surface>) =>
    wing({ id, name: id, sides: 'centre', panels, ...given });
  const right = half('right', {});
  // Turned half round, what rises falls: its panels are drawn drooping.
  const down = [panel(450, 180, 10, -deg), panel(300, 120, 40, -deg)];
  const left = half('left', { rootMm: [0, -58, 20], cantDeg: 180, panels: down });
  const whole = aircraftOf([hull, wing({ panels }), tail()]);
  const macMm = wingPlanform(whole)!.macMm;
  for (const halves of [
    [right, left],
    [left, right],
  ]) {
    const aircraft = aircraftOf([hull, ...halves, tail()]);
    const apartMm = Math.abs(pointOf(aircraft.structure) - pointOf(whole.structure));
    expect((100 * apartMm) / macMm).toBeLessThan(0.3);
    expect(wingPlanform(aircraft)!.macMm).toBeCloseTo(macMm, 6);
    expect(stabilityInput(aircraft).surfaces.map(({ sides }) => sides)).toEqual(['both', 'both']);
  }
  // One that is no mirror image of another stays what it is.
  const short = half('left', { rootMm: [0, -58, 20], cantDeg: 180, panels: [panel(200, 180, 10, -deg)] });
  expect(stabilityInput(aircraftOf([hull, right, short, tail()])).surfaces[0]!.sides).toBe('centre');
});

describe('whether a wing joins the body', () => {
  const answer = (structure: readonly StructurePiece[]) => {
    const found = estimateStability(stabilityInput(aircraftOf(structure)), 'coarse');
    if (!found || 'fault' in found) throw new Error('expected an estimate');
    return found;
  };

  test('can be said, and then the geometry is not asked', () => {
    const proposed = answer([hull, wing(), tail()]);
    expect(answer([hull, wing({ joinsBody: 'yes' }), tail()]).neutralPointMm).toBeCloseTo(
      proposed.neutralPointMm,
      9,
    );
    const apart = answer([hull, wing({ joinsBody: 'no' }), tail()]);
    expect(Math.abs(apart.neutralPointMm - proposed.neutralPointMm)).toBeGreaterThan(1);
    expect(proposed.notes).toEqual([]);
    expect(apart.notes).toEqual([{ about: 'gap', name: 'wing', withName: null, gapMm: 116, joined: 0 }]);
  });

  test('a gap that counts in part is said with its part', () => {
    const [note] = answer([hull, wing({ rootMm: [0, 105, 20] }), tail()]).notes;
    expect(note).toMatchObject({ about: 'gap', name: 'wing', gapMm: 210 });
    expect(note?.about === 'gap' && note.joined > 0 && note.joined < 1).toBe(true);
  });

  test('a one-piece tail is counted and said', () => {
    const flat = tail({ sides: 'centre', rootMm: [760, -260, 0], panels: [panel(520, 130, 0, 0)] });
    expect(answer([hull, wing(), flat]).notes).toEqual([{ about: 'onePiece', name: 'tail' }]);
    expect(answer([hull, wing(), flat]).neutralPointMm).toBeGreaterThan(
      answer([hull, wing()]).neutralPointMm + 20,
    );
  });
});
