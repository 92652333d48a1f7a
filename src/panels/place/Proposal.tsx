import type { ReactNode } from 'react';
import { EditButton } from '../fields/EditButton';
import { Icon } from '../icons';
import { useReadings } from '../readings';
import { Moves } from './Moves';
import type { Outcome } from './useOutcome';

interface ProposalProps {
  readonly outcome: Outcome;
  readonly onPutAway: () => void;
  /** One more button beside them. */
  readonly beside: ReactNode;
  /** Between the buttons and the list, which grows and shrinks with what is looked at. */
  readonly children: ReactNode;
}

/** What an arrangement would do, and the one button that does it. */
export function Proposal({ outcome, onPutAway, beside, children }: ProposalProps) {
  const say = useReadings();
  const { rows, faults, marginMm, after } = outcome;
  return (
    <div className="proposal">
      {faults.map((fault) => (
        <p key={fault} className="arrange-fault" role="alert">
          <Icon name="bad" /> Worked out again: {fault}
        </p>
      ))}
      <div className="arrange-buttons">
        {rows.length > 0 && (
          <EditButton
            className="button strong"
            disabled={faults.length > 0}
            step="Arrange"
            edit={() => after}
          >
            Accept
          </EditButton>
        )}
        <button type="button" className="button" onClick={onPutAway}>
          Put away
        </button>
        {beside}
      </div>
      {children}
      {rows.length === 0 ? (
        <p>Everything may stay where it is.</p>
      ) : (
        <>
          <Moves rows={rows} />
          <p className="hint">Then the least margin over all load states is {say.lengthFine(marginMm)}.</p>
        </>
      )}
    </div>
  );
}
