import { pairedSurfaces } from './mainSurface';
import { panelEdges } from './panelEdges';
import { type Planform, planform } from './planform';
import { findSeams, type Seam } from './seams';
import { fade } from './seamWeight';
import { stretchesOf } from './stretch';
import type { LiftingSurface } from './types';

/** Slopes in degrees up to which a joined piece belongs to the wing's planform, and from which it is a winglet. */
const WING_SLOPE = 30;
const WINGLET_SLOPE = 60;

/**
 * The planform of a wing as on plans: carried through the body with its root chord, and with the pieces that
 * share its edges. What is joined in part counts in part, so that MAC and LEMAC move smoothly. `carries` as
 * for the neutral point. Seen from above. Winglets do not count. Throws on impossible geometry.
 */
export function grossPlanform(
  wingId: string,
  surfaces: readonly LiftingSurface[],
  carries: Readonly<Record<string, number>>,
): Planform | null {
  const paired = pairedSurfaces(surfaces);
  const wing = paired.findIndex(({ id }) => id === wingId);
  if (wing < 0) return null;
  const seams = seamsOf(paired, carries);
  const exposed = planform(paired[wing] as LiftingSurface);
  if (exposed.plane !== 'xy') return exposed;
  const shares = joinedShares(paired, wing, seams);
  const sum: Sum = { area: 0, covered: 0, chordSquared: 0, moments: [0, 0, 0] };
  let farthestMm = exposed.spanMm / 2;
  paired.forEach((surface, index) => {
    const share = shares[index] as number;
    if (share <= 0) return;
    const plan = planform(surface, 'xy');
    addTo(sum, share, plan.areaMm2 / 2, plan.meanChordMm, plan);
    farthestMm = Math.max(farthestMm, exposed.spanMm / 2 + share * (plan.spanMm / 2 - exposed.spanMm / 2));
    addTo(sum, Math.min(share, planeShare(seams, index)), ...bridgeOf(surface));
  });
  const areaMm2 = 2 * sum.area;
  const spanMm = 2 * farthestMm;
  return {
    ...exposed,
    areaMm2,
    spanMm,
    aspectRatio: (spanMm * spanMm) / areaMm2,
    meanChordMm: sum.area / sum.covered,
    macMm: sum.chordSquared / sum.area,
    lemacMm: sum.moments[0] / sum.area,
    macButtlineMm: sum.moments[1] / sum.area,
    macWaterlineMm: sum.moments[2] / sum.area,
  };
}

/**
 * How far each paired surface belongs to the wing, 0 … 1, in the order of `pairedSurfaces`: the weakest seam
 * on the strongest way to it, less for what stands up.
 */
export function sharesOfWing(
  wingId: string,
  paired: readonly LiftingSurface[],
  carries: Readonly<Record<string, number>>,
): number[] {
  return joinedShares(
    paired,
    paired.findIndex(({ id }) => id === wingId),
    seamsOf(paired, carries),
  );
}

function seamsOf(paired: readonly LiftingSurface[], carries: Readonly<Record<string, number>>): Seam[] {
  return findSeams(
    paired.map(stretchesOf),
    paired.map(({ id }) => carries[id] ?? null),
  );
}

interface Sum {
  area: number;
  covered: number;
  chordSquared: number;
  readonly moments: [number, number, number];
}

type Mean = Pick<Planform, 'macMm' | 'lemacMm' | 'macButtlineMm' | 'macWaterlineMm'>;

/** Adds a share of a half's integrals, from the means that stand for them. */
function addTo(sum: Sum, share: number, areaMm2: number, meanChordMm: number, mean: Mean): void {
  const area = share * areaMm2;
  sum.area += area;
  sum.covered += meanChordMm > 0 ? area / meanChordMm : 0;
  sum.chordSquared += area * mean.macMm;
  sum.moments[0] += area * mean.lemacMm;
  sum.moments[1] += area * mean.macButtlineMm;
  sum.moments[2] += area * mean.macWaterlineMm;
}

/** The level rectangle between a root and the plane of symmetry. */
function bridgeOf({ rootMm: [x, y, z], panels }: LiftingSurface): [number, number, Mean] {
  const chordMm = panels[0]?.rootChordMm ?? 0;
  return [y * chordMm, chordMm, { macMm: chordMm, lemacMm: x, macButtlineMm: y / 2, macWaterlineMm: z }];
}

const planeShare = (seams: readonly Seam[], piece: number) =>
  seams.find(({ a, b }) => b === 'plane' && a.piece === piece && a.end === 'root')?.weight ?? 0;

function joinedShares(paired: readonly LiftingSurface[], wing: number, seams: readonly Seam[]): number[] {
  const shares: number[] = paired.map((_, index) => (index === wing ? 1 : 0));
  const flat = paired.map((surface, index) => (index === wing ? 1 : flatness(surface)));
  // Each round carries the shares one seam farther.
  for (let round = 1; round < paired.length; round++) {
    for (const { a, b, weight } of seams) {
      if (b === 'plane') continue;
      for (const [from, to] of [
        [a.piece, b.piece],
        [b.piece, a.piece],
      ] as const) {
        const reached = Math.min(shares[from] as number, weight, flat[to] as number);
        shares[to] = Math.max(shares[to] as number, reached);
      }
    }
  }
  return shares;
}

function flatness(surface: LiftingSurface): number {
  const slopes = panelEdges(surface).map(({ slopeRad }) => (Math.abs(slopeRad) * 180) / Math.PI);
  return fade(Math.max(...slopes), WING_SLOPE, WINGLET_SLOPE);
}
