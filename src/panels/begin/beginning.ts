import type { ArrangementId } from '../../model/begin/arrangements';
import { type Beginning, beginAircraft, motorOf, roomFault } from '../../model/begin/beginAircraft';
import type { Kit } from '../../model/begin/finishedKit';
import { type ManualBand, manualBandFault } from '../../model/begin/manualBand';
import type { Construction, MotorKind } from '../../model/begin/proportions';
import { type TapeField, type TypedTape, tapeFaults, wholeTape } from '../../model/begin/tape';
import type { Aircraft } from '../../model/document/types';
import { readAircraft } from '../../model/reading/read';

/** What stands on the sheet of a new aircraft while it is being filled in. */
export interface Sheet {
  readonly arrangement: ArrangementId;
  readonly typed: TypedTape;
  readonly construction: Construction;
  readonly motor: MotorKind;
  readonly massG: number | null;
  /** Open while the airframe is said to be finished. */
  readonly kit: (Omit<Kit, 'massG'> & { readonly massG: number | null }) | null;
  /** Open while the manual is said to give limits. */
  readonly band:
    | (Omit<ManualBand, 'forwardMm' | 'aftMm'> & {
        readonly forwardMm: number | null;
        readonly aftMm: number | null;
      })
    | null;
}

export const firstSheet: Sheet = {
  arrangement: 'high-wing',
  typed: {},
  construction: 'balsa',
  motor: 'electric',
  massG: null,
  kit: null,
  band: null,
};

export const firstKit: NonNullable<Sheet['kit']> = { massG: null, balancesMm: null, contains: ['servos'] };
export const firstBand: NonNullable<Sheet['band']> = {
  fromId: 'wing-root-le',
  forwardMm: null,
  aftMm: null,
  fuelPct: null,
};

/** The aircraft that the sheet asks for. What is open but not filled in yet asks for nothing. */
export function beginningOf({ kit, band, ...sheet }: Sheet): Beginning {
  const kitG = kit?.massG ?? null;
  const [forwardMm, aftMm] = [band?.forwardMm ?? null, band?.aftMm ?? null];
  const given = band && forwardMm !== null && aftMm !== null && forwardMm < aftMm;
  return {
    ...sheet,
    kit: kit && kitG !== null && kitG > 0 ? { ...kit, massG: kitG } : null,
    band: given ? { ...band, forwardMm, aftMm } : null,
  };
}

export type SheetFaults = Partial<Record<TapeField | 'massG' | 'kit' | 'band', string>>;

/** All that keeps the sheet from being an aircraft, by field. */
export function sheetFaults(sheet: Sheet): SheetFaults {
  const { arrangement, typed, massG, kit, band } = sheet;
  const faults: SheetFaults = tapeFaults(arrangement, typed, motorOf(sheet));
  const kitG = kit?.massG ?? null;
  if (massG !== null && massG <= 0) faults.massG = 'Expected more than nothing.';
  if (kit && kitG === null) faults.kit = 'Type what the scales said, or take the tick away.';
  else if (kitG !== null && kitG <= 0) faults.kit = 'Expected more than nothing.';
  const lengthMm = wholeTape(arrangement, typed, motorOf(sheet)).lengthMm;
  if (kit?.balancesMm != null && (kit.balancesMm < 0 || kit.balancesMm > lengthMm)) {
    faults.kit ??= 'It balances somewhere along the body: expected less than the length, from the nose.';
  }
  if (kitG !== null && massG !== null && massG <= kitG) {
    faults.massG = 'Expected more than the airframe alone weighs.';
  }
  if (band && (band.forwardMm === null || band.aftMm === null)) {
    faults.band = 'Type both limits, or take the tick away.';
  } else if (band?.forwardMm != null && band.aftMm != null) {
    const fault = manualBandFault({ forwardMm: band.forwardMm, aftMm: band.aftMm });
    if (fault) faults.band = fault;
  }
  return faults;
}

/** The aircraft that the sheet makes, or a sentence that says why it makes none. */
export function madeAircraft(sheet: Sheet): Aircraft | string {
  const [first] = Object.values(sheetFaults(sheet));
  if (first) return `Not put on the bench yet: ${first}`;
  const beginning = beginningOf(sheet);
  const short = roomFault(beginning);
  if (short) return `Not put on the bench yet: ${short}`;
  const read = readAircraft(beginAircraft(beginning));
  return read.ok ? read.aircraft : `These figures make no aircraft: ${read.faults[0]?.sentence ?? ''}`;
}
