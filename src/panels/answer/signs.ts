import type { Tone } from '../../model/words/verdict';
import type { IconName } from '../icons';

/** The answer as a sign and in one word. */
export const signs: Readonly<Record<Tone, { readonly icon: IconName; readonly word: string }>> = {
  good: { icon: 'tick', word: 'Good' },
  caution: { icon: 'warn', word: 'Caution' },
  bad: { icon: 'bad', word: 'Not good' },
  danger: { icon: 'bad', word: 'Danger' },
  unknown: { icon: 'question', word: 'Not known' },
};
