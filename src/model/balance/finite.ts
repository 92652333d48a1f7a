import type { Band, BandFit } from '../../engine/balance/band';
import type { TravelPoint } from '../../engine/balance/travel';
import { noMass } from '../../engine/mass/massProperties';
import type { MassProperties } from '../../engine/mass/types';
import type { Body } from '../airframe/bodies';
import { shownText } from '../document/names';

interface Figures extends MassProperties {
  readonly travel: readonly TravelPoint[];
  readonly band: Band | null;
  readonly fit: BandFit | null;
  readonly margin: { readonly nowPct: number; readonly leastPct: number } | null;
}

const allFinite = (values: readonly number[]): boolean => values.every(Number.isFinite);

/** Whether every figure that a verdict could stand on is a number. */
export function isFiniteBalance(figures: Figures): boolean {
  const { massG, cgMm, inertiaAboutCgGmm2: t, travel, band, margin, fit } = figures;
  return (
    allFinite([massG, ...(cgMm ?? []), t.xx, t.yy, t.zz, t.xy, t.xz, t.yz]) &&
    travel.every((point) => allFinite([point.massG, ...point.cgMm])) &&
    (!band || (allFinite([band.forwardMm, band.aftMm]) && (fit !== null || travel.length === 0))) &&
    (!margin || allFinite([margin.nowPct, margin.leastPct]))
  );
}

/** What takes the place of figures that are none: as if nothing had a CG, and marked so. */
export const noFigures = {
  ...noMass,
  finite: false,
  travel: [],
  band: null,
  bandFrom: null,
  estimatedBand: null,
  margin: null,
  travelMarginsPct: [],
  fit: null,
} as const;

/** What a person can do about a sum that is no number: the thing aboard that weighs most is the first to look at. */
export function notFiniteWords({ bodies }: { readonly bodies: readonly Body[] }): string {
  const weights = bodies.map(({ name, mass }) => ({
    name,
    g: Number.isNaN(mass.massG) ? Infinity : mass.massG,
  }));
  const heaviest = weights.reduce<(typeof weights)[number] | null>(
    (most, body) => (most && most.g >= body.g ? most : body),
    null,
  );
  const look = heaviest ? ` Look at “${shownText(heaviest.name)}” first, which weighs most.` : '';
  return `A mass, a size or a place is so large that the sum is no number.${look}`;
}
