import type { FactKey } from '../../model/words/verdict';
import { useView } from '../../store/react';
import { useBenchList } from '../Live';
import { useReadings } from '../readings';
import { answerOf } from './answerOf';
import { FactButton } from './FactButton';

/** Facts that are stations, read from the reference point. */
const stations: readonly FactKey[] = ['cg-full', 'cg-dry', 'band'];

/** The figures behind the headline, in one row; each opens what it is made of. */
export function Facts() {
  const say = useReadings();
  const facts = useBenchList((bench) => answerOf(bench, say).facts);
  const elsewhere = useView((view) => view.measureFromId !== null);
  const noteOf = (key: FactKey, note: string) =>
    elsewhere && stations.includes(key) ? [note, `from ${say.from}`].filter(Boolean).join(', ') : note;
  return (
    <ul className="facts" aria-label="Facts">
      {facts.map(({ key, note, ...fact }) => (
        <li key={key} data-fact={key}>
          <FactButton of={key} note={noteOf(key, note)} {...fact} />
        </li>
      ))}
    </ul>
  );
}
