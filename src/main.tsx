import { StrictMode } from 'react';
import { createRoot } from 'react-dom/client';
import sandmartin from '../demo-data/sandmartin.json';
import { createAutosave } from './files/autosave';
import { browserPickers } from './files/filePickers';
import { openFile } from './files/openFile';
import { readPreferences, writePreferences } from './files/preferences';
import { saveFile } from './files/saveFile';
import { pageStorage } from './files/storage';
import { LEVEL } from './model/balance/balance';
import { blankAircraft } from './model/document/blank';
import type { Aircraft } from './model/document/types';
import { LEVEL_ATTITUDE } from './model/loads/attitude';
import { readAircraft } from './model/reading/read';
import { App } from './panels/App';
import type { FileActions } from './panels/fileActions';
import { Stage } from './scene/Stage';
import { createBench } from './store/bench';
import { BenchContext } from './store/react';
import { fitSearcher } from './workers/fitSearcher';
import { loadSolver } from './workers/loadSolver';

import { stabilitySolver } from './workers/stabilitySolver';

/** The demo aircraft that are not on the bench at the start come when they are asked for. */
const demos = {
  sandmartin: {
    name: 'Sandmartin',
    lesson: 'Petrol pusher: a camera off to one side.',
    load: async () => sandmartin,
  },
  fieldfare: {
    name: 'Fieldfare',
    lesson: 'Turbine delta: more than a quarter of the mass is fuel.',
    load: async () => (await import('../demo-data/fieldfare.json')).default,
  },
  whimbrel: {
    name: 'Whimbrel',
    lesson: 'Electric wing: no tail, a short band, heavy to one side.',
    load: async () => (await import('../demo-data/whimbrel.json')).default,
  },
  corncrake: {
    name: 'Corncrake',
    lesson: 'Large glider: water that is dropped in flight.',
    load: async () => (await import('../demo-data/corncrake.json')).default,
  },
} as const;

function readDemo(json: unknown): Aircraft {
  const read = readAircraft(json);
  if (!read.ok) throw new Error(`A demo aircraft does not read: ${read.faults[0]?.sentence}`);
  return read.aircraft;
}

const autosave = createAutosave(pageStorage);
const pickers = browserPickers(window);
const restored = autosave.restore();
const bench = createBench(
  restored.kind === 'restored' ? restored.aircraft : readDemo(sandmartin),
  readPreferences(pageStorage),
);

const SAVE_AFTER_MS = 300;
let saving: ReturnType<typeof setTimeout> | undefined;
const save = () => {
  clearTimeout(saving);
  saving = undefined;
  const result = autosave.save(bench.document.api.getState().committed);
  bench.notice.setState({ text: result.ok ? null : result.sentence });
};
bench.document.api.subscribe((now, before) => {
  if (now.committed === before.committed) return;
  clearTimeout(saving);
  saving = setTimeout(save, SAVE_AFTER_MS);
});
window.addEventListener('pagehide', () => saving && save());
bench.view.subscribe((now, before) => {
  const { units, theme, layers, tilts } = now;
  const same =
    units === before.units && theme === before.theme && layers === before.layers && tilts === before.tilts;
  if (!same) writePreferences(pageStorage, { units, theme, layers, tilts });
});

/** Another aircraft on the bench, looked at afresh. */
function putOnBench(aircraft: Aircraft): void {
  bench.drag.cancel();
  bench.document.replace(aircraft);
  bench.view.setState({
    selectedId: null,
    hoveredId: null,
    fuelFraction: 1,
    playing: false,
    positions: {},
    attitude: LEVEL_ATTITUDE,
    down: LEVEL,
    measureFromId: null,
    hiddenIds: [],
  });
}

const files: FileActions = {
  demos: Object.entries(demos).map(([id, { name, lesson }]) => ({ id, name, lesson })),
  openDemo: async (id) => {
    if (id in demos) putOnBench(readDemo(await demos[id as keyof typeof demos].load()));
  },
  saveText: (name, text, type) => pickers.download(name, text, type),
  newAircraft: () => putOnBench(blankAircraft()),
  openFile: async () => {
    const opened = await openFile(pickers);
    if (!opened) return { ok: false, cancelled: true };
    if (!opened.read.ok) return { ok: false, fileName: opened.name, faults: opened.read.faults };
    putOnBench(opened.read.aircraft);
    return { ok: true };
  },
  saveFile: async () => {
    await saveFile(pickers, bench.document.api.getState().committed);
  },
};

declare global {
  interface Window {
    /** The bench, for anyone who wants to drive it from the console. */
    counterpoise: typeof bench;
  }
}
window.counterpoise = bench;

const root = document.getElementById('root');
if (!root) throw new Error('index.html has no element with the id "root"');
createRoot(root).render(
  <StrictMode>
    <BenchContext.Provider value={bench}>
      <App stage={<Stage />} files={files} />
    </BenchContext.Provider>
  </StrictMode>,
);

const solveStability = stabilitySolver(
  () => new Worker(new URL('./workers/stability.worker.ts', import.meta.url), { type: 'module' }),
);
const solveLoads = loadSolver(
  () => new Worker(new URL('./workers/load.worker.ts', import.meta.url), { type: 'module' }),
);
// Opened when the first way in is asked for.
bench.fit.start(
  fitSearcher(() => new Worker(new URL('./workers/fit.worker.ts', import.meta.url), { type: 'module' })),
);
// After the first paint: the bench shows before the worker is even fetched.
requestAnimationFrame(() =>
  setTimeout(() => {
    bench.stability.start(solveStability);
    bench.rest.start(solveLoads);
    void import('./placing').then(({ placing }) => bench.place.start(placing));
  }),
);
