import { arrangementOf } from '../../model/begin/arrangements';
import { motorOf } from '../../model/begin/beginAircraft';
import { type Tape, type TapeField, tapeFields } from '../../model/begin/tape';
import type { WordId } from '../../model/glossary/glossary';
import { useReadings } from '../readings';
import type { Sheet, SheetFaults } from './beginning';
import { Figure } from './Figure';
import { howMeasured } from './howMeasured';

/** What each figure of the tape is called, of an arrangement. */
export function fieldNames(arrangement: Sheet['arrangement']): Readonly<Record<TapeField, string>> {
  const { tail } = arrangementOf(arrangement);
  const surface = tail === 'none' ? 'Foreplane' : 'Tail';
  return {
    spanMm: 'Span',
    rootChordMm: 'Root chord',
    tipChordMm: 'Tip chord',
    sweepMm: 'Tip behind root',
    lengthMm: 'Length',
    wingAtMm: 'Nose to wing',
    tailSpanMm: `${surface} span`,
    tailChordMm: `${surface} chord`,
  };
}

/** Those whose name is a word of the trade. */
const fieldWords: Readonly<Partial<Record<TapeField, WordId>>> = {
  rootChordMm: 'chord',
  tipChordMm: 'chord',
  sweepMm: 'sweep',
};

interface TapeFieldsProps {
  readonly sheet: Sheet;
  readonly tape: Tape;
  readonly faults: SheetFaults;
  readonly looking: TapeField | null;
  readonly onLook: (field: TapeField | null) => void;
  readonly onChange: (change: Partial<Sheet>) => void;
}

/** The few figures that a tape reaches. An empty one gets the proportion that stands in it. */
export function TapeFields({ sheet, tape, faults, looking, onLook, onChange }: TapeFieldsProps) {
  const say = useReadings();
  const { arrangement, typed } = sheet;
  const names = fieldNames(arrangement);
  const set = (field: TapeField, value: number | null) => {
    const { [field]: _before, ...rest } = typed;
    onChange({ typed: value === null ? rest : { ...rest, [field]: value } });
  };
  return (
    <fieldset className="begin-group" data-motor={motorOf(sheet)}>
      <legend>From the tape</legend>
      <p className="hint">
        {looking ? howMeasured[looking] : 'Type what you can measure; the rest keeps the proportion shown.'}
      </p>
      <div className="begin-figures">
        {tapeFields(arrangement).map((field) => (
          <Figure
            key={field}
            label={names[field]}
            term={fieldWords[field]}
            quantity="length"
            value={typed[field] ?? null}
            meanwhile={`about ${say.length(tape[field])}`}
            onValue={(value) => set(field, value)}
            onLook={(on) => onLook(on ? field : null)}
            fault={faults[field]}
          />
        ))}
      </div>
    </fieldset>
  );
}
