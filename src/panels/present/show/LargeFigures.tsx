import type { Slide } from '../../../model/document/types';
import { formatNumber } from '../../../model/units';
import type { Fact } from '../../../model/words/verdict';
import type { Bench } from '../../../store/bench';
import { answerOf, held } from '../../answer/answerOf';
import { signs } from '../../answer/signs';
import { Icon } from '../../icons';
import { useBenchList, useBenchValue } from '../../Live';
import { useReadings } from '../../readings';

/** Only what the slide talks about, to be read from the last row. */
export function LargeFigures({ slide }: { readonly slide: Slide }) {
  const say = useReadings();
  const wanted = new Set<string>(slide.figures);
  const facts = useBenchList((bench: Bench) =>
    answerOf(bench, say)
      .facts.filter(({ key }) => wanted.has(key))
      .map(({ key, label, value, tone }: Fact) => ({ key, label, value, tone })),
  );
  const tone = useBenchValue((bench) => answerOf(bench, say).tone);
  const headline = useBenchValue((bench) => held(bench) + answerOf(bench, say).headline);
  return (
    <div className="show-figures" data-testid="show-figures">
      {wanted.has('verdict') && (
        <p className="show-verdict" data-tone={tone}>
          <Icon name={signs[tone].icon} /> {headline}
        </p>
      )}
      <dl>
        {isOfNow(slide) && <NowFigures />}
        {facts.map(({ key, label, value, tone: of }) => (
          <div key={key} data-figure={key} data-tone={of}>
            <dt>{label}</dt>
            <dd className="figure">{value}</dd>
          </div>
        ))}
      </dl>
    </div>
  );
}

/** Whether the CG of the moment is what it is about: the facts beside it are of full and dry. */
const isOfNow = ({ burn, against, attitude, fuel }: Slide): boolean =>
  burn !== undefined || against !== undefined || attitude !== undefined || (fuel > 0 && fuel < 1);

/** What moves while the burn is played, and what differs between two states. */
function NowFigures() {
  const say = useReadings();
  const left = useBenchValue(({ view }) => formatNumber(100 * view.getState().fuelFraction, 0));
  const cg = useBenchValue(({ balance }) => {
    const { cgMm } = balance.get();
    return cgMm ? say.stationFine(cgMm[0]) : '–';
  });
  const hasFuel = useBenchValue(({ balance }) => balance.get().usableMl > 0);
  return (
    <>
      {hasFuel && (
        <div data-figure="fuel">
          <dt>Fuel left</dt>
          <dd className="figure">{left} %</dd>
        </div>
      )}
      <div data-figure="cg-now">
        <dt>CG now</dt>
        <dd className="figure">{cg}</dd>
      </div>
    </>
  );
}
