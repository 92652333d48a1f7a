import { sayIn } from '../../../src/commands/say';
import { balanceAt, LEVEL } from '../../../src/model/balance/balance';
import type { Aircraft } from '../../../src/model/document/types';
import { judge } from '../../../src/model/judgement/judge';
import type { Judgement } from '../../../src/model/judgement/types';
import { FIRST_CHOICES } from '../../../src/model/sheet/choices';
import { papers } from '../../../src/model/sheet/paper';
import type { SheetInput } from '../../../src/model/sheet/sheet';
import type { UnitSystem } from '../../../src/model/units';

interface SheetWish {
  readonly units?: UnitSystem;
  /** The reference point by its place in the list; the datum when left out. */
  readonly from?: number;
  readonly judgement?: Judgement;
  readonly more?: Partial<SheetInput>;
}

/** The judgement of an aircraft whose fit was looked at and found good. */
const fitting = (aircraft: Aircraft): Judgement =>
  judge(aircraft, { down: LEVEL, estimate: null, loads: { status: 'unfinished' }, fit: [], certainty: null });

/** What a sheet of an aircraft is made from, as the bench would hand it over; without an estimate of the neutral point. */
export function inputOf(
  aircraft: Aircraft,
  { units = 'metric', from, judgement, more }: SheetWish = {},
): SheetInput {
  const shown = balanceAt(aircraft, { fuelFraction: 1, down: LEVEL, estimate: null });
  const reference = from === undefined ? null : (aircraft.referencePoints[from] ?? null);
  return {
    aircraft,
    shown,
    judgement: judgement ?? fitting(aircraft),
    down: LEVEL,
    held: null,
    revision: null,
    mass: { massG: shown.massG, plusMinusG: null },
    say: sayIn(units, reference),
    from: reference ? `the ${reference.name}` : 'the datum',
    search: { state: 'none' },
    paper: papers.a4,
    choice: FIRST_CHOICES.balancing,
    buttlineMm: null,
    leftOut: [],
    ...more,
  };
}
