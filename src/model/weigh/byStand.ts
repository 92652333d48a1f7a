import { standardUncertainty } from '../../engine/balance/uncertainty';
import { balancePoint } from '../../engine/weigh/balancePoint';
import { exactly, type Figure, type Refusal, refusal } from '../../engine/weigh/figure';
import { apart, measurementOf, type OfReading, type Weighed } from './measured';

/** What a small pile of grams is off by, g, one sigma. Common practice, no source. */
const ADDED_SIGMA_G = 0.5;

/** The whole as weighed by itself; null when it was not. */
export const wholeFigure = (massG: number | null, plusMinusG: number): Figure | null =>
  massG === null ? null : { value: massG, sigma: standardUncertainty(plusMinusG) };

/** It is left empty where nobody weighed it. */
export const WEIGHS_NOTHING = refusal(
  'The whole, weighed: expected more than 0 g, or nothing where it was not weighed.',
);

/** The balance found on a stand or two fingertips; across it, hung by nose and tail. */
export function byStand(id: string, reading: OfReading<'stand'>): Weighed | Refusal {
  const { supportMm, plusMinusMm, addedG, addedAtMm, massG, massPlusMinusG } = reading;
  if (massG === 0) return WEIGHS_NOTHING;
  if (supportMm === null) return refusal('The supports: expected where they stood, as a station.');
  const sigma = standardUncertainty(plusMinusMm);
  const mass = wholeFigure(massG, massPlusMinusG);
  const along = balancePoint({
    supportMm: { value: supportMm, sigma },
    ...(addedG > 0 && {
      added: { massG: { value: addedG, sigma: ADDED_SIGMA_G }, atMm: { value: addedAtMm, sigma } },
    }),
    ...(mass && { massG: mass }),
  });
  if (!along.ok) return along;
  const across = acrossIt(reading, mass, sigma);
  if (across && !across.ok) return across;
  const buttlineMm = across?.cgMm ?? null;
  return {
    ok: true,
    massG: mass,
    stationMm: along.cgMm,
    buttlineMm,
    waterlineMm: null,
    withoutLiquid: false,
    measurement: measurementOf(
      id,
      [
        ['mass', mass],
        ['station', along.cgMm],
        ['buttline', buttlineMm],
      ],
      apart,
    ),
  };
}

/** Supports on the middle of the aircraft, grams on one side. */
function acrossIt({ across }: OfReading<'stand'>, massG: Figure | null, sigma: number) {
  if (!across) return null;
  const { addedG, plusMinusG, addedAtMm } = across;
  if (Math.abs(addedAtMm) < 1) {
    return refusal('Across: the grams must lie to one side, at a buttline that is not 0.');
  }
  if (!massG) return refusal('Across: the mass of the whole aircraft is needed.');
  return balancePoint({
    supportMm: { ...exactly(0), sigma },
    added: {
      massG: { value: addedG, sigma: standardUncertainty(plusMinusG) },
      atMm: { value: addedAtMm, sigma },
    },
    massG,
  });
}
