import type fc from 'fast-check';

/** A case that chance once found red: kept for good, run before any new ones, with what it brought to light. */
export interface FoundCase<T> {
  readonly story: string;
  readonly values: T;
}

/** For a property's `examples`: fast-check takes these first. */
export const foundFirst = <T extends unknown[]>(cases: readonly FoundCase<T>[]): fc.Parameters<T> => ({
  examples: cases.map(({ values }) => values),
});
