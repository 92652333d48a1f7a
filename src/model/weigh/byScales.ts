import { standardUncertainty } from '../../engine/balance/uncertainty';
import { type Figure, type Refusal, refusal } from '../../engine/weigh/figure';
import { weighOnScales } from '../../engine/weigh/weighOnScales';
import type { WholeQuantity } from '../../engine/weigh/wholeResiduals';
import { measurementOf, type OfReading, type Weighed } from './measured';

const rowOf: Readonly<Partial<Record<WholeQuantity, number>>> = { mass: 0, station: 1, buttline: 2 };

/** Wheels, or other supports, on scales. */
export function byScales(
  id: string,
  { scales, resolutionG, tapeMm, pitchDeg, pitchPlusMinusDeg }: OfReading<'scales'>,
  cgWaterlineMm: Figure,
): Weighed | Refusal {
  const unread = scales.find(({ grossG }) => grossG === 0);
  if (unread && scales.some(({ grossG }) => grossG > 0)) {
    return refusal(`${unread.name}: its scale has not been read yet; take it away if nothing stands on it.`);
  }
  const answer = weighOnScales({
    scales: scales.map((scale) => ({ ...scale, resolutionG, supportSigmaMm: standardUncertainty(tapeMm) })),
    pitchDeg: { value: pitchDeg, sigma: standardUncertainty(pitchPlusMinusDeg) },
    cgWaterlineMm,
  });
  if (!answer.ok) return answer;
  const { massG, stationMm, buttlineMm, covariance } = answer;
  return {
    ok: true,
    massG,
    stationMm,
    buttlineMm,
    waterlineMm: null,
    withoutLiquid: false,
    measurement: measurementOf(
      id,
      [
        ['mass', massG],
        ['station', stationMm],
        ['buttline', buttlineMm],
      ],
      (a, b) => covariance[rowOf[a] ?? 0]?.[rowOf[b] ?? 0] ?? 0,
    ),
  };
}
