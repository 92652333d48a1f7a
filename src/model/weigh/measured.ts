import type { Figure } from '../../engine/weigh/figure';
import type { WholeMeasurement, WholeQuantity } from '../../engine/weigh/wholeResiduals';
import type { WeighIn } from '../document/types';

/** What a weigh-in says; null where it says nothing. From the datum. */
export interface Weighed {
  readonly ok: true;
  readonly massG: Figure | null;
  readonly stationMm: Figure;
  readonly buttlineMm: Figure | null;
  readonly waterlineMm: Figure | null;
  /** The same for holding against the list. */
  readonly measurement: WholeMeasurement;
  /** Measured without the liquid that was aboard, which was taken off where it lay. */
  readonly withoutLiquid: boolean;
}

/** A weigh-in that says where the CG is: any but a swing. */
export type CgReading = Exclude<WeighIn['reading'], { readonly by: 'swing' }>;
export type OfReading<K extends WeighIn['reading']['by']> = Extract<WeighIn['reading'], { readonly by: K }>;

/** What was measured, each figure with its quantity; those that are null were not. */
export function measurementOf(
  id: string,
  figures: readonly (readonly [WholeQuantity, Figure | null])[],
  covarianceOf: (a: WholeQuantity, b: WholeQuantity) => number,
): WholeMeasurement {
  const there = figures.flatMap(([quantity, figure]) => (figure ? [{ quantity, figure }] : []));
  return {
    id,
    quantities: there.map(({ quantity }) => quantity),
    values: there.map(({ figure }) => figure.value),
    covariance: there.map((a) =>
      there.map((b) => (a === b ? a.figure.sigma ** 2 : covarianceOf(a.quantity, b.quantity))),
    ),
  };
}

/** Of figures that were measured each by itself. */
export const apart = (): number => 0;
