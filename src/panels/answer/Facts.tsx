import { useSyncExternalStore } from 'react';
import type { Fact } from '../../model/words/verdict';
import { useBench } from '../../store/react';
import { useReadings } from '../readings';
import { answerOf } from './answerOf';
import { FactButton } from './FactButton';

/** The figures behind the headline, in one row; each opens what it is made of. */
export function Facts() {
  const bench = useBench();
  const say = useReadings();
  const count = useSyncExternalStore(bench.verdict.subscribe, () => answerOf(bench, say).facts.length);
  return (
    <ul className="facts" aria-label="Facts">
      {Array.from({ length: count }, (_, at) => (
        // A fact keeps its place in the row; what stands there may change.
        // biome-ignore lint/suspicious/noArrayIndexKey: the place is the identity
        <FactAt key={at} at={at} />
      ))}
    </ul>
  );
}

function FactAt({ at }: { readonly at: number }) {
  const bench = useBench();
  const say = useReadings();
  const read = (part: keyof Fact) => () => answerOf(bench, say).facts[at]?.[part] ?? '';
  const key = useSyncExternalStore(bench.verdict.subscribe, read('key'));
  const label = useSyncExternalStore(bench.verdict.subscribe, read('label'));
  const value = useSyncExternalStore(bench.verdict.subscribe, read('value'));
  const note = useSyncExternalStore(bench.verdict.subscribe, read('note'));
  const tone = useSyncExternalStore(bench.verdict.subscribe, read('tone'));
  if (!key) return null;
  return (
    <li data-fact={key}>
      <FactButton fact={{ key, label, value, note, tone } as Fact} />
    </li>
  );
}
