import { standardUncertainty } from '../../engine/balance/uncertainty';
import { crossingOfLines } from '../../engine/weigh/balancePoint';
import type { Refusal } from '../../engine/weigh/figure';
import { WEIGHS_NOTHING, wholeFigure } from './byStand';
import { measurementOf, type OfReading, type Weighed } from './measured';

/** Lines that cross at the CG: plumb lines from the side, or through two supports from above. */
export function byLines(id: string, reading: OfReading<'lines'>): Weighed | Refusal {
  const { view, lines, plusMinusMm, massG, massPlusMinusG } = reading;
  if (massG === 0) return WEIGHS_NOTHING;
  const axis = view === 'side' ? 2 : 1;
  const sigmaMm = standardUncertainty(plusMinusMm);
  const crossing = crossingOfLines(
    lines.map(({ throughMm, andMm }) => ({
      throughMm: [throughMm[0], throughMm[axis]],
      andMm: [andMm[0], andMm[axis]],
      sigmaMm,
    })),
  );
  if (!crossing.ok) return crossing;
  const [stationMm, second] = crossing.crossingMm;
  const mass = wholeFigure(massG, massPlusMinusG);
  const together = crossing.covariance[0]?.[1] ?? 0;
  return {
    ok: true,
    massG: mass,
    stationMm,
    buttlineMm: view === 'top' ? second : null,
    waterlineMm: view === 'side' ? second : null,
    withoutLiquid: false,
    measurement: measurementOf(
      id,
      [
        ['mass', mass],
        ['station', stationMm],
        [view === 'side' ? 'waterline' : 'buttline', second],
      ],
      (a, b) => (a === 'mass' || b === 'mass' ? 0 : together),
    ),
  };
}
