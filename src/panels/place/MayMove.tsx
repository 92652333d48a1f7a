import type { Aircraft, Part } from '../../model/document/types';
import { defaultRule, type PlaceRule } from '../../model/place/placeSettings';
import { useCommitted } from '../../store/react';
import { RoleMark } from '../icons';
import type { Wishes } from './wishes';

interface MayMoveProps {
  readonly wishes: Wishes;
  readonly onChange: (wishes: Wishes) => void;
}

/** Each part with what it may do: stay, slide along the hull, or go to a bay. */
export function MayMove({ wishes, onChange }: MayMoveProps) {
  const aircraft = useCommitted((committed) => committed);
  const byMovable = [...aircraft.parts].sort(
    (a, b) => Number(stays(aircraft, a)) - Number(stays(aircraft, b)),
  );
  return (
    <ul className="may-move">
      {byMovable.map((part) => {
        const rule = wishes.rules[part.id] ?? defaultRule(aircraft, part);
        const turns = wishes.mayTurn.includes(part.id);
        return (
          <li key={part.id}>
            <label>
              <RoleMark of={part.role} />
              <span className="may-move-name">{part.name}</span>
              <select
                value={ruleKey(rule)}
                onChange={({ target }) =>
                  onChange({
                    ...wishes,
                    rules: { ...wishes.rules, [part.id]: ruleOf(aircraft, target.value) },
                  })
                }
              >
                <option value="stay">stays</option>
                <option value="rail">slides along</option>
                {(aircraft.bays ?? []).length > 1 && <option value="bays">any bay</option>}
                {aircraft.bays?.map(({ id, name }) => (
                  <option key={id} value={`bay ${id}`}>
                    {name}
                  </option>
                ))}
              </select>
            </label>
            {rule.by !== 'stay' && (
              <label className="may-turn">
                <input
                  type="checkbox"
                  checked={turns}
                  aria-label={`${part.name} may be turned`}
                  onChange={() =>
                    onChange({
                      ...wishes,
                      mayTurn: turns
                        ? wishes.mayTurn.filter((id) => id !== part.id)
                        : [...wishes.mayTurn, part.id],
                    })
                  }
                />
                turns
              </label>
            )}
          </li>
        );
      })}
    </ul>
  );
}

const stays = (aircraft: Aircraft, part: Part) => defaultRule(aircraft, part).by === 'stay';

function ruleKey(rule: PlaceRule): string {
  if (rule.by !== 'bays') return rule.by;
  return rule.bayIds.length === 1 ? `bay ${rule.bayIds[0]}` : 'bays';
}

function ruleOf(aircraft: Aircraft, key: string): PlaceRule {
  if (key === 'stay') return { by: 'stay' };
  if (key === 'rail') return { by: 'rail', stations: 'hull' };
  const all = (aircraft.bays ?? []).map(({ id }) => id);
  return { by: 'bays', bayIds: key === 'bays' ? all : all.filter((id) => `bay ${id}` === key) };
}
