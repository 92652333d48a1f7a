import type { ReactNode } from 'react';
import { useCommitted } from '../../store/react';
import { faultDetail } from './Boundary';
import { FaultWays } from './FaultWays';
import { Trouble } from './Trouble';

interface StageTroubleProps {
  readonly failure:
    | { readonly why: 'no graphics' }
    | { readonly why: 'graphics lost' }
    | { readonly why: 'fault'; readonly error: unknown };
  readonly onRetry: () => void;
}

/** Why the stage shows no picture, over the place where it would be. */
export function StageTrouble({ failure, onRetry }: StageTroubleProps): ReactNode {
  const name = useCommitted((aircraft) => aircraft.name);
  const again = (
    <button type="button" className="button" onClick={onRetry}>
      Retry
    </button>
  );
  switch (failure.why) {
    case 'no graphics':
      return (
        <Trouble
          title="The stage has no 3D graphics here."
          detail="This browser gives the page no WebGL: it is switched off in its settings, or the graphics driver is not trusted. Beam, burn, manifest and cards work without it."
        >
          {again}
        </Trouble>
      );
    case 'graphics lost':
      return (
        <Trouble
          title="The stage lost its 3D graphics."
          detail="The browser took them away, as it does when the machine sleeps or another page needs them. The picture comes back by itself as soon as they do; all else works on."
        >
          {again}
        </Trouble>
      );
    case 'fault':
      return (
        <Trouble title="The stage failed." detail={faultDetail(name, failure.error)}>
          <FaultWays onRetry={onRetry} />
        </Trouble>
      );
  }
}
