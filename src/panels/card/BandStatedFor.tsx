import type { Aircraft } from '../../model/document/types';
import { statedMoment } from '../../model/judgement/statedPoint';
import { momentWords } from '../../model/words/momentWords';
import { useCommitted, useView } from '../../store/react';
import { EditButton } from '../fields/EditButton';

/** What limits hold for, in words: the load state that a manual names, or every one. */
function statedWords(aircraft: Aircraft): string {
  const moment = statedMoment(aircraft);
  return moment ? momentWords(aircraft, moment) || 'the load state it starts in' : '';
}

/** Which load state the limits were stated for: every one, or the one that the bench shows when it is said so. */
export function BandStatedFor() {
  const stated = useCommitted(({ targetBand }) => targetBand?.statedFor !== undefined);
  const words = useCommitted(statedWords);
  const fuelFraction = useView((shown) => shown.fuelFraction);
  const positions = useView((shown) => shown.positions);
  const now = useCommitted((aircraft) => momentWords(aircraft, { fuelFraction, positions }));
  if (stated) {
    return (
      <>
        <p className="hint">
          They were stated for {words} and are held to that alone; elsewhere the CG is only shown against
          them.
        </p>
        <EditButton step="State the limits for every load state" edit={forEveryState}>
          Hold every load state to them
        </EditButton>
      </>
    );
  }
  if (!now) return null;
  return (
    <EditButton
      step="State the limits for one load state"
      edit={(aircraft) => forState(aircraft, { fuelFraction, positions })}
    >
      The manual states them for: {now}
    </EditButton>
  );
}

type Moment = NonNullable<ReturnType<typeof statedMoment>>;

function forState(aircraft: Aircraft, { fuelFraction, positions }: Moment): Aircraft {
  const switches = Object.entries(positions).map(([switchId, positionId]) => ({ switchId, positionId }));
  const statedFor = { fuelPct: Math.round(100 * fuelFraction), switches };
  return { ...aircraft, targetBand: aircraft.targetBand && { ...aircraft.targetBand, statedFor } };
}

function forEveryState(aircraft: Aircraft): Aircraft {
  if (!aircraft.targetBand) return aircraft;
  const { statedFor: _state, ...targetBand } = aircraft.targetBand;
  return { ...aircraft, targetBand };
}
