import { panelEdges } from './panelEdges';
import type { LiftingSurface } from './types';

/** Steeper than this and a surface is measured in its own plane: a fin, not a wing. */
const FIN_CANT_DEG = 75;

/** What the integrals over one surface give. Points are in the aircraft frame, lengths in mm. */
export interface Planform {
  /** `xy`: seen from above. `own`: seen square to the surface before cant (fins). */
  readonly plane: 'xy' | 'own';
  /** Both halves where there are two. A gap between the roots is not counted. */
  readonly areaMm2: number;
  /** Tip to tip, gap between the roots included; for a `centre` surface root to tip. */
  readonly spanMm: number;
  /** spanMm² / areaMm2. */
  readonly aspectRatio: number;
  /** Last tip chord over first root chord. */
  readonly taper: number;
  readonly rootChordMm: number;
  readonly tipChordMm: number;
  /** Area over the span that is covered by panels. */
  readonly meanChordMm: number;
  /** Mean aerodynamic chord, (2/S)∫c² dy. */
  readonly macMm: number;
  /** Station of the MAC's leading edge, (2/S)∫c·x_LE dy. */
  readonly lemacMm: number;
  /** Where along the right half the MAC lies, (2/S)∫c·y dy, and the same mean of the waterline. */
  readonly macButtlineMm: number;
  readonly macWaterlineMm: number;
}

/**
 * Planform figures of a surface, exact for any number of panels: chord and leading edge are linear in
 * each panel, so ∫c, ∫c², ∫c·x, ∫c·y are closed forms that are summed.
 *
 * Measured on the x-y plane, so a panel with dihedral, or a V-tail, counts by its projection; `centre`
 * surfaces and those canted by more than 75° are measured in their own plane. Twist and incidence are
 * left out (their effect is of second order).
 * Source: the integral definition of the mean aerodynamic chord, e.g. Raymer, Aircraft Design, ch. 4
 * (from memory). Throws on impossible geometry.
 */
export function planform(surface: LiftingSurface, plane: 'xy' | 'own' = seenFrom(surface)): Planform {
  const halves = surface.sides === 'both' ? 2 : 1;
  let covered = 0;
  let farthest = Math.abs(surface.rootMm[1]);
  let area = 0;
  let chordSquared = 0;
  const areaMoment = [0, 0, 0] as [number, number, number];
  for (const { panel, rootMm, tipMm } of panelEdges(surface)) {
    const { rootChordMm: root, tipChordMm: tip } = panel;
    const width = plane === 'xy' ? Math.abs(tipMm[1] - rootMm[1]) : panel.spanMm;
    // ∫c dt and ∫c·t dt over the panel, t from 0 at its root to 1 at its tip
    const chord0 = (width * (root + tip)) / 2;
    const chord1 = (width * (root + 2 * tip)) / 6;
    area += chord0;
    chordSquared += (width * (root * root + root * tip + tip * tip)) / 3;
    for (const axis of [0, 1, 2] as const) {
      areaMoment[axis] += rootMm[axis] * chord0 + (tipMm[axis] - rootMm[axis]) * chord1;
    }
    covered += width;
    farthest = Math.max(farthest, Math.abs(tipMm[1]));
  }
  if (area === 0) throw new Error(`lifting surface "${surface.name}": no area seen on the ${plane} plane`);
  const spanMm = plane === 'xy' && halves === 2 ? 2 * farthest : halves * covered;
  const rootChordMm = surface.panels[0]?.rootChordMm ?? 0;
  const tipChordMm = surface.panels.at(-1)?.tipChordMm ?? 0;
  return {
    plane,
    areaMm2: halves * area,
    spanMm,
    aspectRatio: (spanMm * spanMm) / (halves * area),
    taper: tipChordMm / rootChordMm,
    rootChordMm,
    tipChordMm,
    meanChordMm: area / covered,
    macMm: chordSquared / area,
    lemacMm: areaMoment[0] / area,
    macButtlineMm: areaMoment[1] / area,
    macWaterlineMm: areaMoment[2] / area,
  };
}

function seenFrom(surface: LiftingSurface): 'xy' | 'own' {
  return surface.sides === 'centre' || Math.abs(surface.cantDeg) > FIN_CANT_DEG ? 'own' : 'xy';
}

/** The part of a planform that % MAC needs. */
export type MacLine = Pick<Planform, 'macMm' | 'lemacMm'>;

/** Station (mm, aircraft frame) as % MAC; 0 at LEMAC, 100 at the trailing edge, aft +. */
export function stationToPctMac(mac: MacLine, stationMm: number): number {
  return (100 * (stationMm - mac.lemacMm)) / mac.macMm;
}

/** % MAC as station, mm in the aircraft frame. */
export function pctMacToStation(mac: MacLine, pctMac: number): number {
  return mac.lemacMm + (pctMac / 100) * mac.macMm;
}
