import { useCallback, useSyncExternalStore } from 'react';
import type { Bench } from '../../store/bench';
import { useBench } from '../../store/react';
import { followFit } from '../following';
import { Icon } from '../icons';
import { useBenchValue } from '../Live';

/** The worst that is wrong with a thing, and how many more there are: "hit by Nose leg, wheels up, and 1 more". */
function wordsOf({ fit }: Bench, id: string): string {
  const [worst, ...others] = fit.problemsOf(id);
  if (!worst) return '';
  const words = fit.judge()?.shortWords(worst, id) ?? '';
  return others.length > 0 ? `${words}, and ${others.length} more` : words;
}

/** What does not fit of a thing, in the few words of its row; empty when it fits. */
export function useRowFit(id: string): string {
  const bench = useBench();
  const subscribe = useCallback((listener: () => void) => followFit(bench, id, listener), [bench, id]);
  return useSyncExternalStore(subscribe, () => wordsOf(bench, id));
}

/** In a row of the manifest, whatever is selected: what does not fit of it. */
export function RowFit({ id, words }: { readonly id: string; readonly words: string }) {
  const bad = useBenchValue(({ fit }) => fit.mark(id)?.severity === 'bad');
  return (
    <span className="row-fit" data-severity={bad ? 'bad' : 'caution'}>
      <Icon name={bad ? 'bad' : 'warn'} />
      {words}
    </span>
  );
}
