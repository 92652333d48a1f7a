import { motorOf, motorsOf } from '../../model/begin/beginAircraft';
import { type Construction, constructions, type MotorKind } from '../../model/begin/proportions';
import { Pick } from '../fields/Pick';
import { useReadings } from '../readings';
import type { Sheet, SheetFaults } from './beginning';
import { Figure } from './Figure';

const built: Readonly<Record<Construction, string>> = {
  foam: 'Foam',
  balsa: 'Balsa and film',
  glass: 'Glass, moulded',
  carbon: 'Carbon, moulded',
};

const motorNames: Readonly<Record<MotorKind, string>> = { electric: 'Electric', petrol: 'Petrol engine' };

interface MakeFieldsProps {
  readonly sheet: Sheet;
  readonly faults: SheetFaults;
  /** What it weighs by proportions, ready to fly, g. */
  readonly assumedG: number;
  readonly onChange: (change: Partial<Sheet>) => void;
}

/** What it is built of, what drives it, and what the manual says that it weighs. */
export function MakeFields({ sheet, faults, assumedG, onChange }: MakeFieldsProps) {
  const say = useReadings();
  const offered = motorsOf(sheet.arrangement);
  return (
    <fieldset className="begin-group">
      <legend>Build and mass</legend>
      <div className="begin-figures">
        <Pick
          label="Built of"
          value={sheet.construction}
          options={constructions.map((value) => ({ value, label: built[value] }))}
          onPick={(construction) => onChange({ construction })}
        />
        {offered.length > 1 && (
          <Pick
            label="Driven by"
            value={motorOf(sheet)}
            options={offered.map((value) => ({ value, label: motorNames[value] }))}
            onPick={(motor) => onChange({ motor })}
          />
        )}
        <Figure
          label="Ready to fly"
          quantity="mass"
          value={sheet.massG}
          meanwhile={`about ${say.mass(assumedG)}`}
          onValue={(massG) => onChange({ massG })}
          fault={faults.massG}
        />
      </div>
    </fieldset>
  );
}
