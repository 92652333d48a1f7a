import { useEffect, useRef, useState } from 'react';
import type { PackOffer } from '../../model/advice/packChoice';
import { judgeFully } from '../../model/judgement/judgeFully';
import type { Judgement } from '../../model/judgement/types';
import { withPower } from '../../model/judgement/withPower';
import { LEAST_SHOWN_MM } from '../../model/units';
import { verdictInBrief } from '../../model/words/behindWords';
import { useBench, useFail, useView } from '../../store/react';
import { useRestingValue } from '../Live';
import { type Readings, useReadings } from '../readings';

interface OtherPackProps {
  readonly name: string;
  readonly offer: PackOffer;
}

/** Another capacity for a pack: what it saves, what the verdict would be with it, and a button that takes it. */
export function OtherPack({ name, offer }: OtherPackProps) {
  const { document } = useBench();
  const say = useReadings();
  const judgement = useJudgementOf(offer);
  const { aircraft, capacityMah } = offer;
  const verdict = judgement
    ? `The verdict with it: ${verdictInBrief(aircraft, judgement, say)}.`
    : 'Being judged…';
  return (
    <p className="power-offer">
      <span>
        {savingWords(offer, say)} {verdict}
      </span>
      <button
        type="button"
        className="button"
        disabled={judgement === null}
        onClick={() => document.commit(`${name}: ${capacityMah} mAh`, aircraft)}
      >
        Take {capacityMah} mAh
      </button>
    </p>
  );
}

/** How long nothing must change before an offer is judged, ms. */
const REST_MS = 80;

/** The whole verdict with the offer taken, worked out at rest; null until then. */
function useJudgementOf(offer: PackOffer): Judgement | null {
  const down = useView((view) => view.down);
  const estimate = useRestingValue(({ balance }) => {
    const { estimate: found, estimateFresh } = balance.get();
    return estimateFresh ? found : null;
  });
  const [judged, setJudged] = useState<{ readonly of: PackOffer; readonly judgement: Judgement } | null>(
    null,
  );
  const fail = useRef(useFail());
  useEffect(() => {
    const judge = () => {
      try {
        const judgement = judgeFully(offer.aircraft, { down, estimate });
        setJudged({ of: offer, judgement: withPower(offer.aircraft, judgement) });
      } catch (error) {
        fail.current(error);
      }
    };
    const timer = setTimeout(judge, REST_MS);
    return () => clearTimeout(timer);
  }, [offer, down, estimate]);
  return judged?.of === offer ? judged.judgement : null;
}

function savingWords({ capacityMah, savedG, cgShiftMm }: PackOffer, say: Readings): string {
  if (savedG === null) return `${capacityMah} mAh would do; what is aboard is not weighed yet.`;
  const grams = savedG >= 0 ? `saves about ${say.mass(savedG)}` : `weighs about ${say.mass(-savedG)} more`;
  // Where nothing burns, or it makes no difference, nobody has to think of tanks.
  const when =
    cgShiftMm && Math.abs(cgShiftMm.full - cgShiftMm.dry) >= LEAST_SHOWN_MM ? ' with dry tanks' : '';
  const shift = cgShiftMm && ` and moves the CG ${shiftWords(cgShiftMm.dry, say)}${when}`;
  const lead = savedG >= 0 ? `${capacityMah} mAh would do` : `It takes ${capacityMah} mAh`;
  return `${lead}: it ${grams}${shift ?? ''}.`;
}

function shiftWords(mm: number, say: Readings): string {
  return Math.abs(mm) < LEAST_SHOWN_MM
    ? 'hardly at all'
    : `${say.lengthFine(Math.abs(mm))} ${mm > 0 ? 'aft' : 'forward'}`;
}
