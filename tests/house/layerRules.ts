/** The top folders of src; a file directly in src belongs to `main`. */
export type Layer =
  | 'engine'
  | 'model'
  | 'store'
  | 'interaction'
  | 'scene'
  | 'panels'
  | 'files'
  | 'workers'
  | 'commands'
  | 'main';

export interface LayerRule {
  /** Layers it may import besides itself. */
  readonly layers: readonly (Layer | 'demo-data' | 'assets')[];
  /** Packages it may import. */
  readonly packages: RegExp;
  /** Globals it must not use. */
  readonly withoutGlobals: readonly string[];
}

const none = /^$/;
const storage = [
  'localStorage',
  'sessionStorage',
  'indexedDB',
  'caches',
  'Blob',
  'File',
  'FileReader',
  'FileSystemFileHandle',
  'showOpenFilePicker',
  'showSaveFilePicker',
  'URL.createObjectURL',
  'navigator.storage',
];
const screen = [
  'window',
  'globalThis',
  'self',
  'document',
  'navigator',
  'location',
  'fetch',
  'XMLHttpRequest',
  'WebSocket',
  'requestAnimationFrame',
  'HTMLElement',
  'Element',
  'Event',
  'MouseEvent',
  'PointerEvent',
  'KeyboardEvent',
  ...storage,
];
const clock = ['Date', 'performance', 'setTimeout', 'setInterval', 'setImmediate', 'queueMicrotask'];
const chance = ['Math.random', 'crypto'];
const node = ['process', 'Buffer', 'require', 'console'];

export const layerRules: Readonly<Record<Layer, LayerRule>> = {
  engine: { layers: [], packages: none, withoutGlobals: [...screen, ...clock, ...chance, ...node] },
  model: { layers: ['engine'], packages: /^valibot$/, withoutGlobals: screen },
  store: { layers: ['engine', 'model'], packages: /^zustand\/vanilla$/, withoutGlobals: storage },
  interaction: { layers: ['engine', 'model', 'store'], packages: none, withoutGlobals: screen },
  scene: {
    layers: ['engine', 'model', 'store', 'interaction'],
    packages: /^(three(\/.*)?|@react-three\/.*|react)$/,
    withoutGlobals: storage,
  },
  panels: {
    layers: ['engine', 'model', 'store', 'interaction'],
    packages: /^react(-dom)?$/,
    withoutGlobals: storage,
  },
  files: { layers: ['engine', 'model', 'store', 'demo-data'], packages: none, withoutGlobals: [] },
  workers: { layers: ['engine', 'model'], packages: none, withoutGlobals: storage },
  commands: {
    layers: ['engine', 'model', 'store', 'files', 'demo-data'],
    packages:
      /^(\(computed\)|node:.*|vite|tsx\/.*|@valibot\/to-json-schema|playwright-core|@stryker-mutator\/core|vitest\/config|\.\.\/\.\.\/tests\/.*)$/,
    withoutGlobals: [],
  },
  main: {
    layers: [
      'engine',
      'model',
      'store',
      'interaction',
      'scene',
      'panels',
      'files',
      'workers',
      'demo-data',
      'assets',
    ],
    packages: /^(react|react-dom(\/.*)?|@fontsource-variable\/.*)$/,
    withoutGlobals: storage,
  },
};

/** Packages that one file alone may import on top of its layer's. */
export const extraPackages: Readonly<Record<string, RegExp>> = {
  'src/files/fleet/databaseShelves.ts': /^idb$/,
  'src/store/react.ts': /^(react|zustand|zustand\/vanilla\/shallow)$/,
  // A module that did not come is asked for again under the address that its browser names.
  'src/store/piece.ts': /^\(computed\)$/,
  'src/model/partsTable/readTable.ts': /^papaparse$/,
  'src/files/link/packed.ts': /^fflate$/,
  'src/panels/along/qrSquares.ts': /^qrcode-generator$/,
  // Mesh files are read by three's own loaders, off the main thread; no other worker knows of it.
  'src/workers/meshFile.ts': /^three(\/.*)?$/,
  'src/workers/highsMilp.ts': /^highs$/,
  'src/workers/place.worker.ts': /^highs(\/runtime\?url)?$/,
};

/** Names that say nothing about what is inside. */
export const emptyNames = /^(utils?|helpers?|misc|common)$/i;

export const warnLines = 250;
export const mostLines = 400;

/** The rooms inside a layer, from the lowest to the highest: a room may import itself and those before it. */
export const roomOrder: Readonly<Partial<Record<Layer, readonly string[]>>> = {
  model: [
    'units',
    'document',
    'airframe',
    'stability',
    'balance',
    'loads',
    'power',
    'fit',
    'partsTable',
    'judgement',
    'place',
    'advice',
    'weigh',
    'begin',
    'history',
    'talk',
    'words',
    'glossary',
    'sheet',
    'reading',
    'lessons',
  ],
  scene: ['materials', 'export', 'frame', 'airframe', 'items', 'mat', 'marks', 'fit', 'gestures'],
};

/** Imports that still climb, each to be mended: the list may only shrink. */
export const climbingImports: readonly string[] = [];
