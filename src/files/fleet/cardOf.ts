import { balanceAt, LEVEL } from '../../model/balance/balance';
import type { Aircraft } from '../../model/document/types';
import { textDigest } from '../../model/history/textDigest';
import { seenFromAbove } from '../../model/weigh/seenFromAbove';
import type { FleetCard } from '../../store/fleetStore';

/** What a card says of an aircraft by itself; the judgement comes from the bench. */
export function cardOf(
  fleetId: string,
  aircraft: Aircraft,
  text: string,
  { tone, changedAtMs }: Pick<FleetCard, 'tone' | 'changedAtMs'>,
): FleetCard {
  const { massG, finite } = balanceAt(aircraft, { fuelFraction: 1, down: LEVEL });
  return {
    id: fleetId,
    name: aircraft.name,
    massG: finite && massG > 0 ? massG : null,
    tone,
    picture: seenFromAbove(aircraft).map((outline) => ({
      ...outline,
      corners: outline.corners.map(([x, y]) => [Math.round(x), Math.round(y)] as const),
    })),
    digest: textDigest(text),
    changedAtMs,
    deletedAtMs: null,
  };
}
