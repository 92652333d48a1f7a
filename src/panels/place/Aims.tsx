import type { ArrangeAnswer } from '../../engine/place/searchState';
import { Icon } from '../icons';
import { useReadings } from '../readings';

/** The aims in their order, each with what is proved of it by itself and how far it may be off. */
export function Aims({ answer }: { readonly answer: ArrangeAnswer }) {
  const say = useReadings();
  const { best, boundG, proved, marginProved, movesProved, marginBoundMm, keptMarginMm } = answer;
  if (!best) return null;
  const aims = [
    {
      is: proved,
      words: proved ? 'Least ballast: proved' : `Least ballast: not proved, ${say.mass(boundG)} might do`,
    },
    {
      is: marginProved,
      words: marginProved
        ? 'Largest margin with it: proved'
        : `Largest margin with it: not proved${
            marginBoundMm !== null && proved ? `, up to ${say.lengthFine(marginBoundMm)} might be had` : ''
          }`,
    },
    {
      is: movesProved,
      words: `Fewest moves for that: ${movesProved ? 'proved' : 'not proved'}`,
    },
  ];
  return (
    <>
      <ul className="aims">
        {aims.map(({ is, words }) => (
          <li key={words} data-proved={is}>
            <Icon name={is ? 'tick' : 'question'} />
            {words}
          </li>
        ))}
      </ul>
      {keptMarginMm > 0 && (
        <p className="hint">
          The {say.lengthFine(keptMarginMm)} asked for inside the limits are kept throughout.
        </p>
      )}
    </>
  );
}
