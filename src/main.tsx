import { StrictMode } from 'react';
import { createRoot } from 'react-dom/client';
import sandmartin from '../demo-data/sandmartin.json';
import { createAutosave } from './files/autosave';
import { createFileMenu, type Demo } from './files/fileMenu';
import { browserPickers } from './files/filePickers';
import { createKeptShelf } from './files/keptShelf';
import { lessonHere } from './files/lessons/lessonHere';
import { readPreferences, writePreferences } from './files/preferences';
import { placeAtStart, startUp } from './files/startUp';
import { pageStorage, tabStorage } from './files/storage';
import { keepWork } from './keep';
import { blankAircraft } from './model/document/blank';
import type { Aircraft } from './model/document/types';
import { readAircraft } from './model/reading/read';
import { openLinks } from './openLinks';
import { App } from './panels/App';
import { later } from './panels/later';
import { StageTrouble } from './panels/trouble/StageTrouble';
import { startSolvers } from './solvers';
import { createBench } from './store/bench';
import { createPiece } from './store/piece';
import { BenchContext } from './store/react';
import { tellFaults } from './tellFaults';

const laterDemo = (load: () => Promise<{ readonly default: unknown }>) => {
  const piece = createPiece(load, (module) => module.default);
  return async () => readDemo(await piece.fetched());
};

/** The demo aircraft that are not on the bench at the start come when they are asked for. */
const demos: readonly Demo[] = [
  {
    id: 'sandmartin',
    name: 'Sandmartin',
    lesson: 'Petrol pusher: a camera off to one side.',
    load: async () => readDemo(sandmartin),
  },
  {
    id: 'fieldfare',
    name: 'Fieldfare',
    lesson: 'Turbine delta: more than a quarter of the mass is fuel.',
    load: laterDemo(() => import('../demo-data/fieldfare.json')),
  },
  {
    id: 'whimbrel',
    name: 'Whimbrel',
    lesson: 'Electric wing: no tail, a short band, heavy to one side.',
    load: laterDemo(() => import('../demo-data/whimbrel.json')),
  },
  {
    id: 'corncrake',
    name: 'Corncrake',
    lesson: 'Large glider: water that is dropped in flight.',
    load: laterDemo(() => import('../demo-data/corncrake.json')),
  },
];

function readDemo(json: unknown): Aircraft {
  const read = readAircraft(json);
  if (!read.ok) throw new Error(`A demo aircraft does not read: ${read.faults[0]?.sentence}`);
  return read.aircraft;
}

const pickers = browserPickers(window);
const wanted = placeAtStart(pageStorage, tabStorage);
const start = startUp(createAutosave(pageStorage, wanted ?? undefined), pageStorage, tabStorage);
// What stopped the bench is put aside; in its slots the next start would bring it into the fleet, and stop there.
if (start.stopped && start.mayKeep && wanted) createAutosave(pageStorage, wanted).clear();
const bench = createBench(
  start.aircraft ?? (start.stopped ? blankAircraft() : readDemo(sandmartin)),
  { ...readPreferences(pageStorage), ...(lessonHere(tabStorage) !== null && { place: 'lessons' as const }) },
  // Anything but what was kept there takes a place of its own; so does all where keeping would write over a damaged copy.
  start.aircraft && wanted && start.mayKeep ? wanted : undefined,
);
bench.view.subscribe((now, before) => {
  const { units, theme, layers, tilts, learned, sheet } = now;
  const same =
    units === before.units &&
    theme === before.theme &&
    layers === before.layers &&
    tilts === before.tilts &&
    learned === before.learned &&
    sheet === before.sheet;
  if (!same) writePreferences(pageStorage, { units, theme, layers, tilts, learned, sheet });
});
const files = createFileMenu(bench, pickers, demos, createKeptShelf(pageStorage));
tellFaults(bench, files);
const fleet = keepWork(bench, {
  pickers,
  start,
  wanted: start.aircraft || start.stopped ? null : wanted,
  save: files.saveFile,
});

// Verdict, beam and manifest stand while the picture, the heaviest piece, is still on its way.
const stageModule = import('./scene/Stage');
const Stage = later(
  () => stageModule,
  (module) => module.Stage,
  { place: 'The stage' },
);
const lessons = createPiece(
  () => import('./lessonRoom'),
  ({ lessonRoom }) => lessonRoom(pickers),
);

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
      <App
        stage={<Stage trouble={StageTrouble} />}
        files={{ ...files, fleet, lessons }}
        start={startSolvers}
      />
    </BenchContext.Provider>
  </StrictMode>,
);
startSolvers(bench);
openLinks(files);
