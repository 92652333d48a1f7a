import { grossPlanform, sharesOfWing } from './grossPlanform';
import { mainSurface, pairedSurfaces } from './mainSurface';
import { type Planform, pctMacToStation, planform, stationToPctMac } from './planform';
import type { LiftingSurface } from './types';

/** Lift-curve slope per rad of a thin straight wing: Helmbold 1942, 2πAR/(2 + √(AR² + 4)). */
export function helmboldSlope(aspectRatio: number): number {
  return (2 * Math.PI * aspectRatio) / (2 + Math.sqrt(aspectRatio * aspectRatio + 4));
}

/** Downwash slope dε/dα far behind a wing with elliptic loading: 2·CLα/(π·AR). Prandtl's lifting line. */
export function downwashSlope(clAlphaPerRad: number, aspectRatio: number): number {
  return (2 * clAlphaPerRad) / (Math.PI * aspectRatio);
}

/** What equation 2.36 takes: lengths as shares of the MAC, slopes per rad. */
export interface NelsonTerms {
  readonly aerodynamicCentre: number;
  readonly fuselageCmAlpha: number;
  readonly wingSlope: number;
  readonly tailSlope: number;
  readonly tailVolume: number;
  /** Dynamic pressure at the tail over the freestream's. */
  readonly tailEfficiency: number;
  readonly downwash: number;
}

/**
 * Stick-fixed neutral point as a share of the MAC, x_ac − Cmα,f/CLα,w + η·V_H·(CLα,t/CLα,w)(1 − dε/dα).
 * Source: Nelson, Flight Stability and Automatic Control, eq. 2.36 (from memory).
 */
export function nelsonNeutralPoint(terms: NelsonTerms): number {
  const tail =
    terms.tailEfficiency * terms.tailVolume * (terms.tailSlope / terms.wingSlope) * (1 - terms.downwash);
  return terms.aerodynamicCentre - terms.fuselageCmAlpha / terms.wingSlope + tail;
}

/**
 * Neutral point of a wing with a tail behind as a share of the MAC,
 * 1/4 + (1 + 2/AR)/(1 + 2/AR_h)·(1 − 4/(AR + 2))·V_h.
 * Source: Drela, Basic Aircraft Design Rules, MIT Unified Engineering notes (from memory).
 */
export function drelaNeutralPoint(aspectRatio: number, tailAspectRatio: number, tailVolume: number): number {
  return (
    0.25 + ((1 + 2 / aspectRatio) / (1 + 2 / tailAspectRatio)) * (1 - 4 / (aspectRatio + 2)) * tailVolume
  );
}

export interface TextbookEstimate {
  readonly method: 'quarter MAC' | 'wing and tail' | 'canard';
  readonly stationMm: number;
  /** Of the main wing. */
  readonly pctMac: number;
  /** Drela's rule beside it, % MAC; null unless there is a tail behind. */
  readonly drelaPctMac: number | null;
}

/** Above this the lattice and the quick formula part by more than is usual: common practice, no source. */
export const USUAL_DIFFERENCE_PCT_MAC = 8;

/** Surfaces smaller than this share of the wing are strakes and fins, not a tail. */
const TAIL_SHARE = 0.03;

/**
 * The quick sum beside the lattice: quarter MAC of a wing alone, Nelson's formula for a wing and tail, and
 * for a canard the mean of both quarter chords weighted by slope × area, the wing's part inside the
 * canard's span in its downwash. Helmbold slopes, downwash 2CLα/(πAR), tail efficiency 1, no fuselage.
 * A V counts with cos² of its cant on its own area (Purser & Campbell, NACA Report 823, from memory).
 * Pieces joined to the wing count as the wing, roots that are carried through a body as carried through it
 * (`carries` as for the neutral point). Null where no such formula applies: no wing, or more than two
 * surfaces that matter.
 */
export function textbookNeutralPoint(
  surfaces: readonly LiftingSurface[],
  carries: Readonly<Record<string, number>> = {},
): TextbookEstimate | null {
  const paired = pairedSurfaces(surfaces);
  const main = mainSurface(paired);
  const gross = main && grossPlanform(main.id, paired, carries);
  if (main === null || gross === null) return null;
  const shares = sharesOfWing(main.id, paired, carries);
  const slope = helmboldSlope(gross.aspectRatio);
  const wing = { plan: gross, area: gross.areaMm2 * Math.cos((main.cantDeg * Math.PI) / 180) ** 2, slope };
  const others = paired
    .map((surface, index) => effective(surface, carries[surface.id] ?? 0, 1 - (shares[index] as number)))
    .filter((surface, index) => paired[index] !== main && surface.area > TAIL_SHARE * wing.area);
  if (others.length > 1) return null;
  const quarterMm = pctMacToStation(wing.plan, 25);
  const other = others[0];
  if (other === undefined)
    return { method: 'quarter MAC', stationMm: quarterMm, pctMac: 25, drelaPctMac: null };

  const armMm = pctMacToStation(other.plan, 25) - quarterMm;
  const volume = (other.area * armMm) / (wing.area * wing.plan.macMm);
  if (armMm > 0) {
    const share = nelsonNeutralPoint({
      aerodynamicCentre: 0.25,
      fuselageCmAlpha: 0,
      wingSlope: wing.slope,
      tailSlope: other.slope,
      tailVolume: volume,
      tailEfficiency: 1,
      downwash: downwashSlope(wing.slope, wing.plan.aspectRatio),
    });
    return {
      method: 'wing and tail',
      stationMm: pctMacToStation(wing.plan, 100 * share),
      pctMac: 100 * share,
      drelaPctMac: 100 * drelaNeutralPoint(wing.plan.aspectRatio, other.plan.aspectRatio, volume),
    };
  }
  const inside = Math.min(1, other.plan.spanMm / wing.plan.spanMm);
  const ofWing = wing.slope * wing.area * (1 - inside * downwashSlope(other.slope, other.plan.aspectRatio));
  const ofCanard = other.slope * other.area;
  const stationMm = quarterMm + (ofCanard * armMm) / (ofCanard + ofWing);
  return { method: 'canard', stationMm, pctMac: stationToPctMac(wing.plan, stationMm), drelaPctMac: null };
}

/** Planform with the share of the area that counts for lift, the root carried through so far, and the slope of it. */
function effective(
  surface: LiftingSurface,
  carry: number,
  share: number,
): { plan: Planform; area: number; slope: number } {
  const exposed = planform(surface, 'own');
  const [x, y] = surface.rootMm;
  const throughMm = 2 * carry * y;
  const throughMm2 = throughMm * exposed.rootChordMm;
  const areaMm2 = exposed.areaMm2 + throughMm2;
  const spanMm = exposed.spanMm + throughMm;
  const mean = (of: number, ofRoot: number) => (of * exposed.areaMm2 + ofRoot * throughMm2) / areaMm2;
  const plan = {
    ...exposed,
    areaMm2,
    spanMm,
    aspectRatio: (spanMm * spanMm) / areaMm2,
    macMm: mean(exposed.macMm, exposed.rootChordMm),
    lemacMm: mean(exposed.lemacMm, x),
  };
  const area = share * areaMm2 * Math.cos((surface.cantDeg * Math.PI) / 180) ** 2;
  return { plan, area, slope: helmboldSlope(plan.aspectRatio) };
}
