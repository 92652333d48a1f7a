import { FORMAT, VERSION } from './schema/aircraft';
import type { Aircraft } from './types';

/** An empty bench: no airframe, nothing aboard, the datum at the tip of the nose. */
export function blankAircraft(): Aircraft {
  return {
    format: FORMAT,
    version: VERSION,
    name: 'New aircraft',
    kind: 'electric',
    notes: '',
    datum: 'Tip of the nose',
    referencePoints: [{ id: 'nose', name: 'Tip of the nose', positionMm: [0, 0, 0] }],
    targetBand: null,
    lateralToleranceMm: 3,
    structure: [],
    bareAirframe: null,
    fuel: null,
    tanks: [],
    parts: [],
    gridMm: 5,
  };
}
