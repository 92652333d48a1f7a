import { panelEdges } from './panelEdges';
import type { LiftingSurface } from './types';

/** Halves whose corners lie this close to each other's mirror image are one wing: a share of what they span. */
const ALIKE_SHARE = 0.05;

interface Corner {
  readonly atMm: readonly [x: number, y: number, z: number];
  readonly chordMm: number;
}

/** A surface on one side of the middle that is the mirror image of another, and that other one. */
export interface Halves {
  readonly right: LiftingSurface;
  readonly left: LiftingSurface;
}

/** Every two one-piece surfaces that are each other's mirror image beside the plane of symmetry: a wing entered half by half. */
export function halvesAmong(surfaces: readonly LiftingSurface[]): readonly Halves[] {
  const alone = surfaces.filter(({ sides, panels }) => sides === 'centre' && panels.length > 0);
  if (alone.length < 2) return [];
  const sided = alone.map((surface) => ({ surface, corners: cornersOf(surface) }));
  const rights = sided.filter(({ corners }) => isRight(corners));
  const taken = new Set<LiftingSurface>();
  return rights.flatMap(({ surface: right, corners }) => {
    const twin = sided.find((each) => !taken.has(each.surface) && areMirrored(corners, each.corners));
    if (!twin) return [];
    taken.add(twin.surface);
    return [{ right, left: twin.surface }];
  });
}

/** The surfaces with each wing that was entered half by half as the pair that it is, under the right half's id. */
export function withHalvesJoined(surfaces: readonly LiftingSurface[]): readonly LiftingSurface[] {
  const halves = halvesAmong(surfaces);
  if (halves.length === 0) return surfaces;
  return surfaces.flatMap((surface): LiftingSurface[] => {
    if (halves.some(({ left }) => left === surface)) return [];
    return [halves.some(({ right }) => right === surface) ? { ...surface, sides: 'both' } : surface];
  });
}

function cornersOf(surface: LiftingSurface): readonly Corner[] {
  const edges = panelEdges(surface);
  return [
    ...edges.slice(0, 1).map(({ rootMm, panel }) => ({ atMm: rootMm, chordMm: panel.rootChordMm })),
    ...edges.map(({ tipMm, panel }) => ({ atMm: tipMm, chordMm: panel.tipChordMm })),
  ];
}

/** All of it to the right, and reaching out there; a fin in the plane of symmetry is no half. */
const isRight = (corners: readonly Corner[]): boolean =>
  corners.every(({ atMm }) => atMm[1] >= 0) && spanOf(corners) > 0;

const spanOf = (corners: readonly Corner[]): number => {
  const out = corners.map(({ atMm }) => Math.abs(atMm[1]));
  return Math.max(...out) - Math.min(...out);
};

const areMirrored = (a: readonly Corner[], b: readonly Corner[]): boolean =>
  a.length === b.length &&
  a.every((corner, k) => {
    const other = b[k]!;
    const [x, y, z] = corner.atMm;
    const apart = Math.hypot(other.atMm[0] - x, other.atMm[1] + y, other.atMm[2] - z);
    return Math.max(apart, Math.abs(other.chordMm - corner.chordMm)) <= ALIKE_SHARE * spanOf(a);
  });
