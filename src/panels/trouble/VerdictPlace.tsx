import { useBench } from '../../store/react';
import { Answer } from '../answer/Answer';
import { useBenchValue } from '../Live';
import { Boundary } from './Boundary';
import { FaultWays } from './FaultWays';
import { Trouble } from './Trouble';

/** The verdict; where the balance itself cannot be worked out, no verdict but that. */
export function VerdictPlace() {
  const { balance } = useBench();
  const fault = useBenchValue(() => balance.fault());
  if (fault === null)
    return (
      <Boundary place="The verdict">
        <Answer />
      </Boundary>
    );
  return (
    <div data-testid="verdict">
      <Trouble
        title="Not known: mass and CG."
        detail={`${fault} No figure on the bench stands for it until this is mended.`}
      >
        <FaultWays onRetry={balance.retry} />
      </Trouble>
    </div>
  );
}
