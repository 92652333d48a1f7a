import type { Item } from '../../model/document/edit';
import type { Aircraft, Part } from '../../model/document/types';
import { defaultRule, type PlaceRule } from '../../model/place/placeSettings';
import { useCommitted } from '../../store/react';
import { useEdit } from '../fields/useEdit';
import { RoleMark } from '../icons';
import { Instead } from './Instead';
import type { Wishes } from './wishes';

interface MayMoveProps {
  readonly wishes: Wishes;
  readonly onChange: (wishes: Wishes) => void;
}

/** Each part and tank with what it may do: stay, slide in the hull, or go to a bay; what moves by itself first. */
export function MayMove({ wishes, onChange }: MayMoveProps) {
  const aircraft = useCommitted((committed) => committed);
  const items: readonly Item[] = [...aircraft.parts, ...aircraft.tanks];
  const byMovable = [...items].sort((a, b) => Number(stays(aircraft, a)) - Number(stays(aircraft, b)));
  return (
    <ul className="may-move">
      {byMovable.map((item) => (
        <MayMoveRow key={item.id} aircraft={aircraft} item={item} wishes={wishes} onChange={onChange} />
      ))}
    </ul>
  );
}

interface RowProps extends MayMoveProps {
  readonly aircraft: Aircraft;
  readonly item: Item;
}

function MayMoveRow({ aircraft, item, wishes, onChange }: RowProps) {
  const rule = wishes.rules[item.id] ?? defaultRule(aircraft, item);
  if (item.twinId !== undefined) {
    return (
      <li>
        <span className="may-move-name">{item.name}</span>
        <span className="hint">
          stays: the search would part a mirrored pair; move it by hand, or break it first
        </span>
      </li>
    );
  }
  return (
    <li>
      <label className="may-where">
        <RoleMark of={'role' in item ? item.role : 'fuel'} />
        <span className="may-move-name">{item.name}</span>
        <select
          value={ruleKey(rule)}
          onChange={({ target }) =>
            onChange({ ...wishes, rules: { ...wishes.rules, [item.id]: ruleOf(aircraft, target.value) } })
          }
        >
          <option value="stay">stays</option>
          <option value="rail">slides in the hull</option>
          {(aircraft.bays ?? []).length > 1 && <option value="bays">any bay</option>}
          {aircraft.bays?.map(({ id, name }) => (
            <option key={id} value={`bay ${id}`}>
              {name}
            </option>
          ))}
        </select>
      </label>
      {'role' in item && (
        <div className="may-more">
          {rule.by !== 'stay' && <MayTurn part={item} />}
          <Instead part={item} wishes={wishes} onChange={onChange} />
        </div>
      )}
    </li>
  );
}

const turnings = [
  { value: '', label: 'as it stands' },
  { value: 'flat', label: 'turned' },
  { value: 'any', label: 'any side down' },
] as const;

/** How a part may be turned: the part itself says so, in the file. */
function MayTurn({ part }: { readonly part: Part }) {
  const commit = useEdit();
  const say = (value: string) =>
    commit(`Change how ${part.name} may be turned`, (aircraft) => withTurning(aircraft, part.id, value));
  return (
    <select
      aria-label={`How ${part.name} may be turned`}
      value={part.mayTurn ?? ''}
      onChange={({ target }) => say(target.value)}
    >
      {turnings.map(({ value, label }) => (
        <option key={value} value={value}>
          {label}
        </option>
      ))}
    </select>
  );
}

function withTurning(aircraft: Aircraft, id: string, value: string): Aircraft {
  const { mayTurn: _before, ...rest } = aircraft.parts.find((part) => part.id === id)!;
  const changed: Part = value === 'flat' || value === 'any' ? { ...rest, mayTurn: value } : rest;
  return { ...aircraft, parts: aircraft.parts.map((part) => (part.id === id ? changed : part)) };
}

const stays = (aircraft: Aircraft, item: Item) => defaultRule(aircraft, item).by === 'stay';

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
