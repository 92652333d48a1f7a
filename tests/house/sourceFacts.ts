import { parseSync, Visitor } from 'vite';

/** What the house rules need to know of one source file. */
export interface SourceFacts {
  /** What is imported or re-exported, types and import() included. */
  readonly specifiers: readonly string[];
  /** Names used that the file itself does not declare, and members of such names, as `Math.random`. */
  readonly globals: ReadonlySet<string>;
  /** The text without its comments. */
  readonly code: string;
}

export const computedImport = '(computed)';

const globalObjects = new Set(['window', 'globalThis', 'self']);

/**
 * Parses one TypeScript file. A name counts as declared if it is declared anywhere in the file.
 * An import() of something that is not written out has the specifier `computedImport`.
 * Throws if the file does not parse.
 */
export function readSource(path: string, text: string): SourceFacts {
  const { program, comments, errors } = parseSync(path, text);
  if (errors[0]) throw new Error(`${path}: ${errors[0].message}`);
  const specifiers: string[] = [];
  const used = new Set<string>();
  const members = new Map<string, Set<string>>();
  const declared = new Set<string>();
  const notNames = new Set<unknown>();
  const declare = (pattern: Pattern | null | undefined) => {
    for (const name of boundNames(pattern)) declared.add(name);
  };
  const declareFunction = (node: { id?: Pattern | null; params: readonly Pattern[] }) => {
    declare(node.id);
    node.params.forEach(declare);
  };
  const declareOwn = (node: { id?: Pattern | null }) => declare(node.id);
  const addKey = (node: { key: unknown; computed?: boolean }) => {
    if (!node.computed) notNames.add(node.key);
  };
  new Visitor({
    ImportDeclaration: (node) => {
      specifiers.push(node.source.value);
      for (const specifier of node.specifiers) declare(specifier.local);
    },
    ExportAllDeclaration: (node) => {
      specifiers.push(node.source.value);
    },
    ExportNamedDeclaration: (node) => {
      if (!node.source) return;
      specifiers.push(node.source.value);
      for (const { local, exported } of node.specifiers) notNames.add(local).add(exported);
    },
    ImportExpression: ({ source }) => {
      specifiers.push(source.type === 'Literal' ? String(source.value) : computedImport);
    },
    TSImportType: (node) => {
      specifiers.push(node.source.value);
    },
    VariableDeclarator: (node) => declare(node.id),
    FunctionDeclaration: declareFunction,
    FunctionExpression: declareFunction,
    ArrowFunctionExpression: declareFunction,
    TSFunctionType: declareFunction,
    TSConstructorType: declareFunction,
    TSCallSignatureDeclaration: declareFunction,
    TSIndexSignature: (node) => node.parameters.forEach(declare),
    TSMethodSignature: (node) => {
      addKey(node);
      declareFunction(node);
    },
    TSDeclareFunction: declareFunction,
    CatchClause: (node) => declare(node.param),
    ClassDeclaration: declareOwn,
    TSInterfaceDeclaration: declareOwn,
    TSTypeAliasDeclaration: declareOwn,
    TSTypeParameter: (node) => declare(node.name),
    TSNamedTupleMember: (node) => {
      notNames.add(node.label);
    },
    MemberExpression: (node) => {
      if (node.property.type !== 'Identifier' || node.computed) return;
      notNames.add(node.property);
      if (node.object.type !== 'Identifier') return;
      const { name } = node.object;
      members.set(name, (members.get(name) ?? new Set()).add(node.property.name));
    },
    TSQualifiedName: (node) => {
      notNames.add(node.right);
    },
    Property: (node) => {
      if (!node.shorthand) addKey(node);
    },
    PropertyDefinition: addKey,
    MethodDefinition: addKey,
    TSPropertySignature: addKey,
    Identifier: (node) => {
      if (!notNames.has(node)) used.add(node.name);
    },
  }).visit(program);
  const globals = new Set([...used].filter((name) => !declared.has(name)));
  for (const [name, properties] of members) {
    if (!globals.has(name)) continue;
    for (const property of properties)
      globals.add(globalObjects.has(name) ? property : `${name}.${property}`);
  }
  return { specifiers, globals, code: withoutComments(text, comments) };
}

interface Pattern {
  readonly type: string;
}

/** The names that a binding pattern declares, however deep. */
function boundNames(pattern: unknown): string[] {
  if (typeof pattern !== 'object' || pattern === null) return [];
  const node = pattern as Record<string, unknown>;
  switch (node.type) {
    case 'Identifier':
      return [String(node.name)];
    case 'ObjectPattern':
      return (node.properties as Record<string, unknown>[]).flatMap((p) => boundNames(p.value ?? p.argument));
    case 'ArrayPattern':
      return (node.elements as unknown[]).flatMap(boundNames);
    case 'AssignmentPattern':
      return boundNames(node.left);
    case 'RestElement':
      return boundNames(node.argument);
    case 'TSParameterProperty':
      return boundNames(node.parameter);
    default:
      return [];
  }
}

function withoutComments(text: string, comments: readonly { start: number; end: number }[]): string {
  let code = '';
  let from = 0;
  for (const { start, end } of comments) {
    code += text.slice(from, start);
    from = end;
  }
  return code + text.slice(from);
}
