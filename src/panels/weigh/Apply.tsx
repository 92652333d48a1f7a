import { useMemo } from 'react';
import {
  applyAndNote,
  type Correction,
  fitAfter,
  type PlaceKnown,
  setClear,
} from '../../model/weigh/correction';
import { correctionWords } from '../../model/words/weighWords';
import { useCommitted } from '../../store/react';
import { EditButton } from '../fields/EditButton';
import { useReadings } from '../readings';
import { today } from './today';

interface ApplyProps {
  readonly correction: Correction;
  readonly weighInId: string;
  readonly placeKnown: PlaceKnown;
}

/** The one button that makes a correction and notes it in the log; below it what the fit would have against it. */
export function Apply({ correction, weighInId, placeKnown }: ApplyProps) {
  const say = useReadings();
  const aircraft = useCommitted((committed) => committed);
  const words = correctionWords(aircraft, correction, say);
  const against = useMemo(
    () => (correction.kind === 'add' ? [] : fitAfter(aircraft, correction)),
    [aircraft, correction],
  );
  return (
    <>
      <EditButton
        step={`${words} (by the scales)`}
        edit={(now) =>
          applyAndNote(now, setClear(now, correction, placeKnown), {
            weighInId,
            date: today(),
            what: words,
          })
        }
      >
        {words}
      </EditButton>
      {against.length > 0 && <p className="hint">{`Not likely there, by the fit: ${against.join(' ')}`}</p>}
    </>
  );
}
