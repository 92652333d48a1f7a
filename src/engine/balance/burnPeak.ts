import { along, bestAgainst, bestLoad, type Heading, type Loaded, loadedBy, type Options } from './bestLoad';
import { beyond, mostBetween, type Reach } from './burnBound';
import type { LiquidMoment } from './travel';

/** The load state of one burn that lies farthest along a heading. */
export interface Peak {
  readonly fuelFraction: number;
  readonly chosen: readonly number[];
  /** CG along the heading, mm. */
  readonly cgMm: number;
}

/** What the search of one burn needs: everything projected on one heading. */
export interface BurnSearch {
  readonly heading: Heading;
  readonly fixed: Loaded;
  readonly options: Options;
  readonly liquidAt: (fuelFraction: number) => LiquidMoment;
  /** Fuel fractions in rising order, between neighbours of which the burn is smooth. */
  readonly breaks: readonly number[];
  /** The least mass of any load state without its liquid, g. */
  readonly lightestG: number;
  /** Of each tank, or of all the liquid as one; null when not known. */
  readonly reaches: readonly Reach[] | null;
  /** How closely the peak has to be certain, mm. */
  readonly toleranceMm: number;
  /** What is known to be reached elsewhere, mm: nothing short of it is of interest. */
  readonly floorMm: number;
  /** Whether another amount of liquid may still be tried. */
  readonly maySample: () => boolean;
}

/** The farthest of a burn, and how far beyond it or the floor, whichever is farther, another state can at most lie, mm. */
export interface BurnPeak {
  readonly best: Peak;
  /** Null when nothing is known of where the liquid can be. */
  readonly withinMm: number | null;
}

interface Sample extends Peak {
  readonly liquidG: number;
  readonly tanks: readonly Loaded[];
}

/** Equal steps that each smooth piece is first cut into. */
const SEEDS = 16;
/** Two CGs this close are the same but for rounding, mm. */
export const SAME_MM = 1e-10;
/** Fuel fractions this close are not parted further. */
const NARROWEST = 1e-12;
const GOLDEN = (Math.sqrt(5) - 1) / 2;

/**
 * The farthest CG along a heading over one burn and all switches. Each smooth piece that can hold something worth finding is
 * sampled and every top among its samples is closed in on. Where the liquid's reach is known, stretches that could still
 * hide more are then halved until none can hide more than the tolerance, or no more may be tried.
 */
export function burnPeak(search: BurnSearch): BurnPeak {
  const ends = search.breaks.toReversed().map((fraction) => sampleAt(search, fraction));
  let best = ends.reduce((a, b) => (b.cgMm > a.cgMm + SAME_MM ? b : a));
  const consider = (sample: Sample) => {
    if (sample.cgMm > best.cgMm + SAME_MM) best = sample;
  };
  const lambdaMm = () => Math.max(best.cgMm, search.floorMm);
  let open: Sample[] = [ends[0]!];
  for (const [from, to] of gaps(ends)) {
    if (worthSeeding(search, from, to, lambdaMm())) {
      const piece = [from, ...seeds(search, from, to), to];
      piece.forEach(consider);
      for (const top of tops(search, piece)) consider(top);
      open.push(...piece.slice(1));
    } else open.push(to);
  }
  if (search.reaches === null) return { best, withinMm: null };

  for (;;) {
    const hidden = gaps(open).map(([a, b]) => hiddenMm(search, a, b, lambdaMm()));
    const withinMm = hidden.reduce((a, b) => Math.max(a, b), 0);
    const closer: Sample[] = [open[0]!];
    gaps(open).forEach(([a, b], k) => {
      const wide = a.fuelFraction - b.fuelFraction > NARROWEST;
      if (hidden[k]! > search.toleranceMm && wide && search.maySample()) {
        const middle = sampleAt(search, (a.fuelFraction + b.fuelFraction) / 2);
        if (middle.cgMm > best.cgMm + SAME_MM) consider(closeIn(search, a.fuelFraction, b.fuelFraction));
        consider(middle);
        closer.push(middle);
      }
      closer.push(b);
    });
    if (closer.length === open.length) return { best, withinMm };
    open = closer;
  }
}

/** How far beyond `lambdaMm` anything of a burn can lie by what is known of its two ends alone, mm. */
export function burnBoundMm(search: BurnSearch, lambdaMm: number): number {
  if (search.reaches === null) return Number.POSITIVE_INFINITY;
  const ends = [search.breaks.at(-1)!, search.breaks[0]!].map((fraction) => sampleAt(search, fraction));
  return hiddenMm(search, ends[0]!, ends[1]!, lambdaMm);
}

