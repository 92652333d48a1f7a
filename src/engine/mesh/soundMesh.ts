import type { Vec3 } from '../geometry/types';
import { meshFault } from '../mass/meshFault';
import type { Mesh } from '../mass/types';
import { edgesOf, rims } from './edges';
import { selfCuts } from './selfCuts';
import { shellsOf } from './shells';
import { welded } from './welded';

/** What was found in a surface that bounds a solid, and what was done to it. */
export interface MeshFindings {
  readonly shells: number;
  readonly hollows: number;
  /** Triangles that were turned round. */
  readonly turned: number;
  readonly shrunk: number;
  readonly doubled: number;
  /** Pairs of triangles that cut each other: what lies in the surface twice counts twice. */
  readonly cuts: number;
  readonly cutsAtMm: readonly Vec3[];
}

/** A closed mesh, or why there is none, with the lines that show where, mm. */
export type MeshVerdict =
  | { readonly ok: true; readonly mesh: Mesh; readonly findings: MeshFindings }
  | { readonly ok: false; readonly sentence: string; readonly atMm: readonly (readonly Vec3[])[] };

/**
 * Makes a closed mesh, all triangles outward, of loose triangles (nine figures each, mm), or says why it cannot be: a
 * figure that is no number, a hole (with its rim), a surface without an inside, one without a volume.
 */
export function soundMesh(figuresMm: ArrayLike<number>, mostTriangles: number): MeshVerdict {
  const count = Math.floor(figuresMm.length / 9);
  if (count === 0) return refused('There is no triangle in it.');
  if (count > mostTriangles) return refused(tooManyWords(count, mostTriangles));
  for (let at = 0; at < 9 * count; at += 1) {
    if (Number.isFinite(figuresMm[at])) continue;
    return refused(`Triangle ${Math.floor(at / 9) + 1} has a corner that is no number: ${figuresMm[at]}.`);
  }
  const { verticesMm, triangles, shrunk, doubled } = welded(figuresMm);
  if (triangles.length < 4) return refused('It encloses nothing: a closed mesh has at least 4 triangles.');
  const open = edgesOf(triangles, verticesMm.length).filter(({ sides }) => sides.length === 1);
  if (open.length > 0) {
    const lines = rims(open, verticesMm);
    return { ok: false, sentence: holeWords(lines.length, open.length), atMm: lines };
  }
  const shells = shellsOf(verticesMm, triangles);
  if ('sentence' in shells) return { ok: false, sentence: `${shells.sentence}.`, atMm: [shells.atMm] };
  const fault = meshFault(shells.mesh);
  if (fault) return refused(fault);
  const cuts = selfCuts(shells.mesh);
  const { mesh, count: parts, hollows, turned } = shells;
  return {
    ok: true,
    mesh,
    findings: {
      shells: parts,
      hollows,
      turned,
      shrunk,
      doubled,
      cuts: cuts.pairs,
      cutsAtMm: cuts.atMm,
    },
  };
}

const refused = (sentence: string): MeshVerdict => ({ ok: false, sentence, atMm: [] });

const grouped = (value: number): string => String(value).replace(/\B(?=(\d{3})+$)/g, ' ');

const tooManyWords = (count: number, most: number): string =>
  `It has ${grouped(count)} triangles; at most ${grouped(most)} are taken. Save it with fewer (most programs call that reducing or decimating) and open it again.`;

const holeWords = (rimCount: number, edges: number): string =>
  `The mesh is not closed: it has ${rimCount === 1 ? 'a hole' : `${rimCount} holes`}, ${edges} edges with a triangle on one side only. ${
    rimCount === 1 ? 'Its rim is' : 'Their rims are'
  } shown in red on the stage.`;
