import { posix } from 'node:path';
import {
  climbingImports,
  emptyNames,
  extraPackages,
  type Layer,
  layerRules,
  mostLines,
  roomOrder,
  warnLines,
} from './layerRules';
import { readSource } from './sourceFacts';

export interface Findings {
  /** Breaches of a rule; each says where and what. */
  readonly errors: string[];
  readonly warnings: string[];
}

/**
 * Holds sources against the house's layer rules.
 * @param sources text by path from the project's folder, as `src/engine/mass/box.ts`
 */
export function checkLayers(sources: ReadonlyMap<string, string>): Findings {
  const errors: string[] = [];
  const warnings: string[] = [];
  const graph = new Map<string, string[]>();
  if (![...sources.keys()].some((path) => path.startsWith('src/engine/'))) {
    errors.push('src/engine: no file found, so nothing was checked');
  }
  for (const [path, text] of sources) {
    const names = path.replace(/\.\w+$/, '').split('/');
    const emptyName = names.find((name) => emptyNames.test(name));
    if (emptyName) errors.push(`${path}: the name ${emptyName} says nothing about what is inside`);
    const lines = text.trimEnd().split('\n').length;
    if (lines > mostLines) errors.push(`${path}: ${lines} lines, at most ${mostLines}`);
    else if (lines > warnLines) warnings.push(`${path}: ${lines} lines, better under ${warnLines}`);
    if (!/\.(ts|tsx|mjs)$/.test(path)) continue;
    const layer = layerOf(path);
    if (!layer) {
      errors.push(`${path}: this folder is no layer`);
      continue;
    }
    const { specifiers, globals } = readSource(path, text);
    for (const name of layerRules[layer].withoutGlobals) {
      if (globals.has(name)) errors.push(`${path}: uses ${name}, which ${layer} must not`);
    }
    const targets: string[] = [];
    for (const specifier of specifiers) {
      const target = specifier.startsWith('.') ? resolveImport(path, specifier, sources) : null;
      if (target) targets.push(target);
      const reason = importBreach(path, layer, specifier, target);
      if (reason) errors.push(`${path}: imports ${specifier}, ${reason}`);
      const climb = target && roomClimb(path, target, layer);
      if (climb) errors.push(`${path}: imports ${specifier}, ${climb}`);
    }
    graph.set(path, targets);
  }
  errors.push(...findCycles(graph).map((cycle) => `import cycle: ${cycle.join(' -> ')}`));
  return { errors, warnings };
}

function layerOf(path: string): Layer | null {
  const [, folder = '', ...inside] = path.split('/');
  if (inside.length === 0) return 'main';
  return folder !== 'main' && folder in layerRules ? (folder as Layer) : null;
}

function importBreach(path: string, layer: Layer, specifier: string, target: string | null): string | null {
  const rule = layerRules[layer];
  if (rule.packages.test(specifier) || extraPackages[path]?.test(specifier)) return null;
  if (!specifier.startsWith('.')) return `a package that ${layer} must not`;
  const wanted = posix.join(posix.dirname(path), specifier);
  if (!wanted.startsWith('src/')) {
    const folder = wanted.split('/')[0];
    return rule.layers.some((allowed) => allowed === folder) ? null : `outside what ${layer} may reach`;
  }
  // Style sheets and the like are no modules of ours, but must lie in a layer that may be reached.
  if (!target && !/\.(css|svg|json|png|webp|woff2)$/.test(wanted.replace(/\?.*$/, '')))
    return 'which is not there';
  const other = layerOf(target ?? wanted);
  if (other === layer || rule.layers.some((allowed) => allowed === other)) return null;
  return `but ${layer} must not import ${other ?? 'that folder'}`;
}

/** Why an import inside a layer runs up from a lower room to a higher one, or null if it does not. */
function roomClimb(path: string, target: string, layer: Layer): string | null {
  const order = roomOrder[layer];
  if (!order || layerOf(target) !== layer || climbingImports.includes(`${path} -> ${target}`)) return null;
  const room = roomOf(path);
  // What lies in no room stands over them all and may use each.
  if (room === null) return null;
  if (!order.includes(room)) return `but ${layer}/${room} has no place in the order of rooms`;
  const other = roomOf(target);
  const climbs = other === null || !order.slice(0, order.indexOf(room) + 1).includes(other);
  return climbs ? `but the room ${room} stands below ${other ?? `the top of ${layer}`}` : null;
}

function roomOf(path: string): string | null {
  const [, , room, ...inside] = path.split('/');
  return room !== undefined && inside.length > 0 ? room : null;
}

function resolveImport(path: string, specifier: string, sources: ReadonlyMap<string, string>): string | null {
  const base = posix.join(posix.dirname(path), specifier.replace(/\?.*$/, ''));
  const endings = ['', '.ts', '.tsx', '.mjs', '/index.ts', '/index.tsx'];
  const found = endings.map((ending) => `${base}${ending}`).find((candidate) => sources.has(candidate));
  return found && /\.(ts|tsx|mjs)$/.test(found) ? found : null;
}

/** Every cycle that a depth-first walk closes, each from and back to the same file. */
function findCycles(graph: ReadonlyMap<string, readonly string[]>): string[][] {
  const cycles: string[][] = [];
  const done = new Set<string>();
  const trail: string[] = [];
  const walk = (path: string) => {
    const seenAt = trail.indexOf(path);
    if (seenAt >= 0) {
      cycles.push([...trail.slice(seenAt), path]);
      return;
    }
    if (done.has(path)) return;
    trail.push(path);
    for (const next of graph.get(path) ?? []) walk(next);
    trail.pop();
    done.add(path);
  };
  for (const path of graph.keys()) walk(path);
  return cycles;
}
