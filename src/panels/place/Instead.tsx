import { useMemo } from 'react';
import type { Part } from '../../model/document/types';
import { type Alternative, alternativesFor, otherPacks } from '../../model/place/variants';
import { useCommitted } from '../../store/react';
import { useReadings } from '../readings';
import type { Wishes } from './wishes';

interface InsteadProps {
  readonly part: Part;
  readonly wishes: Wishes;
  readonly onChange: (wishes: Wishes) => void;
}

/** One line of the choice: what may do the part's work, the search choosing where there are several. */
interface Line {
  readonly words: string;
  readonly alternatives: readonly Alternative[];
}

/** What else may do a part's work: the search chooses between it and that. Only for packs and payload. */
export function Instead({ part, wishes, onChange }: InsteadProps) {
  const lines = useLines(part);
  if (part.role !== 'energy' && part.role !== 'payload' && !part.power?.pack) return null;
  const chosen = wishes.instead[part.id];
  const choose = (words: string) => {
    const { [part.id]: _before, ...rest } = wishes.instead;
    const line = lines.find((other) => other.words === words);
    onChange({ ...wishes, instead: line ? { ...rest, [part.id]: line.alternatives } : rest });
  };
  return (
    <label className="may-instead">
      <span>or</span>
      <select
        aria-label={`${part.name} or`}
        value={lines.find(({ alternatives }) => isSame(alternatives, chosen))?.words ?? ''}
        onChange={({ target }) => choose(target.value)}
      >
        <option value="">nothing else</option>
        {lines.map(({ words }) => (
          <option key={words}>{words}</option>
        ))}
      </select>
    </label>
  );
}

const isSame = (a: readonly Alternative[], b: readonly Alternative[] | undefined) =>
  JSON.stringify(a) === JSON.stringify(b);

function useLines(part: Part): readonly Line[] {
  const say = useReadings();
  const aircraft = useCommitted((committed) => committed);
  const packs = useMemo(() => otherPacks(aircraft, part), [aircraft, part]);
  const [smallest, largest] = [packs[0], packs.at(-1)];
  const any: readonly Line[] =
    smallest && largest && packs.length > 1
      ? [
          {
            words: `${smallest.capacityMah} to ${largest.capacityMah} mAh, whichever needs least ballast`,
            alternatives: packs.map(({ capacityMah }) => ({ capacityMah })),
          },
        ]
      : [];
  return [
    ...any,
    ...packs.map(({ capacityMah, massG }) => ({
      words: `${capacityMah} mAh, about ${say.mass(massG)}`,
      alternatives: [{ capacityMah }],
    })),
    ...([1, 2] as const).flatMap((count) =>
      alternativesFor(part).map(({ name: shelfName, massG }) => ({
        words: `${count === 2 ? 'two ' : ''}${shelfName}, ${say.mass(count * massG)}`,
        alternatives: [{ shelfName, count }],
      })),
    ),
  ];
}
