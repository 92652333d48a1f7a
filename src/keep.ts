import { type Autosave, createAutosave, isSlotOf } from './files/autosave';
import type { FilePickers } from './files/filePickers';
import type { RunningFleet } from './files/fleet/startFleet';
import { createKeeping } from './files/keeping';
import { oneTab } from './files/oneTab';
import { noteHere, opened, type StartUp, tellAside } from './files/startUp';
import { pageStorage, tabStorage } from './files/storage';
import type { FleetActions } from './panels/fleetActions';
import type { Bench } from './store/bench';
import { createPiece, type Piece } from './store/piece';

/** How long the page must have stood before an opening counts as well ended, ms. */
const STANDS_MS = 1500;

interface KeepParts {
  readonly pickers: FilePickers;
  readonly start: StartUp;
  /** What was wanted on the bench in the fleet, whether or not it is there. */
  readonly wanted: string | null;
  save(): unknown;
}

/** Keeps the work in the browser for as long as the page is open, and tells whenever it does not. */
export function keepWork(bench: Bench, { pickers, start, wanted, save }: KeepParts): Piece<FleetActions> {
  const { notice, document: history } = bench;
  const autosaves = new Map<string, Autosave>();
  const autosaveOf = (fleetId: string): Autosave => {
    const autosave = autosaves.get(fleetId) ?? createAutosave(pageStorage, fleetId);
    autosaves.set(fleetId, autosave);
    return autosave;
  };
  const here = () => history.api.getState().fleetId;
  const keeping = createKeeping({ document: history, notice, autosaveOf });
  const locks = navigator.locks ?? null;
  let fleet: RunningFleet | null = null;

  tellAside(bench, pageStorage, pickers);
  const probed = autosaveOf(here()).probe(history.api.getState().committed);
  if (!probed.ok) notice.tell({ about: 'store', tone: 'bad', text: probed.sentence });
  else if (!start.mayKeep) notice.tell({ about: 'store', tone: 'bad', text: NOT_ASIDE });

  const tabs = oneTab(locks, channel(), {
    keeps: (late) => {
      notice.drop('tabs');
      noteHere([tabStorage, pageStorage], here());
      keeping.begin(late);
      fleet?.arrived(late);
    },
    waits: () => {
      noteHere([tabStorage], here());
      keeping.wait();
      if (keeping.keeps()) return;
      notice.tell({
        about: 'tabs',
        tone: 'note',
        text: `${history.current().name} is open in another tab, and this one follows it. What you change here becomes a copy of its own.`,
        actions: [{ label: 'Work on it here instead', run: () => tabs.takeOver() }],
      });
    },
    gives: keeping.flush,
    company: (there) => {
      if (!keeping.keeps()) return;
      if (there)
        notice.tell({
          about: 'tabs',
          tone: 'note',
          text: `${history.current().name} is open in another tab too, which follows this one.`,
        });
      else notice.drop('tabs');
    },
  });
  history.api.subscribe((now, before) => {
    if (now.fleetId === before.fleetId) return;
    notice.drop('tabs');
    tabs.goTo(now.fleetId);
  });
  tabs.goTo(here());

  watchPage(
    () => keeping.flush(),
    () => keeping.unkept(),
    () => {
      void fleet?.settle();
      tabs.leave();
    },
  );
  // A page that the browser had laid by is there again.
  window.addEventListener('pageshow', ({ persisted }) => {
    if (persisted) tabs.goTo(here());
  });
  window.addEventListener('storage', ({ key }) => {
    if (isSlotOf(key, here())) keeping.followed();
  });

  const piece = createPiece(
    () => import('./files/fleet/startFleet'),
    ({ startFleet }): FleetActions => {
      fleet = startFleet({
        bench,
        keeping,
        pickers,
        storage: pageStorage,
        locks,
        autosaveOf,
        wanted,
        comesAfresh: start.aircraft === null,
        bringsIn: start.mayKeep,
        save,
      });
      return fleet.actions;
    },
  );
  // After the first paint, for the bench shows without it.
  requestAnimationFrame(() => setTimeout(piece.want, FLEET_AFTER_MS));
  setTimeout(
    () =>
      void import('./files/keptDrawings').then(
        ({ keepDrawings }) => keepDrawings(bench, tabStorage),
        () => notice.tell({ about: 'drawing', tone: 'bad', text: NOT_KEPT_DRAWINGS }),
      ),
    FLEET_AFTER_MS,
  );
  if (import.meta.env.PROD && navigator.serviceWorker) {
    const workers = navigator.serviceWorker;
    setTimeout(
      () =>
        void import('./files/offline/keepOffline').then(
          ({ keepOffline }) =>
            keepOffline({ notice, workers, flush: keeping.flush, reload: () => location.reload() }),
          // A server that is out of reach is told by whatever the person wants of it.
          () => {},
        ),
      OFFLINE_AFTER_MS,
    );
  }
  return piece;
}

/** Keeping the whole page fetches all of it, so it waits until what is to be seen has come, ms. */
const OFFLINE_AFTER_MS = 2500;

/** The fleet is opened once the bench stands, ms. */
const FLEET_AFTER_MS = 400;

const NOT_KEPT_DRAWINGS =
  'Drawings under the aircraft are lost when this page is left: the server has stopped or is out of reach. Those kept in the file are safe.';

const NOT_ASIDE =
  'What could not be read fills the browser’s store and could not be put aside. Save this and that as files.';

/** Keeps what is there whenever the page may go, and asks before it goes where the browser keeps nothing. */
function watchPage(flush: () => void, unkept: () => boolean, leave: () => void): void {
  const standing = setTimeout(() => opened(tabStorage), STANDS_MS);
  window.addEventListener('pagehide', () => {
    flush();
    clearTimeout(standing);
    opened(tabStorage);
    leave();
  });
  window.document.addEventListener('visibilitychange', () => {
    if (window.document.visibilityState === 'hidden') flush();
  });
  window.addEventListener('beforeunload', (event) => {
    flush();
    if (unkept()) event.preventDefault();
  });
}

const channel = () => (typeof BroadcastChannel === 'function' ? new BroadcastChannel('counterpoise') : null);
