import { COMMON_MARGINS, type MarginRange } from '../../engine/wing/margin';
import type { Aircraft } from '../document/types';

export type MarginKind = keyof typeof COMMON_MARGINS;

/** The kind of aircraft whose usual margin is offered: the one chosen, or else a guess. */
export function marginKind(aircraft: Aircraft): MarginKind {
  return aircraft.stability?.kind ?? likelyMarginKind(aircraft);
}

/** The static margins that are usual for an aircraft of this kind, % MAC: common practice, no source. */
export function usualMargins(aircraft: Aircraft): MarginRange {
  return COMMON_MARGINS[marginKind(aircraft)];
}

/**
 * A guess at the kind from layout and engine, to be offered only. Layout goes first: a canard with a turbine
 * is a canard. A trainer, an aerobatic or a scale aircraft cannot be told from its shape and must be chosen.
 */
export function likelyMarginKind({ kind, structure }: Aircraft): MarginKind {
  const roles = new Set(structure.map((element) => (element.kind === 'surface' ? element.role : null)));
  if (roles.has('canard')) return 'canard';
  if (kind === 'turbine') return 'jet';
  if (roles.has('wing') && !roles.has('tailplane') && !roles.has('v-tail')) return 'flyingWing';
  return kind === 'glider' ? 'glider' : 'sport';
}
