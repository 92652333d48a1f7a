import { inertiaAbout, massPoint, massSum } from '../../../engine/mass/massProperties';
import { staticMarginPct } from '../../../engine/wing/margin';
import { type Planform, planform } from '../../../engine/wing/planform';
import type { LiftingSurface } from '../../../engine/wing/types';

/** A half wing to draw: straight edges, lengths in mm, the root's front corner at the datum. */
export interface HalfWing {
  readonly spanMm: number;
  readonly rootChordMm: number;
  readonly tipChordMm: number;
  readonly sweepMm: number;
}

export const trapezoid: HalfWing = { spanMm: 600, rootChordMm: 300, tipChordMm: 180, sweepMm: 90 };
export const straight: HalfWing = { spanMm: 600, rootChordMm: 240, tipChordMm: 160, sweepMm: 20 };
export const swept: HalfWing = { ...straight, sweepMm: 260 };

/** The engine's integrals over both halves of such a wing. */
export const planformOf = ({ spanMm, rootChordMm, tipChordMm, sweepMm }: HalfWing): Planform => {
  const surface: LiftingSurface = {
    id: 'wing',
    name: 'Wing',
    rootMm: [0, 0, 0],
    cantDeg: 0,
    incidenceDeg: 0,
    sides: 'both',
    panels: [{ spanMm, rootChordMm, tipChordMm, sweepMm, dihedralDeg: 0, rootTwistDeg: 0, tipTwistDeg: 0 }],
  };
  return planform(surface);
};

/** Two weights on a beam: mass in g, station in mm. */
export const seeSaw = { left: { massG: 400, atMm: 60 }, right: { massG: 600, atMm: 310 } } as const;

const along = (massG: number, atMm: number) => massPoint(massG, [atMm, 0, 0]);

/** Where a beam with two weights balances, mm. */
export const seeSawCgMm = (): number => {
  const { left, right } = seeSaw;
  return massSum([along(left.massG, left.atMm), along(right.massG, right.atMm)]).cgMm?.[0] ?? 0;
};

/** A margin that is seen well: stations in mm. */
export const marginShown = { neutralPointMm: 186, cgMm: 158, macMm: 240 } as const;
export const marginPct = (): number =>
  staticMarginPct(marginShown.neutralPointMm, marginShown.cgMm, marginShown.macMm);

/** How many times the inertia grows when both ends of a dumb-bell go out so many times as far. */
export const inertiaTimes = (timesFarther: number): number => {
  const bell = (armMm: number) =>
    inertiaAbout(massSum([along(100, -armMm), along(100, armMm)]), [0, 0, 0]).yy;
  return bell(100 * timesFarther) / bell(100);
};

/** How many times its weight a thing pulls in a level turn with so many degrees of bank, g. */
export const turnG = (bankDeg: number): number => 1 / Math.cos((bankDeg * Math.PI) / 180);
