import type { Vec3 } from '../engine/geometry/types';
import type { Aircraft } from '../model/document/types';
import { type LoadEnvelope, type LoadState, loadEnvelopeOf } from '../model/loads/loadStates';
import { loadStateName } from '../model/loads/stateName';

/** The load states at the ends of the range, each with its name in words. */
export interface LoadReport {
  /** Null where nothing weighs anything, or where the search failed. */
  readonly loadStates:
    | { readonly [end in keyof LoadEnvelope]: LoadEnvelope[end] & { readonly name: string } }
    | null;
  /** Why the load states are not known; null when they are. */
  readonly loadStatesNotChecked: string | null;
}

/** The extremes over every flying load state and all fuel, at one attitude; places in mm from the datum, masses in g. */
export function loadReport(aircraft: Aircraft, down: Vec3): LoadReport {
  try {
    const envelope = loadEnvelopeOf(aircraft, down);
    const named = <T extends LoadState>(state: T) => ({ name: loadStateName(aircraft, state), ...state });
    return {
      loadStates: envelope && {
        foremost: named(envelope.foremost),
        aftmost: named(envelope.aftmost),
        leftmost: named(envelope.leftmost),
        rightmost: named(envelope.rightmost),
        heaviest: named(envelope.heaviest),
        lightest: named(envelope.lightest),
      },
      loadStatesNotChecked: null,
    };
  } catch (error) {
    return { loadStates: null, loadStatesNotChecked: error instanceof Error ? error.message : String(error) };
  }
}
