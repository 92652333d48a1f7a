import type { RefObject } from 'react';
import type { LabelBox } from '../../interaction/labelPlaces';
import { wingPlanform } from '../../model/stability/band';
import { formatLength } from '../../model/units';
import { useAircraft, useStability, useView } from '../../store/react';

/** What the overlay is drawn with; the scene puts it in place. */
export interface StabilityElements {
  neutralPoint: HTMLElement | null;
  mac: HTMLElement | null;
  /** What they cover in the frame being drawn, px. */
  boxes: readonly LabelBox[];
}

interface StabilityOverlayProps {
  readonly elements: RefObject<StabilityElements>;
}

/** An open ring with a cross, held clear of the CG's disc by a stem down to the place itself. */
const SIGN = 'M0-39A7 7 0 1 1 0-25A7 7 0 1 1 0-39M-12-32H12M0-44V0';

/** Over the stage: the sign of the estimated neutral point, and the name of the mean chord. */
export function StabilityOverlay({ elements }: StabilityOverlayProps) {
  const units = useView((state) => state.units);
  const zeroMm = useZeroMm();
  const atMm = useStability(({ estimate }) => estimate?.neutralPointMm ?? null);
  const fresh = useStability((state) => state.fresh);
  const macMm = useAircraft((aircraft) => wingPlanform(aircraft)?.macMm ?? null);
  return (
    <div className="stage-labels" aria-hidden="true">
      {macMm !== null && (
        <span
          className="stage-mac"
          ref={(element) => {
            elements.current.mac = element;
          }}
        >
          MAC {formatLength(macMm, units)}
        </span>
      )}
      {atMm !== null && (
        <span
          className="stage-np"
          data-testid="stage-neutral-point"
          data-fresh={fresh}
          ref={(element) => {
            elements.current.neutralPoint = element;
          }}
        >
          <svg viewBox="-14 -46 28 46" width="28" height="46" aria-hidden="true">
            <path className="stage-np-halo" d={SIGN} />
            <path d={SIGN} />
          </svg>
          <span className="stage-np-words">NP est. {formatLength(atMm - zeroMm, units)}</span>
        </span>
      )}
    </div>
  );
}

/** Stations are read from the chosen reference point, or from the datum. */
function useZeroMm(): number {
  const fromId = useView((state) => state.measureFromId);
  return useAircraft(
    ({ referencePoints }) => referencePoints.find(({ id }) => id === fromId)?.positionMm[0] ?? 0,
  );
}
