import { useId } from 'react';
import { flyingStart } from '../../model/airframe/flyingStates';
import { inLoadState, positionOf, switchesOf } from '../../model/airframe/loadSwitches';
import { fuelChoices, fuelChoiceWords, fuelChosen } from '../../model/sheet/balancing';
import { useBench, useCommitted, useView } from '../../store/react';
import { chooseSheet } from '../../store/viewStore';
import { Term } from '../Term';

/** The state that the aircraft will be balanced in: how full, and what is aboard. */
export function BalancedAs() {
  const { view } = useBench();
  const aircraft = useCommitted((committed) => committed);
  const balancing = useView(({ sheet }) => sheet.balancing);
  const positions = { ...flyingStart(aircraft), ...balancing.positions };
  const loaded = inLoadState(aircraft, positions);
  const fuels = fuelChoices(loaded);
  const switches = switchesOf(aircraft);
  if (fuels.length === 0 && switches.length === 0) return null;
  return (
    <fieldset className="sheet-state">
      <legend>
        <Term of="load-state">Balanced with</Term>
      </legend>
      {fuels.length > 0 && (
        <Select
          label="Tanks"
          value={fuelChosen(loaded, balancing)}
          options={fuels.map((id) => ({ id, name: fuelChoiceWords(aircraft, id) }))}
          onChoose={(id) => {
            const chosen = fuels.find((each) => each === id);
            if (chosen) chooseSheet(view, { balancing: { ...balancing, fuel: chosen } });
          }}
        />
      )}
      {switches.map((each) => (
        <Select
          key={each.id}
          label={each.name}
          value={positionOf(each, positions).id}
          options={each.positions}
          onChoose={(id) =>
            chooseSheet(view, {
              balancing: { ...balancing, positions: { ...balancing.positions, [each.id]: id } },
            })
          }
        />
      ))}
    </fieldset>
  );
}

interface SelectProps {
  readonly label: string;
  readonly value: string;
  readonly options: readonly { readonly id: string; readonly name: string }[];
  readonly onChoose: (id: string) => void;
}

function Select({ label, value, options, onChoose }: SelectProps) {
  const id = useId();
  return (
    <div className="sheet-field">
      <label htmlFor={id}>{label}</label>
      <select id={id} value={value} onChange={({ target }) => onChoose(target.value)}>
        {options.map((option) => (
          <option key={option.id} value={option.id}>
            {option.name}
          </option>
        ))}
      </select>
    </div>
  );
}
