import { parseSync, Visitor } from 'vite';
import type { ShapeKind } from '../../src/engine/mass/shapes';

/** Every solid there is, by the compiler's word: a new one must be added here. */
const kinds: Readonly<Record<ShapeKind, true>> = {
  box: true,
  taperedBox: true,
  cylinder: true,
  tube: true,
  frustum: true,
  sphere: true,
  ellipsoid: true,
  capsule: true,
  prism: true,
  loft: true,
  panel: true,
  mesh: true,
};

/** Where a switch over solids has a default, so that the compiler would not name it when a solid is added. */
export function defaultsOverSolids(path: string, text: string): string[] {
  const found: string[] = [];
  const { program } = parseSync(path, text);
  new Visitor({
    SwitchStatement: ({ cases, start }) => {
      const overSolids = cases.some(({ test }) => test?.type === 'Literal' && String(test.value) in kinds);
      if (!overSolids || cases.every(({ test }) => test)) return;
      found.push(`${path}:${text.slice(0, start).split('\n').length}: a switch over solids has a default`);
    },
  }).visit(program);
  return found;
}
