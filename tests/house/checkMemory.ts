import { readSource } from './sourceFacts';

/** The one home of what is worked out once. */
export const memoryHome = 'src/engine/memory/memory.ts';

/** Files whose top-level variables are no answers kept, and what they are. */
export const lastingVariables: Readonly<Record<string, string>> = {
  'src/engine/fit/simplex.ts': 'room for sums in the innermost loop of the fit',
  'src/scene/materials/palette.ts': 'colours of the page, read again when the theme changes',
  'src/scene/marks/wordWidth.ts': 'a canvas to measure words with',
  'src/store/piece.ts': 'the one question on its way to the net',
  'src/workers/place.worker.ts': 'the solver, which is loaded once',
};

/** Where sources keep answers in a way of their own. */
export const ownMemories = (sources: ReadonlyMap<string, string>): string[] =>
  [...sources].flatMap(([path, text]) => {
    if (path === memoryHome || !/^src\/(?!commands\/).*\.tsx?$/.test(path)) return [];
    const { globals, code } = readSource(path, text);
    const found: string[] = [];
    if (globals.has('WeakMap')) found.push(`${path}: a WeakMap; ${memoryHome} has what remembers`);
    if (/^(export )?(let|var)\b/m.test(code) && !(path in lastingVariables))
      found.push(`${path}: a variable at the top of a file; ${memoryHome} has what remembers`);
    return found;
  });
