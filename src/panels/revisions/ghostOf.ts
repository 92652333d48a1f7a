import { balanceAt, LEVEL } from '../../model/balance/balance';
import type { Aircraft } from '../../model/document/types';
import type { Ghost, GhostItem } from '../../store/placeStore';

/** Where things of another state of the aircraft stand that stand elsewhere now, or are no longer there; its CG too. */
export function ghostOf(other: Aircraft, now: Aircraft): Ghost {
  const places = new Map(itemsOf(now).map((item) => [item.id, item]));
  const items = itemsOf(other).filter((item) => {
    const here = places.get(item.id);
    return !here || poseText(here) !== poseText(item);
  });
  const { cgMm, finite, travel } = balanceAt(other, { fuelFraction: 1, down: LEVEL });
  return { parts: items, cgMm: finite ? cgMm : null, travel: finite ? travel : [] };
}

const itemsOf = ({ parts, tanks }: Aircraft): readonly GhostItem[] => [
  ...parts,
  ...tanks.map((tank) => ({ ...tank, massG: tank.emptyMassG, role: 'fuel' as const })),
];

const poseText = ({ positionMm, yawDeg, pitchDeg, rollDeg, shape }: GhostItem): string =>
  JSON.stringify([positionMm, yawDeg, pitchDeg, rollDeg, shape]);
