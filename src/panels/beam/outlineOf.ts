/** Whether a figure lies along x or y, is a length, or is left as it is; for each command in its order. */
const figureKinds: Readonly<Record<string, readonly ('x' | 'y' | 'length' | 'kept')[]>> = {
  M: ['x', 'y'],
  L: ['x', 'y'],
  H: ['x'],
  V: ['y'],
  C: ['x', 'y', 'x', 'y', 'x', 'y'],
  A: ['length', 'length', 'kept', 'kept', 'kept', 'x', 'y'],
  Z: [],
};

/** The same outline so many times as large, with its zero at a place, px. */
export type OutlineAt = (xPx: number, yPx: number, scale: number) => string;

/**
 * Draws a path elsewhere by its own figures, to a thousandth of a pixel. Moved by a transform it would cost the browser
 * with each frame about what a line of words does.
 * @param path of absolute commands, M L H V C A Z, with all of an arc's figures apart; throws on any other
 */
export function outlineOf(path: string): OutlineAt {
  const steps = [...path.matchAll(/([A-Za-z])([^A-Za-z]*)/g)].map(([, command = '', figures = '']) => {
    const kinds = figureKinds[command];
    if (!kinds) throw new Error(`A path may hold the commands M L H V C A Z; this one holds ${command}.`);
    const values = (figures.match(/-?(?:\d*\.\d+|\d+)/g) ?? []).map(Number);
    return { command, values: values.map((value, i) => ({ value, kind: kinds[i % kinds.length] })) };
  });
  return (xPx, yPx, scale) => {
    const at = ({ value, kind }: (typeof steps)[number]['values'][number]) => {
      if (kind === 'kept') return value;
      const fromPx = kind === 'x' ? xPx : kind === 'y' ? yPx : 0;
      return Math.round(1000 * (scale * value + fromPx)) / 1000;
    };
    return steps.map(({ command, values }) => command + values.map(at).join(' ')).join('');
  };
}
