import { along, bestAgainst, bestLoad, type Heading, type Loaded, type Options } from './bestLoad';
import type { LiquidMoment } from './travel';

/** The load state farthest along a heading. */
export interface Peak {
  readonly fuelFraction: number;
  readonly chosen: readonly number[];
  /** CG along the heading, mm. */
  readonly cgMm: number;
  /** No state lies farther out than this beyond it, mm; null when nothing is known of where the liquid can be. */
  readonly withinMm: number | null;
}

/** What the search needs: everything projected on one heading. */
export interface BurnSearch {
  readonly heading: Heading;
  readonly fixed: Loaded;
  readonly options: Options;
  readonly liquidAt: (fuelFraction: number) => LiquidMoment;
  /** Fuel fractions in rising order, between neighbours of which the burn is smooth. */
  readonly breaks: readonly number[];
  /** The least mass of any load state, g; more than nothing. */
  readonly lightestG: number;
  /** The least and greatest coordinate along the heading that any liquid can have; null when not known. */
  readonly reachMm: readonly [number, number] | null;
  /** How closely the peak has to be certain, mm. */
  readonly toleranceMm: number;
}

interface Sample extends Peak {
  readonly liquid: Loaded;
}

/** Equal steps that each smooth piece is first cut into. */
const SEEDS = 16;
/** At most so many amounts of liquid are tried before the search reports how certain it is so far. */
const MOST_SAMPLES = 6000;
/** Two CGs this close are the same but for rounding, mm. */
const SAME_MM = 1e-10;
/** Fuel fractions this close are not parted further. */
const NARROWEST = 1e-12;
const GOLDEN = (Math.sqrt(5) - 1) / 2;

/**
 * The farthest CG along a heading over all fuel and all switches. Each smooth piece is sampled and every top among its
 * samples is closed in on. Where the liquid's reach is known, stretches that could still hide more are then halved until
 * none can hide more than the tolerance.
 */
export function burnPeak(search: BurnSearch): Peak {
  const samples = seeds(search);
  let best = samples.reduce((a, b) => (b.cgMm > a.cgMm + SAME_MM ? b : a));
  const consider = (sample: Sample) => {
    if (sample.cgMm > best.cgMm + SAME_MM) best = sample;
  };
  for (const piece of pieces(samples, search.breaks)) {
    for (const top of tops(search, piece)) consider(top);
  }
  if (search.reachMm === null) return { ...best, withinMm: null };

  let open = samples;
  for (;;) {
    const hidden = gaps(open).map(([a, b]) => hiddenMm(search, a, b, best.cgMm));
    const withinMm = hidden.reduce((a, b) => Math.max(a, b), 0);
    if (open.length > MOST_SAMPLES) return { ...best, withinMm };
    const closer: Sample[] = [open[0]!];
    gaps(open).forEach(([a, b], k) => {
      if (hidden[k]! > search.toleranceMm && a.fuelFraction - b.fuelFraction > NARROWEST) {
        const middle = sampleAt(search, (a.fuelFraction + b.fuelFraction) / 2);
        if (middle.cgMm > best.cgMm) consider(closeIn(search, a.fuelFraction, b.fuelFraction));
        consider(middle);
        closer.push(middle);
      }
      closer.push(b);
    });
    if (closer.length === open.length) return { ...best, withinMm };
    open = closer;
  }
}

function sampleAt({ heading, fixed, options, liquidAt }: BurnSearch, fuelFraction: number): Sample {
  const { massG, momentGmm } = liquidAt(fuelFraction);
  const liquid = { massG, momentGmm: along(heading, momentGmm) };
  const aboard = { massG: fixed.massG + massG, momentGmm: fixed.momentGmm + liquid.momentGmm };
  return { fuelFraction, liquid, withinMm: null, ...bestLoad(options, aboard) };
}

/** From full to dry, so that the fuller of equals is found first. */
function seeds(search: BurnSearch): Sample[] {
  const samples: Sample[] = [];
  const falling = search.breaks.toReversed();
  falling.forEach((to, k) => {
    const from = falling[k - 1];
    if (from !== undefined) {
      for (let i = 1; i < SEEDS; i += 1) samples.push(sampleAt(search, from + ((to - from) * i) / SEEDS));
    }
    samples.push(sampleAt(search, to));
  });
  return samples;
}

const gaps = (samples: readonly Sample[]): [Sample, Sample][] =>
  samples.slice(1).map((b, k) => [samples[k]!, b]);

const pieces = (samples: readonly Sample[], breaks: readonly number[]): Sample[][] =>
  breaks.slice(1).map((_, k) => samples.slice(k * SEEDS, (k + 1) * SEEDS + 1));

/** The tops of one smooth piece, closed in on. An end counts only when the CG rises inward from it. */
function tops(search: BurnSearch, piece: readonly Sample[]): Sample[] {
  return piece.flatMap((here, k) => {
    const before = piece[k - 1];
    const after = piece[k + 1];
    const neighbour = before ?? after;
    if ((before && before.cgMm > here.cgMm) || (after && after.cgMm > here.cgMm) || !neighbour) return [];
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
 * How far beyond λ the CG can at most get between two amounts of liquid, mm. What is drawn between them is a body
 * somewhere within the reach, so N_liquid − λ·M_liquid is held below two lines, one from either end, and the switches add
 * at most their own best against λ. The excess over nothing, divided by the least mass, is the most that x can gain.
 */
function hiddenMm(search: BurnSearch, fuller: Sample, emptier: Sample, lambdaMm: number): number {
  const { fixed, options, reachMm, lightestG } = search;
  const [least, most] = reachMm!;
  const above = (s: Sample) => s.liquid.momentGmm - lambdaMm * s.liquid.massG;
  const low = above(emptier);
  const high = above(fuller);
  const drawnG = fuller.liquid.massG - emptier.liquid.massG;
  const rise = most - lambdaMm;
  const fall = lambdaMm - least;
  const peakG =
    rise > 0 && fall > 0 ? Math.min(drawnG, Math.max(0, (high - low + fall * drawnG) / (rise + fall))) : 0;
  const liquid = Math.max(high, low + Math.max(0, rise) * peakG);
  const rest = fixed.momentGmm - lambdaMm * fixed.massG + bestAgainst(options, lambdaMm).mostGmm;
  return Math.max(0, liquid + rest) / lightestG;
}
