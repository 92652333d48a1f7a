import { type Solid, solidOf } from '../../engine/fit/solid';
import { perObject } from '../../engine/memory/memory';
import type { Aircraft, BallastFreeZone } from '../document/types';
import { type FitProblem, partiesKey } from './fitProblem';
import { itemThing, statesOf } from './fitThings';
import { solidOverlap } from './overlaps';
import { partyOf } from './pairProblems';

/** Ballast that reaches into a zone kept free of it: all of it, or only that named. */
export const keptFreeProblems = (aircraft: Aircraft, ids: ReadonlySet<string> | null): FitProblem[] => {
  const zones = aircraft.ballastFree ?? [];
  if (zones.length === 0) return [];
  const ballast = aircraft.parts.filter(({ id, role }) => role === 'ballast' && (!ids || ids.has(id)));
  return ballast.flatMap((part) =>
    zones.flatMap((zone): FitProblem[] => {
      const thing = itemThing('part', part);
      const overlap = solidOverlap(thing.solid, zoneSolid(zone));
      const states = overlap && statesOf(aircraft, thing);
      if (!states) return [];
      return [
        {
          key: partiesKey('keptFree', [part.id, zone.id]),
          kind: 'keptFree',
          severity: 'caution',
          parties: [partyOf(thing), { id: zone.id, name: zone.name, what: 'zone', pieceId: zone.id }],
          byMm: overlap.depthMm,
          states,
          atMm: null,
          clearByMm: overlap.clearByMm,
          rule: null,
        },
      ];
    }),
  );
};

const zoneSolid = perObject(
  ({ positionMm, lengthMm, widthMm, heightMm }: BallastFreeZone): Solid =>
    solidOf({
      shape: { kind: 'box', lengthMm, widthMm, heightMm },
      pose: { positionMm, yawDeg: 0, pitchDeg: 0, rollDeg: 0 },
    }),
);
