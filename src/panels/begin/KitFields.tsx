import { containsWords, familyNames } from '../../model/begin/finishedKit';
import { families } from '../../model/begin/thing';
import { Refusal } from '../fields/EditButton';
import { firstKit, type Sheet, type SheetFaults } from './beginning';
import { Figure } from './Figure';
import { Opened } from './Opened';

interface KitFieldsProps {
  readonly sheet: Sheet;
  readonly faults: SheetFaults;
  /** A distance along the body is being typed, or no longer. */
  readonly onLook: (field: 'balancesMm' | null) => void;
  readonly onChange: (change: Partial<Sheet>) => void;
}

/** The airframe is finished: what the scales said, where it balances, and what was on the scales with it. */
export function KitFields({ sheet, faults, onLook, onChange }: KitFieldsProps) {
  const { kit } = sheet;
  const set = (change: Partial<NonNullable<Sheet['kit']>>) => kit && onChange({ kit: { ...kit, ...change } });
  return (
    <Opened
      legend="The airframe on the scales"
      label="The airframe is finished and weighed"
      open={kit !== null}
      onOpen={(open) => onChange({ kit: open ? firstKit : null })}
    >
      {kit && (
        <>
          <div className="begin-figures">
            <Figure
              label="It weighs"
              quantity="mass"
              value={kit.massG}
              meanwhile="on the scales"
              onValue={(massG) => set({ massG })}
            />
            <Figure
              label="Balances at"
              quantity="length"
              value={kit.balancesMm}
              meanwhile="behind the nose"
              onValue={(balancesMm) => set({ balancesMm })}
              onLook={(on) => onLook(on ? 'balancesMm' : null)}
            />
          </div>
          <div className="begin-ticks">
            <span>In it already</span>
            {families.map((family) => (
              <label key={family} className="tick">
                <input
                  type="checkbox"
                  checked={kit.contains.includes(family)}
                  onChange={(event) =>
                    set({
                      contains: families.filter((each) =>
                        each === family ? event.target.checked : kit.contains.includes(each),
                      ),
                    })
                  }
                />
                {familyNames[family]}
              </label>
            ))}
          </div>
          <p className="hint">
            The figure contains {containsWords(kit.contains)}; none of it is listed again.
            {kit.balancesMm === null && ' Where it balances is then estimated, with a large ±.'}
          </p>
          <Refusal fault={faults.kit ?? null} />
        </>
      )}
    </Opened>
  );
}
