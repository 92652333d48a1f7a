import type { Aircraft } from '../document/types';
import type { Fault, Path } from './fault';

/** A document as the cross checks see it: typed, with the word of the schema on which places to trust. */
export interface Checked {
  readonly aircraft: Aircraft;
  /** Whether the schema found nothing wrong at or below a path. */
  readonly sound: (...at: Path) => boolean;
  readonly tell: (at: Path, sentence: string, expected: string, received: string) => Fault;
}

/** The lists whose items carry ids. */
export const collections = ['structure', 'tanks', 'parts', 'referencePoints'] as const;

/** The items of a list that the schema trusts, with their places. */
export function soundItems<K extends (typeof collections)[number]>(
  { aircraft, sound }: Checked,
  key: K,
): readonly { readonly item: Aircraft[K][number]; readonly index: number }[] {
  const list: unknown = aircraft[key];
  if (!Array.isArray(list)) return [];
  return list.flatMap((item: Aircraft[K][number], index) => (sound(key, index) ? [{ item, index }] : []));
}
