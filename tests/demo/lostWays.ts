import type { Aircraft } from '../../src/model/document/types';
import { entryThroughAny } from '../../src/model/fit/entryThroughAny';

/** What had a way in and has none any more, by a search that knows nothing of the arrangement. */
export const lostWays = (before: Aircraft, after: Aircraft): string[] =>
  after.parts
    .filter(({ id }) => before.parts.some((part) => part.id === id))
    .filter(({ id }) => !entryThroughAny(after, id)?.found && entryThroughAny(before, id)?.found)
    .map(({ id }) => id);
