import { useId } from 'react';
import { aircraftExtent } from '../../model/airframe/extent';
import { cgErrorOf, type Improvement, LINE_95 } from '../../model/balance/certainty';
import { haloFactor } from '../../model/balance/haloScale';
import { USUAL } from '../../model/balance/measurements';
import { formatMass, formatNumber } from '../../model/units';
import { adviceWords, sureWords } from '../../model/words/certaintyWords';
import type { Bench } from '../../store/bench';
import { useRest } from '../../store/react';
import { Live } from '../Live';
import { type Readings, useReadings } from '../readings';

/** How well the CG is known, in words, and what would make it better known. */
export function HowSure() {
  const say = useReadings();
  const certainty = useRest((rest) => rest.certainty);
  const captionId = useId();
  const burns = (certainty?.travelPlusMinusMm.length ?? 0) > 1;
  const advice = certainty ? adviceWords(certainty, say) : '';
  return (
    <section className="how-sure" data-testid="how-sure">
      <h3>How sure</h3>
      <p>
        <strong>
          CG <Live read={(bench) => plusMinus(bench, say)} /> (95 %).
        </strong>{' '}
        {!certainty && 'Working it out …'}
        {certainty?.probability != null && `${sureWords(certainty.probability, burns)} `}
        {advice}
      </p>
      {certainty && certainty.ranking.length > 0 && (
        <table>
          <caption id={captionId}>What makes the CG uncertain</caption>
          <thead>
            <tr>
              <td />
              <th scope="col">±</th>
              <th scope="col">share</th>
            </tr>
          </thead>
          <tbody>
            {certainty.ranking.map((ranked) => (
              <tr key={`${ranked.bodyId} ${ranked.quantity}`}>
                <th scope="row">
                  {ranked.name}
                  {ranked.quantity === 'mass' ? ', mass' : ranked.quantity === 'station' ? ', place' : ''}
                </th>
                <td className="figure">{amount(ranked, say)}</td>
                <td className="figure">{Math.round(ranked.share * 100)} %</td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
      <p className="hint">
        Where nothing is said: scales ± {formatMass(USUAL.scalesG, say.units)}, tape ±{' '}
        {say.lengthFine(USUAL.tapeMm)}; densities ± {USUAL.notWeighed * 100} %, typical figures ±{' '}
        {USUAL.typical * 100} %. <Live read={haloWords} />
      </p>
    </section>
  );
}

function plusMinus({ document, balance }: Bench, say: Readings): string {
  const error = cgErrorOf(document.current(), balance.get());
  return error ? `± ${say.lengthFine(LINE_95 * error.sigmaMm[0])}` : '–';
}

function haloWords({ document, balance }: Bench): string {
  const error = cgErrorOf(document.current(), balance.get());
  if (!error) return '';
  const { minMm, maxMm } = aircraftExtent(document.current());
  const factor = haloFactor(Math.max(...error.sigmaMm), maxMm[0] - minMm[0]);
  return `The halo about the disc is drawn ${factor === 1 ? 'to scale' : `${factor} times too large`}.`;
}

const amount = ({ quantity, plusMinus: figure }: Improvement, say: Readings): string => {
  if (quantity === 'mass') return say.mass(figure);
  return quantity === 'station' || quantity === 'limits'
    ? say.lengthFine(figure)
    : `${formatNumber(figure, 3)} g/ml`;
};
