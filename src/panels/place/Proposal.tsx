import { type ReactNode, useState } from 'react';
import { Refusal } from '../fields/EditButton';
import { useEdit } from '../fields/useEdit';
import { Icon } from '../icons';
import { useReadings } from '../readings';
import { Moves } from './Moves';
import type { Outcome } from './useOutcome';

interface ProposalProps {
  readonly outcome: Outcome;
  /** It is for another aircraft than the one on the bench: only looked at. */
  readonly stale: boolean;
  readonly shown: number | null;
  readonly onShow: (moves: number | null) => void;
  readonly onAccepted: (outcome: Outcome) => void;
  readonly onPutAway: () => void;
  /** One more button beside them. */
  readonly beside: ReactNode;
  /** Between the buttons and the list, which grows and shrinks with what is looked at. */
  readonly children: ReactNode;
}

/** What an arrangement would do, and the one button that does it. */
export function Proposal(props: ProposalProps) {
  const { outcome, stale, shown, onShow, onAccepted, onPutAway, beside, children } = props;
  const say = useReadings();
  const { rows, faults, marginMm, after } = outcome;
  const commit = useEdit();
  const [fault, setFault] = useState<string | null>(null);
  const accept = () => {
    const refused = commit('Arrange', () => after);
    setFault(refused);
    if (refused === null) onAccepted(outcome);
  };
  return (
    <div className="proposal">
      {rows.length > 0 && (
        <p className="arrange-outcome">
          {rows.length === 1 ? 'One step' : `${rows.length} steps`}; then every load state that flies is{' '}
          <b className="figure">{say.lengthFine(Math.floor(marginMm * 10) / 10)}</b> or more inside the
          limits.
        </p>
      )}
      {(faults ?? []).map((fault) => (
        <p key={fault} className="arrange-fault" role="alert">
          <Icon name="bad" /> Worked out again: {fault}
        </p>
      ))}
      <div className="arrange-buttons held">
        {rows.length > 0 && (
          <button
            type="button"
            className="button strong"
            disabled={faults === null || faults.length > 0 || stale}
            onClick={accept}
          >
            Accept
          </button>
        )}
        <button type="button" className="button" onClick={onPutAway}>
          Put away
        </button>
        {beside}
      </div>
      <Refusal fault={fault} />
      {children}
      {rows.length === 0 ? (
        <p>Everything may stay where it is.</p>
      ) : (
        <>
          {rows.length > 1 && <Stepper count={rows.length} shown={shown} onShow={onShow} />}
          <Moves rows={rows} shown={shown} />
        </>
      )}
    </div>
  );
}

interface StepperProps {
  readonly count: number;
  readonly shown: number | null;
  readonly onShow: (moves: number | null) => void;
}

/** Walks through the moves one at a time, as they are done; at the end all of them are shown again. */
function Stepper({ count, shown, onShow }: StepperProps) {
  const at = shown ?? count;
  return (
    <fieldset className="stepper">
      <legend className="unseen">Moves shown on the stage</legend>
      <button
        type="button"
        className="button"
        aria-label="One move back"
        disabled={at <= 1}
        onClick={() => onShow(at - 1)}
      >
        −
      </button>
      <span className="figure" role="status">
        {at} of {count} moves shown
      </span>
      <button
        type="button"
        className="button"
        aria-label="One move on"
        disabled={at >= count}
        onClick={() => onShow(at + 1 >= count ? null : at + 1)}
      >
        +
      </button>
    </fieldset>
  );
}