/** The farther of a burn's two ends, full and dry. */
export function burnEnd(search: BurnSearch): Peak {
  const [full, dry] = [search.breaks.at(-1)!, search.breaks[0]!].map((fraction) =>
    sampleAt(search, fraction),
  );
  return dry!.cgMm > full!.cgMm + SAME_MM ? dry! : full!;
}

function sampleAt({ heading, fixed, options, liquidAt, reaches }: BurnSearch, fuelFraction: number): Sample {
  const { massG, momentGmm, byTank } = liquidAt(fuelFraction);
  const liquid = { massG, momentGmm: along(heading, momentGmm) };
  const aboard = { massG: fixed.massG + massG, momentGmm: fixed.momentGmm + liquid.momentGmm };
  const apart = byTank && reaches?.length === byTank.length;
  const tanks = apart ? byTank.map((tank) => loadedBy(tank, heading)) : [liquid];
  return { fuelFraction, liquidG: massG, tanks, ...bestLoad(options, aboard) };
}

function worthSeeding(search: BurnSearch, from: Sample, to: Sample, lambdaMm: number): boolean {
  if (search.reaches === null) return true;
  return search.maySample() && hiddenMm(search, from, to, lambdaMm) > search.toleranceMm;
}

/** From fuller to emptier, so that the fuller of equals is found first. */
const seeds = (search: BurnSearch, { fuelFraction: from }: Sample, { fuelFraction: to }: Sample): Sample[] =>
  Array.from({ length: SEEDS - 1 }, (_, i) => sampleAt(search, from + ((to - from) * (i + 1)) / SEEDS));

const gaps = (samples: readonly Sample[]): [Sample, Sample][] =>
  samples.slice(1).map((b, k) => [samples[k]!, b]);

/** The tops of one smooth piece, closed in on. An end counts only when the CG rises inward from it. */
function tops(search: BurnSearch, piece: readonly Sample[]): Sample[] {
  return piece.flatMap((here, k) => {
    const before = piece[k - 1];
    const after = piece[k + 1];
    const neighbour = before ?? after;
    if (here.cgMm < search.floorMm - search.toleranceMm || !neighbour) return [];
    const beside = [before, after].flatMap((point) => (point ? [point.cgMm] : []));
    // Level ground is no top: its ups and downs are rounding.
    if (beside.some((cgMm) => cgMm > here.cgMm) || !beside.some((cgMm) => cgMm < here.cgMm - SAME_MM))
      return [];
    if (!before || !after) {
      const inward = here.fuelFraction + 1e-3 * (neighbour.fuelFraction - here.fuelFraction);
      if (sampleAt(search, inward).cgMm <= here.cgMm) return [];
    }
    return [closeIn(search, (before ?? here).fuelFraction, (after ?? here).fuelFraction)];
  });
}

/** Golden section (Kiefer, Proc. AMS 4, 1953) between two fuel fractions that have one top between them. */
function closeIn(search: BurnSearch, from: number, to: number): Sample {
  let [a, b] = [from, to];
  let left = sampleAt(search, b - GOLDEN * (b - a));
  let right = sampleAt(search, a + GOLDEN * (b - a));
  while (Math.abs(b - a) > 1e-8 * Math.abs(to - from)) {
    if (left.cgMm >= right.cgMm) {
      b = right.fuelFraction;
      right = left;
      left = sampleAt(search, b - GOLDEN * (b - a));
    } else {
      a = left.fuelFraction;
      left = right;
      right = sampleAt(search, a + GOLDEN * (b - a));
    }
  }
  return left.cgMm >= right.cgMm ? left : right;
}

/**
 * How far beyond λ the CG can at most get between two amounts of liquid, mm: the liquid by its reach, the switches by
 * their own best against λ. The excess over nothing, divided by the least mass, is the most that x can gain.
 */
function hiddenMm(search: BurnSearch, fuller: Sample, emptier: Sample, lambdaMm: number): number {
  const { fixed, options, reaches, lightestG } = search;
  const liquid = mostBetween(fuller.tanks, emptier.tanks, reaches!, lambdaMm);
  const rest = beyond(fixed, lambdaMm) + bestAgainst(options, lambdaMm).mostGmm;
  return Math.max(0, liquid + rest) / (lightestG + emptier.liquidG);
}
