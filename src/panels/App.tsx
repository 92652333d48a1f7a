import { type ReactNode, useEffect, useMemo, useState } from 'react';
import './theme.css';
import './controls.css';
import type { Bench } from '../store/bench';
import { useBench, useView } from '../store/react';
import type { FileActions } from './fileActions';
import { FilesContext } from './filesContext';
import { later } from './later';
import type { Turn } from './layout/Turns';
import { useHeldHeight } from './layout/useHeldHeight';
import { Notices } from './Notices';
import type { OpenDialog } from './openDialog';
import { OwnBenchContext } from './ownBench';
import { PlaceShown } from './places/PlaceNav';
import { Words } from './Term';
import { TopBar } from './top/TopBar';
import { Boundary } from './trouble/Boundary';
import { VerdictPlace } from './trouble/VerdictPlace';
import { useShortcuts } from './useShortcuts';
import { useTheme } from './useTheme';
import { WorkBench } from './WorkBench';

const Cautions = later(
  () => import('./Cautions'),
  (module) => module.Cautions,
  { place: 'The list of cautions' },
);
const Shortcuts = later(
  () => import('./Shortcuts'),
  (module) => module.Shortcuts,
  { place: 'The list of keys' },
);

interface AppProps {
  readonly stage: ReactNode;
  readonly files: FileActions;
  /** Gives a bench of a place's own what is too slow for a frame; returns how to take it away. */
  readonly start: (bench: Bench) => () => void;
}

/** Windows with a low strip under the stage: those that are not high, and those that hold all in one column. */
const LOW_WINDOW = '(max-height: 819px), (max-width: 1099px) and (max-aspect-ratio: 1 / 1)';
/** A phone that lies. */
const LOWEST_WINDOW = '(max-width: 1099px) and (max-height: 519px)';

/** The bench as a person sees it: every place, and the stage handed in from outside. */
export function App({ stage, files, start }: AppProps) {
  const ownBench = useMemo(() => ({ stage, start }), [stage, start]);
  return (
    <FilesContext value={files}>
      <OwnBenchContext value={ownBench}>
        <Boundary place="The bench">
          <Places stage={stage} files={files} />
        </Boundary>
        <Notices />
      </OwnBenchContext>
    </FilesContext>
  );
}

function Places({ stage, files }: Omit<AppProps, 'start'>) {
  const [sheet, setSheet] = useState<OpenDialog>(null);
  const [turn, setTurn] = useState<Turn>('stage');
  const bench = useBench();
  const away = useView(({ place }) => place !== 'bench');
  const head = useHeldHeight<HTMLElement>();
  useTheme();
  useShortcuts({ openShortcuts: () => setSheet('shortcuts'), save: () => void files.saveFile() });
  useEffect(() => {
    const [low, lowest] = [matchMedia(LOW_WINDOW), matchMedia(LOWEST_WINDOW)];
    const tell = () =>
      bench.view.setState({ strip: lowest.matches ? 'lowest' : low.matches ? 'low' : 'roomy' });
    tell();
    const listening = new AbortController();
    for (const window of [low, lowest]) window.addEventListener('change', tell, listening);
    return () => listening.abort();
  }, [bench]);
  return (
    <div className="app" data-tab={turn}>
      <header ref={head}>
        <h1 className="unseen">Counterpoise</h1>
        <Boundary place="The menu">
          <TopBar files={files} onSheet={setSheet} />
        </Boundary>
        <VerdictPlace />
      </header>
      <main className="bench" data-tab={turn} inert={away}>
        <WorkBench stage={stage} turn={turn} onTurn={setTurn} />
      </main>
      <PlaceShown />
      {sheet === 'cautions' && <Cautions onClose={() => setSheet(null)} />}
      {sheet === 'words' && <Words onClose={() => setSheet(null)} />}
      {sheet === 'shortcuts' && <Shortcuts onClose={() => setSheet(null)} />}
    </div>
  );
}
