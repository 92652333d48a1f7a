import { propagate } from '../../engine/balance/uncertainty';
import { lastPerObject } from '../../engine/memory/memory';
import type { Refusal } from '../../engine/weigh/figure';
import { type CulpritRanking, rankCulprits } from '../../engine/weigh/rankCulprits';
import { type Reconciled, reconcile } from '../../engine/weigh/reconcile';
import { type UnaccountedFor, unaccountedFor } from '../../engine/weigh/unaccountedFor';
import { aircraftExtent } from '../airframe/extent';
import { shelf } from '../airframe/shelf';
import { USUAL } from '../balance/measurements';
import type { Aircraft, WeighIn } from '../document/types';
import { goesAlong } from './goesAlong';
import type { Weighed } from './measured';
import { type Thought, thoughtAt } from './thought';
import { weighedOf } from './weighed';

/** A weigh-in held against the list as it stands now. */
export interface HeldAgainst {
  readonly ok: true;
  readonly by: WeighIn['reading']['by'];
  readonly thought: Thought;
  readonly weighed: Weighed;
  readonly reconciled: Reconciled;
  /** Measured less thought, station, mm. */
  readonly stationOffMm: number;
  /** Null where the whole was not weighed. */
  readonly unaccounted: UnaccountedFor | null;
  /** What explains it, worked out when it is first asked for; null where it agrees. */
  readonly ranking: () => CulpritRanking | null;
}

/** The same answer again for the same aircraft and weigh-in. */
export const heldAgainst = (aircraft: Aircraft, weighIn: WeighIn): HeldAgainst | Refusal =>
  lastHeld(weighIn, aircraft);

const lastHeld = lastPerObject((weighIn: WeighIn, aircraft: Aircraft) => held(aircraft, weighIn));

function held(aircraft: Aircraft, weighIn: WeighIn): HeldAgainst | Refusal {
  const thought = thoughtAt(aircraft, weighIn);
  const before = propagate(thought.suspects);
  const cgMm = before?.mass.cgMm ?? [0, 0, 0];
  const height = { value: cgMm[2], sigma: before?.cgSigmaMm[2] ?? 0 };
  const weighed = weighedOf(aircraft, weighIn, thought, height);
  if (!weighed.ok) return weighed;
  const { measurement } = weighed;
  const { aboard } = measurement;
  const reconciled = reconcile(thought.suspects, [measurement], aboard && { ofWhole: aboard });
  if (!reconciled.ok) return reconciled;
  const { massG, cgMm: cg } = reconciled.before;
  let ranking: CulpritRanking | null | undefined;
  return {
    ok: true,
    by: weighIn.reading.by,
    thought,
    weighed,
    reconciled,
    stationOffMm: weighed.stationMm.value - cg[0].value,
    unaccounted: weighed.massG
      ? unaccountedFor(
          { massG, cgMm: [...cg] },
          { massG: weighed.massG, cgMm: [weighed.stationMm, weighed.buttlineMm, weighed.waterlineMm] },
        )
      : null,
    ranking: () => {
      if (ranking === undefined) {
        ranking = reconciled.agrees
          ? null
          : rankCulprits(
              thought.suspects,
              [measurement],
              aircraftExtent(aircraft),
              forgettable(),
              goesAlong(aircraft, thought),
            );
      }
      return ranking;
    },
  };
}

/** Shelf parts as things that may have been forgotten, by their place on the shelf. */
const forgettable = () =>
  shelf.map(({ massG }, at) => ({
    id: String(at),
    massG,
    sigmaG: Math.max(USUAL.scalesG, USUAL.typical * massG) / 2,
  }));
