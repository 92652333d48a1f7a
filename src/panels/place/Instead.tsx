import type { Part } from '../../model/document/types';
import { type Alternative, alternativesFor } from '../../model/place/variants';
import { useReadings } from '../readings';
import type { Wishes } from './wishes';

interface InsteadProps {
  readonly part: Part;
  readonly wishes: Wishes;
  readonly onChange: (wishes: Wishes) => void;
}

const keyOf = ({ shelfName, count }: Alternative) => `${count} ${shelfName}`;

/** What else may do a part's work: the search chooses between it and that. Only for packs and payload. */
export function Instead({ part, wishes, onChange }: InsteadProps) {
  const say = useReadings();
  if (part.role !== 'energy' && part.role !== 'payload') return null;
  const others = alternativesFor(part);
  const all: readonly Alternative[] = ([1, 2] as const).flatMap((count) =>
    others.map(({ name }) => ({ shelfName: name, count })),
  );
  const [chosen] = wishes.instead[part.id] ?? [];
  const choose = (key: string) => {
    const { [part.id]: _before, ...rest } = wishes.instead;
    const other = all.find((one) => keyOf(one) === key);
    onChange({ ...wishes, instead: other ? { ...rest, [part.id]: [other] } : rest });
  };
  return (
    <label className="may-instead">
      <span>or</span>
      <select
        aria-label={`${part.name} or`}
        value={chosen ? keyOf(chosen) : ''}
        onChange={({ target }) => choose(target.value)}
      >
        <option value="">nothing else</option>
        {all.map((one) => (
          <option key={keyOf(one)} value={keyOf(one)}>
            {one.count === 2 ? 'two ' : ''}
            {one.shelfName},{' '}
            {say.mass(one.count * (others.find(({ name }) => name === one.shelfName)?.massG ?? 0))}
          </option>
        ))}
      </select>
    </label>
  );
}
