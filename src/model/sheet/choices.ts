import type { BalancingChoice } from './balancing';
import type { SectionId } from './blocks';
import type { PaperId } from './paper';

/** What a person chose about the sheet. */
export interface SheetChoices {
  readonly paper: PaperId;
  /** Sections that are not printed. */
  readonly leftOut: readonly SectionId[];
  /** Who made it, for the title block. */
  readonly by: string;
  /** How the aircraft will be balanced; goes with the aircraft. */
  readonly balancing: BalancingChoice;
  /** Where the wing is marked, mm from the centre line; null for just beside the hull; goes with the aircraft. */
  readonly buttlineMm: number | null;
}

/** What goes with the aircraft, before anything is chosen. */
export const FIRST_OF_AIRCRAFT = {
  balancing: { fuel: null, positions: {} },
  buttlineMm: null,
} as const satisfies Partial<SheetChoices>;

export const FIRST_CHOICES: SheetChoices = { paper: 'a4', leftOut: [], by: '', ...FIRST_OF_AIRCRAFT };
