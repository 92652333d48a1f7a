import type { Bench } from '../../store/bench';
import { Icon } from '../icons';
import { useBenchValue } from '../Live';

/** The worst that is wrong with a thing, and how many more there are: "hit by Nose leg, wheels up, and 1 more". */
function wordsOf({ fit }: Bench, id: string): string {
  const [worst, ...others] = fit.problemsOf(id);
  if (!worst) return '';
  const words = fit.judge()?.shortWords(worst, id) ?? '';
  return others.length > 0 ? `${words}, and ${others.length} more` : words;
}

/** In a row of the manifest, whatever is selected: what does not fit of it. Nothing when it fits. */
export function RowFit({ id }: { readonly id: string }) {
  const words = useBenchValue((bench) => wordsOf(bench, id));
  return words === '' ? null : <Words id={id} words={words} />;
}

function Words({ id, words }: { readonly id: string; readonly words: string }) {
  const bad = useBenchValue(({ fit }) => fit.mark(id)?.severity === 'bad');
  return (
    <span className="row-fit" data-severity={bad ? 'bad' : 'caution'}>
      <Icon name={bad ? 'bad' : 'warn'} />
      {words}
    </span>
  );
}
