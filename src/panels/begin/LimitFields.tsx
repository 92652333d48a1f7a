import { motorOf } from '../../model/begin/beginAircraft';
import type { Aircraft } from '../../model/document/types';
import { Refusal } from '../fields/EditButton';
import { Pick } from '../fields/Pick';
import { firstBand, type Sheet, type SheetFaults } from './beginning';
import { Figure } from './Figure';
import { Opened } from './Opened';

/** Load states that manuals state limits for. */
const states = [
  { value: 'all', label: 'The whole flight' },
  { value: '0', label: 'Tank empty' },
  { value: '100', label: 'Tank full' },
] as const;

interface LimitFieldsProps {
  readonly sheet: Sheet;
  readonly points: Aircraft['referencePoints'];
  readonly faults: SheetFaults;
  /** A distance along the body is being typed, or no longer. */
  readonly onLook: (field: 'forwardMm' | 'aftMm' | null) => void;
  readonly onChange: (change: Partial<Sheet>) => void;
}

/** The CG limits as the manual prints them: "105 to 115 mm behind the wing's leading edge, tank empty". */
export function LimitFields({ sheet, points, faults, onLook, onChange }: LimitFieldsProps) {
  const { band } = sheet;
  const set = (change: Partial<NonNullable<Sheet['band']>>) =>
    band && onChange({ band: { ...band, ...change } });
  return (
    <Opened
      legend="The manual’s CG limits"
      label="The manual gives CG limits"
      open={band !== null}
      onOpen={(open) => onChange({ band: open ? firstBand : null })}
    >
      {band ? (
        <>
          <div className="begin-figures">
            <Figure
              label="From"
              quantity="length"
              value={band.forwardMm}
              meanwhile="forward limit"
              onValue={(forwardMm) => set({ forwardMm })}
              onLook={(on) => onLook(on ? 'forwardMm' : null)}
            />
            <Figure
              label="To"
              quantity="length"
              value={band.aftMm}
              meanwhile="aft limit"
              onValue={(aftMm) => set({ aftMm })}
              onLook={(on) => onLook(on ? 'aftMm' : null)}
            />
            <Pick
              label="Behind"
              value={band.fromId}
              options={points.map(({ id, name }) => ({ value: id, label: name }))}
              onPick={(fromId) => set({ fromId })}
            />
            {motorOf(sheet) === 'petrol' && (
              <Pick
                label="Stated for"
                value={band.fuelPct === null ? 'all' : band.fuelPct === 0 ? '0' : '100'}
                options={states}
                onPick={(state) => set({ fuelPct: state === 'all' ? null : Number(state) })}
              />
            )}
          </div>
          <Refusal fault={faults.band ?? null} />
        </>
      ) : (
        <p className="hint">Without them an estimate of the neutral point makes the band.</p>
      )}
    </Opened>
  );
}
