import type { LoadBurn } from '../../engine/balance/loadStates';
import type { Vec3 } from '../../engine/geometry/types';
import { feedBreaks } from '../../engine/liquid/feedBreaks';
import { boundsOf } from '../balance/certifiedTravel';
import { liquidMoment, liquidStatesAt, plumbingOf } from '../balance/liquidTable';
import type { Aircraft } from '../document/types';

/** The liquid over the burn of an aircraft in one load state, as the engine's search takes it. */
export function burnOf(loaded: Aircraft, down: Vec3): Omit<LoadBurn, 'fixed'> {
  const plumbed = plumbingOf(loaded);
  const liquidAt = (fraction: number) =>
    liquidMoment(fraction, plumbed ? liquidStatesAt(plumbed, fraction, down) : []);
  if (!plumbed || !(plumbed.usableMl > 0)) return { liquidAt, burns: false, breaks: () => [1] };
  const fractionLeft = (drawnMl: number) => Math.min(1, Math.max(0, 1 - drawnMl / plumbed.usableMl));
  return {
    liquidAt,
    burns: true,
    breaks: () => feedBreaks(plumbed, down).map(fractionLeft),
    tanksMm: loaded.tanks.map(boundsOf),
  };
}
